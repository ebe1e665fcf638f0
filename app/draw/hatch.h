#pragma once
// Slanted lines over an area, drawn by us: Qt's pattern brushes ignore scaling.
#include <QColor>
#include <QRectF>

class QPainter;

namespace app {

inline constexpr double kBadStep = 4.5;      // px between lines at 100 %
inline constexpr double kUnclearStep = 10.0;

void paintHatch(QPainter &painter, const QRectF &area, double step, QColor colour, double width);

} // namespace app
