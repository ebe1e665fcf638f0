#pragma once
// The meter of the pictures with its digits, pointer, ring and plugs.
#include "app/draw/test_picture.h"

namespace app {

struct MeterPlace // in the painter's coordinates
{
    QRectF rect;
    QPointF com, volt;   // jacks
    QPointF displayEdge; // right edge of the display, where a note's line begins
    QPointF jawHole;     // of a clamp
    double unit = 1;     // px per unit of the drawing
};

// Where it would stand: as large as the height allows, its left edge at `into`'s.
MeterPlace placeMeter(const QRectF &into, bool clamp, const Style &style);
// `plugged`: plugs in COM and VΩ, never in A.
void paintMeter(QPainter &painter, const MeterPlace &place, const MeterState &state, bool clamp, bool plugged, const Style &style);
// A display alone, as large as the rectangle.
void paintDisplay(QPainter &painter, const QRectF &rect, const QString &text, const QString &unit, const Style &style);

} // namespace app
