#include "app/draw/hatch.h"

#include <QPainter>

namespace app {

void paintHatch(QPainter &painter, const QRectF &area, double step, QColor colour, double width)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(area, Qt::IntersectClip);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap));
    const double slant = area.height() * 0.8;
    for (double x = area.left() - slant; x < area.right(); x += step)
        painter.drawLine(QPointF(x, area.bottom() + 1), QPointF(x + slant, area.top() - 1));
    painter.restore();
}

} // namespace app
