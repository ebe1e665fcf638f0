// How a number line is painted, once it is known where everything stands.
#include "app/draw/hatch.h"
#include "app/draw/number_line_layout.h"
#include "app/shared/text_block.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

void paintWord(QPainter &painter, const QString &word, QPointF middle, double height, const Style &style, QColor ground)
{
    const TextBlock text({{word, Type::QuietStrong}}, style);
    const double half = text.width() / 2 + style.px(5);
    painter.fillRect(QRectF(middle.x() - half, middle.y() - height / 2, 2 * half, height), ground);
    text.paintAround(painter, middle);
}

void paintGround(QPainter &painter, const QRectF &rect, Judgement is, const Style &style)
{
    const bool good = is == Judgement::Good;
    painter.fillRect(rect, style[good ? Role::Zone : Role::Sheet]);
    if (is == Judgement::Bad)
        paintHatch(painter, rect, style.px(kBadStep), style[Role::Hatch], 1.2);
    if (is == Judgement::NoConclusion)
        paintHatch(painter, rect, style.px(kUnclearStep), style[Role::Hatch], 1.4);
    painter.setPen(QPen(style[good ? Role::Ink : Role::Edge], good ? 2 : 1, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect);
}

void paintBands(QPainter &painter, const NumberLineLayout &layout, const NumberLineState &state, const Style &style)
{
    painter.setPen(QPen(style[Role::Edge], 1));
    painter.setBrush(style[Role::Sheet]);
    painter.drawRect(layout.bar);
    for (const bool good : {false, true}) // the good one last: its edge lies on top
        for (std::size_t i = 0; i < state.bands.size(); ++i)
            if ((state.bands[i].is == Judgement::Good) == good && layout.bands[i].width() >= 1)
                paintGround(painter, layout.bands[i], state.bands[i].is, style);
    for (const auto &word : layout.words)
        paintWord(painter, word.text, {word.middle, layout.bar.center().y()}, layout.bar.height() - style.px(8), style,
                  style[word.is == Judgement::Good ? Role::Zone : Role::Sheet]);
}

void paintOver(QPainter &painter, const NumberLineLayout &layout, const NumberLineState &state, const Style &style)
{
    if (!state.over)
        return;
    paintGround(painter, layout.over, *state.over, style);
    const double x = (layout.bar.right() + layout.over.left()) / 2;
    painter.setPen(QPen(style[Role::Edge], 1.25));
    for (const double off : {-2.5, 2.5})
        painter.drawLine(QPointF(x + off - 2, layout.bar.top() - 2), QPointF(x + off + 2, layout.bar.bottom() + 2));
    if (state.small)
        return;
    paintWord(painter, NumberLine::tr("OL") + QLatin1Char(' ') + judgementWord(*state.over), layout.over.center(), layout.over.height() - style.px(8), style,
              style[*state.over == Judgement::Good ? Role::Zone : Role::Sheet]);
    paintLine(painter, {NumberLine::tr("over limit"), Type::Quiet, Role::Ink2}, style,
              {layout.over.center().x(), layout.over.bottom() + style.px(14)}, Qt::AlignHCenter);
}

void paintTicks(QPainter &painter, const NumberLineLayout &layout, const Style &style)
{
    for (const auto &tick : layout.ticks) {
        painter.setPen(QPen(style[Role::Edge], 1));
        painter.drawLine(QPointF(tick.x, layout.bar.bottom()), QPointF(tick.x, layout.bar.bottom() + style.px(5)));
        paintLine(painter, {tick.text, Type::Quiet, Role::Ink2}, style, {tick.left, layout.bar.bottom() + style.px(14)});
    }
}

void paintLeader(QPainter &painter, const NumberLineLayout &layout, const NumberLineLayout::Leader &leader, const Style &style)
{
    const double y = layout.leaderY(leader, style);
    const double way = layout.leadersBelow ? 1 : -1; // from the line to the words
    paintLine(painter, {leader.text, Type::Quiet, Role::Ink}, style, {leader.left, y});
    const double edge = layout.leadersBelow ? layout.bar.bottom() : layout.bar.top();
    for (const double x : leader.to) {
        const double start = std::clamp(x, leader.left + style.px(2), leader.left + leader.width - style.px(2));
        const double end = leader.printed ? edge : layout.bar.center().y() + way * style.px(6);
        const double turn = y - way * style.px(kLineRow * 0.5 + 4);
        painter.setPen(QPen(style[Role::Ink2], leader.printed ? 1.75 : 1));
        painter.drawPolyline(QPolygonF({{start, y - way * style.px(kLineRow) / 2}, {x, turn}, {x, end}}));
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[leader.printed ? Role::Ink : Role::Ink2]);
        if (leader.printed)
            painter.drawPolygon(QPolygonF({{x, edge - way * style.px(4)}, {x - style.px(5), edge + way * style.px(5)}, {x + style.px(5), edge + way * style.px(5)}}));
        else
            painter.drawEllipse(QPointF(x, end), 2.2, 2.2);
    }
}

void paintDiamond(QPainter &painter, QPointF middle, double reach, bool filled, const Style &style)
{
    const QPolygonF diamond({{middle.x(), middle.y() - reach}, {middle.x() + reach, middle.y()},
                             {middle.x(), middle.y() + reach}, {middle.x() - reach, middle.y()}});
    painter.setPen(QPen(style[filled ? Role::Sheet : Role::Ink], filled ? 1 : 2));
    painter.setBrush(style[filled ? Role::Ink : Role::Sheet]);
    painter.drawPolygon(diamond);
}

void paintUncertainty(QPainter &painter, const NumberLineLayout &layout, const NumberLineState::Flag &flag, const Style &style)
{
    const double y = layout.bar.top() - style.px(6);
    const double left = layout.axis.clamped(flag.value - flag.halfWidth);
    const double right = layout.axis.clamped(flag.value + flag.halfWidth);
    painter.setPen(QPen(style[Role::Ink], 2, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    for (const double x : {left, right})
        painter.drawLine(QPointF(x, y - style.px(4)), QPointF(x, y + style.px(4)));
}

void paintBox(QPainter &painter, const NumberLineLayout &layout, const NumberLineLayout::Flag &place, const NumberLineState::Flag &flag, const Style &style)
{
    const QRectF box(place.left, layout.flagTop, place.width, style.px(kLineFlag));
    painter.setPen(QPen(style[Role::Ink], 3, Qt::SolidLine, Qt::FlatCap));
    const double stem = std::clamp(place.x, place.left + 2, place.left + place.width - 2);
    const double end = layout.bar.top() + (flag.over ? 0 : layout.bar.height() / 2);
    painter.drawPolyline(QPolygonF({{stem, box.bottom() - 1}, {place.x, layout.bar.top() - style.px(11)}, {place.x, end}}));
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Ink]);
    painter.drawRoundedRect(box, 2, 2);
    TextBlock({{flag.text, Type::SafetyStrong, Role::Sheet}}, style).paintAround(painter, box.center());
    if (!flag.over && flag.halfWidth > 0)
        paintUncertainty(painter, layout, flag, style);
}

void paintFlags(QPainter &painter, const NumberLineLayout &layout, const NumberLineState &state, const Style &style)
{
    for (const auto &place : layout.flags) {
        const auto &flag = state.flags[place.index];
        if (place.width > 0)
            paintBox(painter, layout, place, flag, style);
        if (!flag.over || place.width <= 0)
            paintDiamond(painter, {place.x, layout.bar.center().y()}, style.px(7), !flag.earlier, style);
    }
}

} // namespace

double numberLineHeight(const NumberLineState &state, double width, const Style &style)
{
    return std::ceil(layOutNumberLine(state, {0, 0}, width, style).height);
}

void paintNumberLine(QPainter &painter, const QRectF &into, const NumberLineState &state, const Style &style)
{
    if (!(state.to > state.from) || (state.logarithmic && state.from <= 0))
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const NumberLineLayout layout = layOutNumberLine(state, into.topLeft(), into.width(), style);
    paintBands(painter, layout, state, style);
    paintOver(painter, layout, state, style);
    for (const auto &leader : layout.leaders)
        paintLeader(painter, layout, leader, style);
    paintTicks(painter, layout, style);
    paintFlags(painter, layout, state, style);
    painter.restore();
}

} // namespace app
