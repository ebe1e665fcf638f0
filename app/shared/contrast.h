#pragma once
// Contrast of two colours by WCAG 2.2 (W3C Recommendation, "relative luminance" and "contrast ratio"), 1 to 21.
#include <QColor>

namespace app {

double relativeLuminance(QColor colour); // 0 black to 1 white; alpha is not looked at
double contrast(QColor a, QColor b);
// What is seen where `over` (with its alpha) lies on an opaque ground.
QColor blended(QColor over, QColor ground);

} // namespace app
