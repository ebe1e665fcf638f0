#include "app/draw/chain_paint.h"

#include "app/draw/chain_wires.h"
#include "app/draw/ladder_symbols.h"

#include <QPainter>

#include <algorithm>

namespace app {
namespace {

using Item = ChainLayout::Item;

const ChainRow &rowOf(const ChainState &state, const Item &item)
{
    const auto &rows = state.rungs.empty() ? state.places[static_cast<std::size_t>(item.rung)].rows
                                           : state.rungs[static_cast<std::size_t>(item.rung)].rows;
    return rows[static_cast<std::size_t>(item.index)];
}

bool isLit(const ChainState &state, const Item &item)
{
    return item.kind == ChainLayout::Kind::Row && item.rung == 0 && state.lit && item.index >= state.lit->first && item.index <= state.lit->last;
}

void paintTexts(QPainter &painter, const Item &item, Standing standing, const Style &style)
{
    item.name->paint(painter, item.textAt);
    if (item.words) {
        item.words->paint(painter, item.wordsAt);
        paintMark(painter, standing, item.markAt, style);
    }
    if (item.more)
        item.more->paint(painter, item.moreAt);
    if (item.badge) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Ink]);
        painter.drawRoundedRect(item.badgeRect, 2, 2);
        item.badge->paintAround(painter, item.badgeRect.center());
    }
}

void paintChosen(QPainter &painter, const QRectF &rect, const Style &style)
{
    painter.fillRect(rect, style[Role::Tint]);
    painter.fillRect(QRectF(rect.left(), rect.top(), 4, rect.height()), style[Role::Petrol]);
}

void paintRow(QPainter &painter, const Item &item, const ChainState &state, const Style &style)
{
    const ChainRow &row = rowOf(state, item);
    const bool bad = row.standing == Standing::Failed || row.standing == Standing::Proven;
    const bool fold = item.kind == ChainLayout::Kind::Fold;
    paintSymbol(painter, fold ? LadderSymbol::Contact : row.symbol, {item.wireX, item.top}, item.bottom - item.top,
                {!fold && row.open, bad, isLit(state, item)}, style);
    paintTexts(painter, item, row.standing, style);
}

void paintPlaceHead(QPainter &painter, const Item &item, const ChainPlace &place, const Style &style)
{
    const double side = style.px(12);
    const QRectF square(style.px(4), item.textAt.y() + item.name->firstBaseline() / 2 - side / 2 + style.px(2), side, side);
    painter.setPen(QPen(style[Role::Ink], 2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(style[place.open ? Role::Ink : Role::Sheet]);
    painter.drawRect(square);
    item.name->paint(painter, item.textAt);
    item.more->paint(painter, item.moreAt);
}

// The line down the left from place to place, with a branch to every component.
void paintPlaceLines(QPainter &painter, const ChainLayout &layout, const Style &style)
{
    const double x = style.px(10);
    double from = -1;
    double to = 0;
    painter.setPen(QPen(style[Role::Ink], 2));
    for (const Item &item : layout.items) {
        if (item.kind == ChainLayout::Kind::Condition)
            continue;
        const double y = item.textAt.y() + item.name->firstBaseline() / 2 + style.px(2);
        if (from < 0)
            from = y;
        to = y;
        if (item.kind == ChainLayout::Kind::Row)
            painter.drawLine(QPointF(x, y), QPointF(style.px(24), y));
    }
    if (from >= 0)
        painter.drawLine(QPointF(x, from), QPointF(x, to));
}

void dashed(QPainter &painter, const Style &style, Role role = Role::Ink2)
{
    QPen pen(style[role], style.px(1.6), Qt::SolidLine, Qt::FlatCap);
    pen.setDashPattern({2.2, 1.8});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
}

void paintReach(QPainter &painter, const Item &item, const ChainCondition &condition, const ChainLayout &layout, const Style &style)
{
    const double start = item.textAt.x() + item.name->width() + style.px(6);
    const double y = item.textAt.y() + item.name->firstBaseline() * 0.65;
    const ChainLayout::Rail &rail = layout.rails.front();
    const Item *first = layout.itemOf(0, condition.first);
    const Item *last = layout.itemOf(0, condition.last);
    QPointF to(rail.wireX - style.px(27), condition.at == ChainCondition::At::TopRail ? rail.top : rail.bottom);
    if (condition.at == ChainCondition::At::Rows && first && last) {
        const double middle = std::clamp(y, first->top, last->bottom);
        to = {rail.wireX - style.px(17), condition.first == condition.last ? (first->top + first->bottom) / 2 : middle};
        if (condition.first != condition.last) {
            to.setX(layout.bracketX + style.px(4));
            painter.setPen(QPen(style[Role::Ink2], style.px(1.4)));
            painter.drawPolyline(QPolygonF({{to.x() + style.px(5), first->top}, {to.x(), first->top}, {to.x(), last->bottom}, {to.x() + style.px(5), last->bottom}}));
        }
    }
    dashed(painter, style);
    const double turn = std::max(start, std::min(layout.bracketX, to.x() - style.px(6)));
    if (std::abs(to.y() - y) < style.px(9))
        painter.drawLine(QPointF(start, y), QPointF(to.x(), y));
    else
        painter.drawPolyline(QPolygonF({{start, y}, {turn, y}, {turn, to.y()}, to}));
}

void paintRailName(QPainter &painter, const QString &name, const QStringList &sight, QPointF leftMiddle, double right, const Style &style)
{
    const double x = leftMiddle.x() + paintLine(painter, {name, Type::Strong}, style, leftMiddle) + style.px(8);
    for (const QString &words : sight) {
        if (TextBlock({{words, Type::Quiet}}, style).width() <= right - x) {
            paintLine(painter, {words, Type::Quiet, Role::Ink2}, style, {x, leftMiddle.y()});
            return;
        }
    }
}

void paintLinks(QPainter &painter, const ChainLayout &layout, const ChainState &state, const Style &style)
{
    for (const ChainLink &link : state.links) {
        const Item *a = layout.itemOf(0, link.first);
        const Item *b = layout.itemOf(1, link.second);
        if (!a || !b)
            continue;
        const double x = b->wireX - style.px(38);
        const double from = a->rect.top() - style.px(1);
        const double to = (b->top + b->bottom) / 2;
        dashed(painter, style, Role::Ink);
        painter.drawPolyline(QPolygonF({{a->wireX + style.px(6), (a->top + a->bottom) / 2}, {a->wireX + style.px(16), from}, {x, from}, {x, to}, {b->wireX - style.px(5), to}}));
        const TextBlock words({{ChainWords::tr("one\npart"), Type::QuietStrong}}, style);
        words.paint(painter, {x + style.px(4), to < from ? to + style.px(4) : from + style.px(4)});
    }
}

} // namespace

void paintChainBody(QPainter &painter, const ChainLayout &layout, const ChainState &state, int current, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (current >= 0 && current < static_cast<int>(layout.items.size()))
        paintChosen(painter, layout.items[static_cast<std::size_t>(current)].rect, style);
    paintWires(painter, layout, state, style);
    if (state.rungs.empty())
        paintPlaceLines(painter, layout, style);
    for (const Item &item : layout.items) {
        switch (item.kind) {
        case ChainLayout::Kind::Place: paintPlaceHead(painter, item, state.places[static_cast<std::size_t>(item.rung)], style); break;
        case ChainLayout::Kind::Condition: {
            const ChainCondition &condition = state.conditions[static_cast<std::size_t>(item.index)];
            if (!layout.conditionsBelow)
                paintReach(painter, item, condition, layout, style);
            paintTexts(painter, item, condition.standing, style);
            break;
        }
        case ChainLayout::Kind::Fold:
        case ChainLayout::Kind::Row:
            if (state.rungs.empty())
                paintTexts(painter, item, rowOf(state, item).standing, style);
            else
                paintRow(painter, item, state, style);
        }
    }
    if (layout.rails.size() > 1)
        paintLinks(painter, layout, state, style);
    paintProbes(painter, layout, state, style);
    painter.restore();
}

void paintRails(QPainter &painter, const ChainLayout &layout, double topY, double bottomY, double right, const ChainSight &sight, const Style &style)
{
    painter.save();
    for (const ChainLayout::Rail &rail : layout.rails) {
        painter.setPen(QPen(style[Role::Ink], style.px(5), Qt::SolidLine, Qt::FlatCap));
        for (const double y : {topY, bottomY})
            painter.drawLine(QPointF(rail.wireX - style.px(26), y), QPointF(rail.wireX + style.px(26), y));
        paintRailName(painter, rail.topName, sight.above, {rail.wireX + style.px(34), topY}, right, style);
        paintRailName(painter, rail.bottomName, sight.below, {rail.wireX + style.px(34), bottomY}, right, style);
        if (!rail.title.isEmpty())
            paintLine(painter, {rail.title, Type::QuietStrong}, style, {rail.wireX, topY - style.px(13)}, Qt::AlignHCenter);
    }
    painter.restore();
}

void paintChainFoot(QPainter &painter, const ChainLayout &layout, const ChainState &state, QPointF topLeft, const Style &style)
{
    if (!layout.foot)
        return;
    const QPointF text = topLeft + QPointF(state.wires ? style.px(22) : 0, style.px(10));
    layout.foot->paint(painter, text);
    if (state.wires)
        paintMark(painter, *state.wires, {topLeft.x() + style.px(kMarkSide / 2), text.y() + layout.foot->firstBaseline() * 0.65}, style);
}

void paintStrip(QPainter &painter, const QRectF &into, const ChainState &state, double from, double to, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(into, style[Role::Well]);
    const auto &rows = state.rungs.front().rows;
    const double step = into.height() / static_cast<double>(rows.size());
    Style small = style;
    small.scale = std::min(style.scale, std::min(step, into.width()) / (kMarkSide + 4));
    double y = into.top() + step / 2;
    for (const ChainRow &row : rows) {
        paintMark(painter, row.standing, {into.center().x(), y}, small, style[Role::Ink], style[Role::Well]);
        y += step;
    }
    painter.setPen(QPen(style[Role::Ink], 2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(into.left() + 1, into.top() + into.height() * from, into.width() - 2, into.height() * (to - from)));
    painter.restore();
}

} // namespace app
