#include "app/draw/chain_wires.h"

#include <QPainter>

#include <algorithm>

namespace app {
namespace {

using Item = ChainLayout::Item;
constexpr double kDiscReach = 9;

struct Ends // of one item of a rung
{
    double top, bottom;
    bool pulledTop, pulledBottom, brokenBelow;
};

void pulledWord(QPainter &painter, QPointF at, const Style &style)
{
    paintLine(painter, {ChainWords::tr("pulled"), Type::Quiet, Role::Ink2}, style, at);
}

// A push-on connector turned aside at the end of a wire; `down`: it hangs from a wire that comes from above.
void paintConnector(QPainter &painter, QPointF end, bool down, const Style &style)
{
    painter.save();
    painter.translate(end);
    painter.scale(style.scale, down ? style.scale : -style.scale);
    painter.rotate(-62);
    painter.setPen(QPen(style[Role::Ink2], 1.4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(style[Role::Sheet]);
    painter.drawPolygon(QPolygonF({{-2, 0}, {2, 0}, {2, 5}, {4.5, 8}, {4.5, 18}, {-4.5, 18}, {-4.5, 8}, {-2, 5}}));
    painter.drawLine(QPointF(0, 11), QPointF(0, 18));
    painter.restore();
}

void hollow(QPainter &painter, QPointF at, const Style &style)
{
    painter.setPen(QPen(style[Role::Ink], style.px(2)));
    painter.setBrush(style[Role::Sheet]);
    painter.drawEllipse(at, style.px(4), style.px(4));
}

void line(QPainter &painter, double x, double from, double to, const Style &style)
{
    painter.setPen(QPen(style[Role::Ink2], style.px(2), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(x, from), QPointF(x, to));
}

// A broken wire is drawn in its place: two ends that do not meet.
void brokenLine(QPainter &painter, double x, double from, double to, const Style &style)
{
    const double middle = (from + to) / 2;
    line(painter, x, from, middle - style.px(4), style);
    line(painter, x, middle + style.px(4), to, style);
    painter.setPen(QPen(style[Role::Ink], style.px(2.2), Qt::SolidLine, Qt::RoundCap));
    for (const double off : {-4.0, 4.0})
        painter.drawLine(QPointF(x - style.px(6), middle + style.px(off + 2.5)),
                         QPointF(x + style.px(6), middle + style.px(off - 2.5)));
}

// From the lower end of one component (or the upper rail) to the upper end of the next (or the lower rail).
void paintBetween(QPainter &painter, double x, const Ends &above, const Ends &below, const Style &style)
{
    const double from = above.bottom;
    const double to = below.top;
    if (above.brokenBelow) {
        brokenLine(painter, x, from, to, style);
        return;
    }
    if (!above.pulledBottom && !below.pulledTop) {
        line(painter, x, from, to, style);
        return;
    }
    const double stub = style.px(7);
    double start = from;
    double end = to;
    if (above.pulledBottom) {
        hollow(painter, {x, from + style.px(4)}, style);
        start = from + style.px(12);
    }
    if (below.pulledTop) {
        hollow(painter, {x, to - style.px(4)}, style);
        end = to - style.px(12);
    }
    const double middle = (start + end) / 2;
    if (above.pulledBottom && below.pulledTop) { // the whole wire hangs loose
        paintConnector(painter, {x + style.px(3), middle - style.px(4)}, true, style);
        pulledWord(painter, {x + style.px(28), middle}, style);
        return;
    }
    if (below.pulledTop) { // the wire hangs from above
        const double tip = std::max(start + stub, middle - style.px(6));
        line(painter, x, start, tip, style);
        paintConnector(painter, {x, tip}, true, style);
        pulledWord(painter, {x + style.px(28), tip + style.px(7)}, style);
    }
    if (above.pulledBottom) {
        const double tip = std::min(end - stub, middle + style.px(6));
        line(painter, x, tip, end, style);
        pulledWord(painter, {x + style.px(28), tip - style.px(7)}, style);
        paintConnector(painter, {x, tip}, false, style);
    }
}

std::vector<Ends> endsOf(const ChainLayout &layout, const ChainState &state, int rung)
{
    const auto &rows = state.rungs[static_cast<std::size_t>(rung)].rows;
    std::vector<Ends> ends;
    for (const Item &item : layout.items) {
        if ((item.kind != ChainLayout::Kind::Row && item.kind != ChainLayout::Kind::Fold) || item.rung != rung)
            continue;
        const ChainRow &first = rows[static_cast<std::size_t>(item.index)];
        const ChainRow &last = rows[static_cast<std::size_t>(item.index + item.count - 1)];
        ends.push_back({item.top, item.bottom, first.pulledTop, last.pulledBottom, last.brokenBelow});
    }
    return ends;
}

QRectF zone(const ChainLayout &layout, const ChainState &state, const Style &style)
{
    const Item *first = layout.itemOf(0, state.lit->first);
    const Item *last = layout.itemOf(0, state.lit->last);
    if (!first || !last)
        return {};
    return QRectF(first->wireX - style.px(27), first->top - style.px(5), style.px(54), last->bottom - first->top + style.px(10));
}

void disc(QPainter &painter, QPointF at, bool red, const Style &style)
{
    painter.setPen(QPen(style[red ? Role::Sheet : Role::BlackEdge], style.px(red ? 1.5 : 1.2)));
    painter.setBrush(style[red ? Role::RedProbe : Role::BlackProbe]);
    painter.drawEllipse(at, style.px(kDiscReach), style.px(kDiscReach));
    TextBlock::Options options;
    options.colour = red ? style[Role::RedCore] : colourOf(style.dark() ? Role::Ink : Role::Sheet, style.shade);
    const TextBlock letter({{red ? ChainWords::tr("R") : ChainWords::tr("B"), Type::QuietStrong}}, style, TextBlock::kNoLimit,
                           options);
    letter.paintAround(painter, at);
}

// The wires between the components under test, heavy.
void paintLitWires(QPainter &painter, const ChainLayout &layout, const ChainState &state, const Style &style)
{
    if (!state.lit)
        return;
    painter.setPen(QPen(style[Role::Ink], style.px(5), Qt::SolidLine, Qt::FlatCap));
    for (int row = state.lit->first; row < state.lit->last; ++row) {
        const Item *a = layout.itemOf(0, row);
        const Item *b = layout.itemOf(0, row + 1);
        if (a && b && a != b)
            painter.drawLine(QPointF(a->wireX, a->bottom), QPointF(a->wireX, b->top));
    }
}

} // namespace

void paintWires(QPainter &painter, const ChainLayout &layout, const ChainState &state, const Style &style)
{
    if (state.lit && !layout.rails.empty()) {
        const QRectF lit = zone(layout, state, style);
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Zone]);
        painter.drawRoundedRect(lit, style.px(5), style.px(5));
    }
    for (std::size_t i = 0; i < layout.rails.size(); ++i) {
        const ChainLayout::Rail &rail = layout.rails[i];
        Ends above{0, rail.top, false, false, false};
        for (const Ends &ends : endsOf(layout, state, static_cast<int>(i))) {
            paintBetween(painter, rail.wireX, above, ends, style);
            above = ends;
        }
        paintBetween(painter, rail.wireX, above, {rail.bottom, 0, false, false, false}, style);
    }
    paintLitWires(painter, layout, state, style);
}

void paintProbes(QPainter &painter, const ChainLayout &layout, const ChainState &state, const Style &style)
{
    if (!state.lit || layout.rails.empty())
        return;
    const Item *first = layout.itemOf(0, state.lit->first);
    const Item *last = layout.itemOf(0, state.lit->last);
    if (!first || !last)
        return;
    disc(painter, {first->wireX, first->top - style.px(3)}, state.lit->redOnTop, style);
    if (state.lit->other.isEmpty()) {
        disc(painter, {last->wireX, last->bottom + style.px(3)}, !state.lit->redOnTop, style);
        return;
    }
    const QPointF aside(first->wireX - style.px(20), last->bottom + style.px(2));
    disc(painter, aside, !state.lit->redOnTop, style);
    const TextBlock words({{state.lit->other, Type::Quiet}}, style);
    words.paint(painter, {aside.x() - style.px(kDiscReach + 4) - words.width(), words.topAt(aside.y())});
}

} // namespace app
