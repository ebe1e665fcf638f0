#include "app/draw/probe_picture.h"

#include <QPainter>

#include <cmath>

namespace app {
namespace {

// From now on the tip is the origin and the handle lies along x.
void alongX(QPainter &painter, QPointF tip, QPointF direction, double unit)
{
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(tip);
    painter.rotate(std::atan2(direction.y(), direction.x()) * 180 / M_PI);
    painter.scale(unit, unit);
}

Role fillOf(Probe probe)
{
    return probe == Probe::Red ? Role::RedProbe : Role::BlackProbe;
}

QPen edgeOf(Probe probe, const Style &style)
{
    return probe == Probe::Red ? style.pen(Role::RedProbe, 1) : style.pen(Role::BlackEdge, 1.2);
}

void paintCore(QPainter &painter, Probe probe, double from, double to, const Style &style)
{
    if (probe == Probe::Black)
        return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::RedCore]);
    painter.drawRoundedRect(QRectF(from, -2.1, to - from, 4.2), 2.1, 2.1);
}

} // namespace

void paintProbe(QPainter &painter, Probe probe, QPointF tip, QPointF direction, double unit, const Style &style)
{
    painter.save();
    alongX(painter, tip, direction, unit);
    painter.setPen(style.pen(Role::Line, 1.2));
    painter.setBrush(style[Role::Terminal]);
    painter.drawPolygon(QPolygonF({{0, 0}, {8, -1.8}, {28, -1.8}, {28, 1.8}, {8, 1.8}}));
    painter.setPen(edgeOf(probe, style));
    painter.setBrush(style[fillOf(probe)]);
    QPainterPath handle;
    handle.moveTo(26, -3.4);
    handle.lineTo(33, -4);
    handle.lineTo(33, -8);
    handle.quadTo(36.5, -9.5, 40, -8);
    handle.lineTo(40, -5.2);
    handle.cubicTo(52, -7.8, 68, -7.6, 80, -5.6);
    handle.lineTo(kProbeLength, -3.2);
    handle.lineTo(kProbeLength, 3.2);
    handle.lineTo(80, 5.6);
    handle.cubicTo(68, 7.6, 52, 7.8, 40, 5.2);
    handle.lineTo(40, 8);
    handle.quadTo(36.5, 9.5, 33, 8);
    handle.lineTo(33, 4);
    handle.lineTo(26, 3.4);
    handle.closeSubpath();
    painter.drawPath(handle);
    paintCore(painter, probe, 46, 84, style);
    painter.restore();
}

void paintClip(QPainter &painter, Probe probe, QPointF tip, QPointF direction, double unit, const Style &style)
{
    painter.save();
    alongX(painter, tip, direction, unit);
    painter.setPen(style.pen(Role::Line, 1.4));
    painter.setBrush(style[Role::Terminal]);
    for (const double side : {-1.0, 1.0}) {
        QPolygonF jaw({{-4, side * 1.4}, {-3, side * 4.5}, {30, side * 9.5}, {34, side * 2.5}});
        painter.drawPolygon(jaw);
        for (double tooth = 2; tooth < 22; tooth += 5)
            painter.drawLine(QPointF(tooth, side * 1.8), QPointF(tooth + 2.2, side * 3.6));
    }
    painter.setPen(edgeOf(probe, style));
    painter.setBrush(style[fillOf(probe)]);
    QPainterPath boot;
    boot.moveTo(24, -9.5);
    boot.cubicTo(34, -13, 52, -9.5, kClipLength, -3.2);
    boot.lineTo(kClipLength, 3.2);
    boot.cubicTo(52, 9.5, 34, 13, 24, 9.5);
    boot.quadTo(30, 0, 24, -9.5);
    painter.drawPath(boot);
    paintCore(painter, probe, 34, 62, style);
    painter.restore();
}

void paintFist(QPainter &painter, QPointF tip, QPointF direction, bool left, double unit, const Style &style)
{
    painter.save();
    alongX(painter, tip, direction, unit);
    if (left)
        painter.scale(1, -1);
    painter.setPen(style.pen(Role::Line, 2));
    painter.setBrush(style[Role::Ceramic]);
    QPainterPath fist; // behind the guard, which ends at 40
    fist.moveTo(45, -11);
    fist.cubicTo(52, -17, 72, -17, 80, -11);
    fist.cubicTo(85, -4, 85, 8, 79, 13);
    fist.cubicTo(68, 18, 52, 17, 46, 12);
    fist.cubicTo(41, 6, 41, -5, 45, -11);
    painter.drawPath(fist);
    painter.setPen(style.pen(Role::Line, 1.5));
    for (const double x : {54.0, 62.0, 70.0})
        painter.drawLine(QPointF(x, -1), QPointF(x - 2, 12.5));
    QPainterPath thumb;
    thumb.moveTo(76, -13);
    thumb.cubicTo(66, -8, 54, -9, 50, -6);
    thumb.cubicTo(48, -2, 58, -1, 74, -3);
    painter.setPen(style.pen(Role::Line, 1.75));
    painter.drawPath(thumb);
    painter.restore();
}

void paintCable(QPainter &painter, Probe probe, const QPainterPath &path, double unit, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    if (probe == Probe::Black && style.dark())
        painter.strokePath(path, style.pen(Role::BlackEdge, 7.5 * unit));
    painter.strokePath(path, style.pen(fillOf(probe), probe == Probe::Black ? 5.5 * unit : 6 * unit));
    if (probe == Probe::Red)
        painter.strokePath(path, style.pen(Role::RedCore, 2 * unit));
    painter.restore();
}

void paintWire(QPainter &painter, const QPainterPath &path, double unit, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QPen pen = style.pen(Role::Line, 7 * unit);
    pen.setCapStyle(Qt::FlatCap);
    painter.strokePath(path, pen);
    pen.setColor(style[Role::Terminal]);
    pen.setWidthF(3.6 * unit);
    painter.strokePath(path, pen);
    painter.restore();
}

void paintConnector(QPainter &painter, QPointF mouth, QPointF direction, double wireLength, double unit, const Style &style)
{
    if (wireLength > 0) {
        QPainterPath wire(mouth + direction * 26 * unit);
        wire.lineTo(mouth + direction * (30 + wireLength) * unit);
        paintWire(painter, wire, unit, style);
    }
    painter.save();
    alongX(painter, mouth, direction, unit);
    painter.setPen(style.pen(Role::Line, 2));
    painter.setBrush(style[Role::Ceramic]);
    painter.drawPolygon(QPolygonF({{0, -8}, {16, -8}, {24, -4}, {31, -4}, {31, 4}, {24, 4}, {16, 8}, {0, 8}}));
    painter.setPen(style.pen(Role::Detail, 1.25));
    painter.drawLine(QPointF(3, -3), QPointF(14, -3));
    painter.drawLine(QPointF(3, 3), QPointF(14, 3));
    painter.restore();
}

void paintDots(QPainter &painter, QPointF from, QPointF to, double unit, const Style &style)
{
    painter.save();
    QPen pen(style[Role::Line], 1.5 * unit, Qt::SolidLine, Qt::FlatCap);
    pen.setDashPattern({2.2, 2});
    painter.setPen(pen);
    painter.drawLine(from, to);
    painter.restore();
}

} // namespace app
