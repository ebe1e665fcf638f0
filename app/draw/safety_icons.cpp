#include "app/draw/safety_icons.h"

#include "app/draw/drawing.h"
#include "app/draw/probe_picture.h"
#include "app/shared/text_block.h"

#include <QPainter>
#include <QPainterPath>

namespace app {
namespace {

// Everything is drawn in a square from -60 to 60.
void outline(QPainter &painter, const Style &style, Role fill, double width = 2.5)
{
    painter.setPen(style.pen(Role::Line, width));
    painter.setBrush(style[fill]);
}

void knob(QPainter &painter, const Style &style)
{
    outline(painter, style, Role::SheetMetal);
    painter.drawEllipse(QPointF(0, 8), 40, 40);
    outline(painter, style, Role::Ceramic, 2);
    painter.drawEllipse(QPointF(0, 8), 26, 26);
    painter.setPen(style.pen(Role::Line, 5));
    painter.drawLine(QPointF(0, 6), QPointF(0, -15));
    painter.setPen(style.pen(Role::Line, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawArc(QRectF(-48, -40, 96, 96), 40 * 16, 32 * 16);
    QFont font = style.font(Type::Strong);
    font.setPixelSize(16);
    painter.setFont(font);
    painter.drawText(QRectF(-12, -58, 24, 18), Qt::AlignCenter, QStringLiteral("0"));
}

void plug(QPainter &painter, const Style &style)
{
    outline(painter, style, Role::Terminal, 1.5);
    painter.drawRect(QRectF(30, -9, 18, 5));
    painter.drawRect(QRectF(30, 5, 18, 5));
    outline(painter, style, Role::DarkPlastic, 2);
    painter.drawRoundedRect(QRectF(6, -16, 24, 34), 6, 6);
    QPainterPath cord(QPointF(6, 1));
    cord.cubicTo(-8, 1, -4, 16, -18, 16);
    paintWire(painter, cord, 0.7, style);
}

void outletPlate(QPainter &painter, const Style &style)
{
    outline(painter, style, Role::SheetMetal);
    painter.drawRoundedRect(QRectF(-58, -44, 54, 88), 5, 5);
    outline(painter, style, Role::Ceramic, 2);
    painter.drawRoundedRect(QRectF(-50, -32, 38, 64), 14, 14);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Slot]);
    painter.drawRect(QRectF(-41, -16, 5, 17));
    painter.drawRect(QRectF(-26, -14, 5, 13));
    painter.drawRoundedRect(QRectF(-35, 10, 9, 9), 4, 4);
}

// One probe taken away from the outlet, an arrow beside it.
void probeOut(QPainter &painter, Probe probe, const Style &style)
{
    outletPlate(painter, style);
    paintProbe(painter, probe, {6, -8}, {0.92, 0.39}, 0.75, style);
    painter.setPen(style.pen(Role::Line, 2.5));
    painter.drawLine(QPointF(14, -30), QPointF(46, -17));
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Line]);
    painter.drawPolygon(QPolygonF({{56, -13}, {43, -24}, {39, -12}}));
}

void plugOut(QPainter &painter, const Style &style)
{
    outletPlate(painter, style);
    painter.translate(14, 6);
    painter.scale(-0.95, 0.95);
    plug(painter, style);
}

void drawn(QPainter &painter, const QString &name, const QString &position, const Style &style)
{
    const auto drawing = Drawing::load({name, position, {}}, style);
    if (drawing)
        drawing->paint(painter, QRectF(-78, -51, 156, 102));
}

void tape(QPainter &painter, const Style &style)
{
    drawn(painter, QStringLiteral("breaker"), QStringLiteral("released"), style);
    painter.save();
    painter.rotate(-8);
    outline(painter, style, Role::Well, 1.75);
    painter.drawRect(QRectF(-48, -9, 96, 18));
    painter.setPen(style.pen(Role::Detail, 1.25));
    for (const double y : {-3.0, 3.0})
        painter.drawLine(QPointF(-38, y), QPointF(y < 0 ? 36 : 14, y));
    painter.restore();
}

void clipsOff(QPainter &painter, const Style &style)
{
    paintClip(painter, Probe::Red, {-30, -30}, {0.97, 0.24}, 0.9, style);
    paintClip(painter, Probe::Black, {-30, 30}, {0.97, -0.2}, 0.9, style);
    outline(painter, style, Role::Terminal, 1.75);
    painter.drawRect(QRectF(-56, -38, 16, 14));
    painter.drawRect(QRectF(-56, 24, 16, 14));
}

void clipsOn(QPainter &painter, const Style &style)
{
    outline(painter, style, Role::SheetMetal);
    painter.drawRoundedRect(QRectF(-58, -46, 30, 92), 4, 4);
    outline(painter, style, Role::Terminal, 1.75);
    for (const double y : {-28.0, 16.0})
        painter.drawRoundedRect(QRectF(-30, y, 26, 12), 2, 2);
    paintClip(painter, Probe::Red, {-14, -22}, {0.97, -0.2}, 0.9, style);
    paintClip(painter, Probe::Black, {-14, 22}, {0.97, 0.2}, 0.9, style);
}

// An open hand, its palm towards the machine, with a line between them.
void hand(QPainter &painter, const Style &style, bool back)
{
    outline(painter, style, Role::Ceramic, 2.25);
    QPainterPath path;
    path.moveTo(-14, 50);
    path.lineTo(-16, 22);
    path.cubicTo(-32, 8, -36, 0, -32, -6);
    path.cubicTo(-27, -8, -22, 0, -16, 6);
    for (const double x : {-16.0, -5.0, 6.0, 17.0}) {
        const double top = x == -16.0 ? -34 : x == 17.0 ? -26 : -42;
        path.lineTo(x, top + 5);
        path.quadTo(x + 4.5, top - 4, x + 9, top + 5);
        path.lineTo(x + 9, -6);
    }
    path.lineTo(26, 20);
    path.cubicTo(26, 34, 18, 36, 17, 50);
    painter.drawPath(path);
    painter.setPen(style.pen(Role::Detail, 1.25));
    if (back)
        for (const double x : {-11.0, 0.0, 11.0})
            painter.drawLine(QPointF(x, 2), QPointF(x + 1, 12));
    else
        painter.drawArc(QRectF(-14, 2, 26, 22), 20 * 16, 130 * 16);
}

void handsAway(QPainter &painter, const Style &style)
{
    painter.save();
    painter.translate(14, 2);
    hand(painter, style, false);
    painter.restore();
    QPen dashed(style[Role::Line], 2.5, Qt::SolidLine, Qt::FlatCap);
    dashed.setDashPattern({3, 2.5});
    painter.setPen(dashed);
    painter.drawLine(QPointF(-46, -48), QPointF(-46, 52));
}

void backOfHand(QPainter &painter, const Style &style)
{
    painter.save();
    painter.translate(18, 4);
    painter.scale(0.85, 0.85);
    hand(painter, style, true);
    painter.restore();
    painter.setPen(style.pen(Role::Line, 2.5));
    painter.setBrush(Qt::NoBrush);
    for (const double x : {-52.0, -40.0, -28.0}) {
        QPainterPath heat(QPointF(x, 44));
        heat.cubicTo(x - 8, 30, x + 8, 16, x, 2);
        heat.cubicTo(x - 6, -8, x + 6, -18, x, -28);
        painter.drawPath(heat);
    }
}

void powerOn(QPainter &painter, const Style &style)
{
    painter.setPen(style.pen(Role::Line, 6));
    painter.setBrush(Qt::NoBrush);
    painter.drawArc(QRectF(-34, -30, 68, 68), -235 * 16, 290 * 16);
    painter.drawLine(QPointF(0, -42), QPointF(0, -4));
}

void jaw(QPainter &painter, const Style &style)
{
    QPainterPath wire(QPointF(-58, 10));
    wire.cubicTo(-30, -26, 20, -26, 58, -6);
    paintWire(painter, wire, 1.4, style);
    painter.setPen(style.pen(Role::Line, 18));
    painter.setBrush(Qt::NoBrush);
    const QRectF ring(-30, -50, 60, 66);
    painter.drawArc(ring, -60 * 16, 300 * 16);
    painter.setPen(style.pen(Role::DarkPlastic, 13));
    painter.drawArc(ring, -60 * 16, 300 * 16);
    paintWire(painter, [] {
        QPainterPath part(QPointF(-16, -15));
        part.cubicTo(-4, -18, 8, -18, 18, -16);
        return part;
    }(), 1.4, style);
    outline(painter, style, Role::SheetMetal);
    painter.drawRoundedRect(QRectF(-18, 14, 36, 44), 4, 4);
}

void flap(QPainter &painter, const Style &style)
{
    outline(painter, style, Role::SheetMetal);
    painter.drawPolygon(QPolygonF({{-58, -34}, {-10, -34}, {14, -10}, {14, 34}, {-58, 34}}));
    painter.setPen(style.pen(Role::Line, 3.5));
    painter.drawLine(QPointF(14, -10), QPointF(46, 14));
    painter.setPen(style.pen(Role::Detail, 2));
    painter.setBrush(Qt::NoBrush);
    for (const double y : {14.0, 24.0, 34.0}) {
        QPainterPath air(QPointF(20, y));
        air.cubicTo(30, y - 6, 38, y + 8, 56, y + 4);
        painter.drawPath(air);
    }
}

void beside(QPainter &painter, const Style &style)
{
    painter.save();
    painter.translate(-10, 4);
    painter.scale(0.82, 0.82);
    drawn(painter, QStringLiteral("machine"), {}, style);
    painter.restore();
    outline(painter, style, Role::DarkPlastic, 2);
    painter.drawEllipse(QPointF(46, -26), 11, 13);
    outline(painter, style, Role::SheetMetal, 2);
    painter.drawPolygon(QPolygonF({{32, 46}, {32, -2}, {38, -10}, {54, -10}, {60, -2}, {60, 46}}));
}

void clock(QPainter &painter, const Style &style)
{
    outline(painter, style, Role::Ceramic);
    painter.drawEllipse(QPointF(), 44, 44);
    painter.setPen(style.pen(Role::Line, 2));
    for (int hour = 0; hour < 12; ++hour) {
        painter.save();
        painter.rotate(30 * hour);
        painter.drawLine(QPointF(0, -39), QPointF(0, hour % 3 == 0 ? -31 : -35));
        painter.restore();
    }
    painter.setPen(style.pen(Role::Line, 3.5));
    painter.drawPolyline(QPolygonF({{0, -28}, {0, 0}, {18, 10}}));
}

} // namespace

void paintAct(QPainter &painter, Act act, const QRectF &into, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(into.center());
    const double scale = std::min(into.width() / 156, into.height() / 124);
    painter.scale(scale, scale);
    switch (act) {
    case Act::OffAtControl: knob(painter, style); break;
    case Act::PlugOut: plugOut(painter, style); break;
    case Act::BreakerOff: drawn(painter, QStringLiteral("breaker"), QStringLiteral("released"), style); break;
    case Act::TapeOn: tape(painter, style); break;
    case Act::ProbeRedOut: probeOut(painter, Probe::Red, style); break;
    case Act::ProbeBlackOut: probeOut(painter, Probe::Black, style); break;
    case Act::ClipsOff: clipsOff(painter, style); break;
    case Act::ClipsOn: clipsOn(painter, style); break;
    case Act::HandsAway: handsAway(painter, style); break;
    case Act::PowerOn: powerOn(painter, style); break;
    case Act::JawAlone: jaw(painter, style); break;
    case Act::Closed: drawn(painter, QStringLiteral("machine"), {}, style); break;
    case Act::FlapLifts: flap(painter, style); break;
    case Act::StayBeside: beside(painter, style); break;
    case Act::Wait: clock(painter, style); break;
    case Act::BackOfHand: backOfHand(painter, style); break;
    }
    painter.restore();
}

} // namespace app
