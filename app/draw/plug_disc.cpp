#include "app/draw/plug_disc.h"

#include <QPainter>
#include <QPainterPath>

namespace app {

void paintPlugDisc(QPainter &painter, QPointF middle, const Style &style)
{
    painter.save();
    painter.translate(middle);
    painter.scale(style.scale, style.scale);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Ink]);
    painter.drawEllipse(QPointF(), kDiscReach, kDiscReach);
    painter.setPen(QPen(style[Role::Sheet], 1.7, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    QPainterPath body;
    body.moveTo(2.5, -4.5);
    body.lineTo(-1, -4.5);
    body.cubicTo(-6, -4, -6, 4, -1, 4.5);
    body.lineTo(2.5, 4.5);
    body.closeSubpath();
    body.moveTo(2.5, -2.2);
    body.lineTo(8, -2.2);
    body.moveTo(2.5, 2.2);
    body.lineTo(8, 2.2);
    body.moveTo(-4.8, 0);
    body.cubicTo(-7, 0, -7, 3, -9.5, 3);
    painter.drawPath(body);
    painter.restore();
}

} // namespace app
