#include "app/draw/ladder_symbols.h"

#include <QPainter>
#include <QPainterPath>

namespace app {
namespace {

// Everything below is drawn at 100 % with the upper end in the origin.
struct Hand
{
    QPainter &painter;
    const Style &style;
    double length;
    SymbolLook look;

    QPen ink(double width) const { return style.pen(Role::Ink, width); }
    void dot(double y) const
    {
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Ink]);
        painter.drawEllipse(QPointF(0, y), 3.4, 3.4);
        painter.setBrush(Qt::NoBrush);
    }
};

void contact(const Hand &hand)
{
    hand.painter.setPen(hand.ink(3));
    if (hand.look.open)
        hand.painter.drawLine(QPointF(0, 0), QPointF(hand.length * 0.45, hand.length * 0.95));
    else
        hand.painter.drawLine(QPointF(0, 0), QPointF(2.2, hand.length - 1));
    hand.dot(0);
    hand.dot(hand.length);
}

void thermostat(const Hand &hand)
{
    contact(hand);
    const double m = hand.length / 2;
    hand.painter.setPen(QPen(hand.style[Role::Ink], 2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    hand.painter.drawPolyline(QPolygonF({{8, m - 4.5}, {14, m - 4.5}, {14, m + 4.5}, {20, m + 4.5}}));
}

void oneShot(const Hand &hand)
{
    hand.painter.setPen(hand.ink(2.4));
    hand.painter.drawLine(QPointF(0, 0), QPointF(0, hand.length));
    hand.painter.drawRoundedRect(QRectF(-8, 1, 16, hand.length - 2), 3.5, 3.5);
}

// The copper path in two pieces where it is broken; edged in ink on the zone, where copper alone is too faint.
void copper(const Hand &hand, const QPainterPath &path)
{
    hand.painter.save();
    if (hand.look.broken) {
        QPainterPath gap;
        gap.addPolygon(QPolygonF({{-20, hand.length * 0.5 + 4}, {20, hand.length * 0.5 - 8}, {20, hand.length * 0.5 + 4}, {-20, hand.length * 0.5 + 14}}));
        QPainterPath all;
        all.addRect(QRectF(-30, -10, 60, hand.length + 20));
        hand.painter.setClipPath(all.subtracted(gap), Qt::IntersectClip);
    }
    if (hand.look.lit)
        hand.painter.strokePath(path, hand.ink(5.4));
    hand.painter.strokePath(path, hand.style.pen(Role::Copper, hand.look.lit ? 2.8 : 3));
    hand.painter.restore();
}

void heater(const Hand &hand)
{
    QPainterPath path;
    const double step = (hand.length - 6) / 5;
    path.moveTo(0, 0);
    path.lineTo(0, 1);
    for (int i = 0; i < 5; ++i)
        path.lineTo(i % 2 == 0 ? 10 : -10, 3 + step * (i + 0.5));
    path.lineTo(0, hand.length - 2);
    path.lineTo(0, hand.length);
    copper(hand, path);
}

void winding(const Hand &hand)
{
    QPainterPath path;
    const int turns = 4;
    const double step = hand.length / turns;
    path.moveTo(0, 0);
    for (int i = 0; i < turns; ++i)
        path.cubicTo(11, step * i + step * 0.05, 11, step * i + step * 0.95, 0, step * (i + 1));
    copper(hand, path);
}

void relay(const Hand &hand)
{
    contact(hand);
    const double m = hand.length / 2;
    hand.painter.setPen(hand.ink(1.8));
    hand.painter.drawRect(QRectF(9, m - 6, 12, 12));
    hand.painter.drawLine(QPointF(9, m + 6), QPointF(21, m - 6));
}

void box(const Hand &hand)
{
    hand.painter.setPen(hand.ink(2.4));
    hand.painter.setBrush(hand.style[hand.look.lit ? Role::Zone : Role::Sheet]);
    hand.painter.drawRect(QRectF(-10, 1, 20, hand.length - 2));
    hand.painter.setBrush(Qt::NoBrush);
}

void crossOut(const Hand &hand)
{
    hand.painter.setPen(hand.ink(2.2));
    const double m = hand.length / 2;
    hand.painter.drawLine(QPointF(-11, m - 11), QPointF(11, m + 11));
    hand.painter.drawLine(QPointF(-11, m + 11), QPointF(11, m - 11));
}

bool isCopper(LadderSymbol symbol)
{
    return symbol == LadderSymbol::Heater || symbol == LadderSymbol::Winding;
}

} // namespace

double symbolLength(LadderSymbol symbol)
{
    switch (symbol) {
    case LadderSymbol::Contact:
    case LadderSymbol::Thermostat:
    case LadderSymbol::Relay: return 28;
    case LadderSymbol::OneShot:
    case LadderSymbol::Box: return 36;
    case LadderSymbol::Heater:
    case LadderSymbol::Winding: return 44;
    }
    Q_UNREACHABLE();
}

double symbolReach(LadderSymbol symbol)
{
    switch (symbol) {
    case LadderSymbol::Thermostat:
    case LadderSymbol::Relay: return 22;
    case LadderSymbol::Contact:
    case LadderSymbol::OneShot:
    case LadderSymbol::Heater:
    case LadderSymbol::Winding:
    case LadderSymbol::Box: return 13;
    }
    Q_UNREACHABLE();
}

void paintSymbol(QPainter &painter, LadderSymbol symbol, QPointF top, double length, SymbolLook look, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.translate(top);
    painter.scale(style.scale, style.scale);
    const Hand hand{painter, style, length / style.scale, look};
    switch (symbol) {
    case LadderSymbol::Contact: contact(hand); break;
    case LadderSymbol::Thermostat: thermostat(hand); break;
    case LadderSymbol::OneShot: oneShot(hand); break;
    case LadderSymbol::Heater: heater(hand); break;
    case LadderSymbol::Winding: winding(hand); break;
    case LadderSymbol::Relay: relay(hand); break;
    case LadderSymbol::Box: box(hand); break;
    }
    if (look.broken && !isCopper(symbol))
        crossOut(hand);
    painter.restore();
}

} // namespace app
