#pragma once
// The digits of the meter: seven segments each, as polygons.
#include <QColor>
#include <QRectF>
#include <QString>

class QPainter;

namespace app {

// Digits, point, comma, minus, space, O and L; other characters stay blank. Right-aligned in the box, as high as it is,
// smaller if they are too many for its width.
void paintSevenSegments(QPainter &painter, const QString &text, const QRectF &box, QColor ink);

} // namespace app
