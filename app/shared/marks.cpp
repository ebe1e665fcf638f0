#include "app/shared/marks.h"

#include <QPainter>
#include <QPainterPath>

namespace app {
namespace {

// Every mark is drawn in a square from -7 to 7.
void untested(QPainter &painter, QColor ink)
{
    QPen pen(ink, 1.6, Qt::SolidLine, Qt::FlatCap);
    pen.setDashPattern({1.55, 1.42}); // 9 dashes round a circle of radius 6
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(), 6, 6);
}

void suspected(QPainter &painter, QColor ink)
{
    painter.setPen(QPen(ink, 1.8));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(), 6, 6);
    QPainterPath half;
    half.arcMoveTo(-6, -6, 12, 12, 180);
    half.arcTo(-6, -6, 12, 12, 180, 180);
    half.closeSubpath();
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPath(half);
}

void cleared(QPainter &painter, QColor ink)
{
    painter.setPen(QPen(ink, 2.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(QPolygonF({{-6, 0.5}, {-2, 4.5}, {6, -5}}));
}

void cross(QPainter &painter, QColor colour, double reach, double width)
{
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(-reach, -reach), QPointF(reach, reach));
    painter.drawLine(QPointF(-reach, reach), QPointF(reach, -reach));
}

void failed(QPainter &painter, QColor ink, QColor ground)
{
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawRoundedRect(QRectF(-6.5, -6.5, 13, 13), 1, 1);
    cross(painter, ground, 3, 2);
}

void proven(QPainter &painter, QColor ink, QColor ground)
{
    painter.setPen(QPen(ink, 1.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(-7.25, -7.25, 14.5, 14.5), 1.5, 1.5);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawRect(QRectF(-4.75, -4.75, 9.5, 9.5));
    cross(painter, ground, 2.5, 1.8);
}

void noConclusion(QPainter &painter, QColor ink)
{
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawEllipse(QPointF(-2, 0), 4, 4);
    painter.setPen(QPen(ink, 2, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(4.5, -6.5), QPointF(4.5, 6.5));
}

void noted(QPainter &painter, QColor ink)
{
    painter.setPen(QPen(ink, 1.8, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(-6.5, 0), QPointF(6.5, 0));
}

} // namespace

QString StandingWords::word(Standing standing)
{
    switch (standing) {
    case Standing::Untested: return tr("untested");
    case Standing::Suspected: return tr("suspected");
    case Standing::Cleared: return tr("cleared");
    case Standing::Failed: return tr("failed its test");
    case Standing::Proven: return tr("proven");
    case Standing::NoConclusion: return tr("no conclusion");
    case Standing::Noted: return tr("noted");
    }
    Q_UNREACHABLE();
}

void paintMark(QPainter &painter, Standing standing, QPointF middle, const Style &style, QColor ink, QColor ground)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(middle);
    painter.scale(style.scale, style.scale);
    switch (standing) {
    case Standing::Untested: untested(painter, ink); break;
    case Standing::Suspected: suspected(painter, ink); break;
    case Standing::Cleared: cleared(painter, ink); break;
    case Standing::Failed: failed(painter, ink, ground); break;
    case Standing::Proven: proven(painter, ink, ground); break;
    case Standing::NoConclusion: noConclusion(painter, ink); break;
    case Standing::Noted: noted(painter, ink); break;
    }
    painter.restore();
}

void paintMark(QPainter &painter, Standing standing, QPointF middle, const Style &style)
{
    paintMark(painter, standing, middle, style, style[Role::Ink], style[Role::Sheet]);
}

} // namespace app
