#include "app/draw/outlet_picture.h"

#include "app/shared/text_block.h"

#include <QPainter>

#include <cmath>

namespace app {
namespace {

constexpr double kFistAt = 62;   // from the tip to the middle of the fist
constexpr double kLean = 0.5;    // of the probes, outwards

void paintLimb(QPainter &painter, const QPainterPath &path, double unit, const Style &style)
{
    QPen edge = style.pen(Role::Line, 42 * unit);
    edge.setCapStyle(Qt::FlatCap);
    painter.strokePath(path, edge);
    edge.setColor(style[Role::SheetMetal]);
    edge.setWidthF(37 * unit);
    painter.strokePath(path, edge);
}

void paintArm(QPainter &painter, QPointF wrist, QPointF shoulder, double side, double unit, const Style &style)
{
    QPainterPath arm(shoulder);
    arm.cubicTo(shoulder + QPointF(side * 62, -24) * unit, wrist + QPointF(side * 74, 56) * unit, wrist + QPointF(-side * 2, -2) * unit);
    paintLimb(painter, arm, unit, style);
}

void paintBody(QPainter &painter, QPointF head, double unit, const Style &style)
{
    painter.setPen(style.pen(Role::Line, 2.5 * unit));
    painter.setBrush(style[Role::SheetMetal]);
    QPainterPath shoulders;
    shoulders.moveTo(head + QPointF(-146, 92) * unit);
    shoulders.cubicTo(head + QPointF(-130, 24) * unit, head + QPointF(-60, 20) * unit, head + QPointF(-28, 20) * unit);
    shoulders.lineTo(head + QPointF(28, 20) * unit);
    shoulders.cubicTo(head + QPointF(60, 20) * unit, head + QPointF(130, 24) * unit, head + QPointF(146, 92) * unit);
    painter.drawPath(shoulders);
    painter.setBrush(style[Role::DarkPlastic]);
    painter.drawEllipse(head, 35 * unit, 41 * unit);
    QPainterPath band;
    band.moveTo(head + QPointF(-35, -2) * unit);
    band.quadTo(head + QPointF(0, 8) * unit, head + QPointF(35, -2) * unit);
    painter.setPen(style.pen(Role::Line, 4 * unit));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(band);
}

} // namespace

std::vector<HeldProbe> paintPersonAtOutlet(QPainter &painter, const PartPlace &outlet, const QString &red, const QString &black, const Style &style)
{
    const double unit = outlet.unit();
    struct Hand
    {
        Probe probe;
        QPointF tip;
        double side; // -1 left, 1 right
    };
    const auto contact = [&](const QString &id) { return outlet.bounds(id).center() + QPointF(0, outlet.bounds(id).height() * 0.22); };
    Hand left{Probe::Black, contact(black), -1};
    Hand right{Probe::Red, contact(red), 1};
    if (left.tip.x() > right.tip.x())
        std::swap(left, right), left.side = -1, right.side = 1;

    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double middle = (left.tip.x() + right.tip.x()) / 2;
    const QPointF head(middle, outlet.rect().bottom() + 72 * unit);
    std::vector<HeldProbe> held;
    const auto way = [](const Hand &hand) { return QPointF(hand.side * kLean, std::sqrt(1 - kLean * kLean)); };
    for (const Hand &hand : {left, right})
        paintArm(painter, hand.tip + way(hand) * (kFistAt + 12) * unit, head + QPointF(hand.side * 96, 62) * unit, hand.side, unit, style);
    paintBody(painter, head, unit, style);
    for (const Hand &hand : {left, right}) {
        paintProbe(painter, hand.probe, hand.tip, way(hand), unit, style);
        held.push_back({hand.probe, hand.tip + way(hand) * (kProbeLength - 4) * unit, way(hand)});
    }
    painter.restore();
    return held;
}

void paintContactLetter(QPainter &painter, const PartPlace &outlet, const QString &terminal, const QString &letter, const Style &textStyle, const Style &style)
{
    const QRectF slot = outlet.bounds(terminal);
    if (slot.isNull() || letter.isEmpty())
        return;
    const TextBlock text({{letter, Type::Strong, Role::Sheet}}, textStyle);
    const double side = std::max(text.width() + textStyle.px(12), textStyle.px(24));
    const double way = slot.center().x() < outlet.rect().center().x() ? -1 : 1;
    const QRectF box(slot.center().x() + way * (slot.width() / 2 + side / 2 + 8 * outlet.unit()) - side / 2,
                     slot.center().y() - textStyle.px(12) - slot.height() * 0.15, side, textStyle.px(24));
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Ink]);
    painter.drawRoundedRect(box, 3, 3);
    text.paintAround(painter, box.center());
}

} // namespace app
