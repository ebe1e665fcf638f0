// How a number line is painted. Where its words stand is worked out first, so that none covers another.
#include "app/draw/axis.h"
#include "app/draw/hatch.h"
#include "app/draw/number_line.h"
#include "app/shared/text_block.h"

#include <QPainter>

#include <algorithm>
#include <cmath>
#include <map>

namespace app {
namespace {

constexpr double kBar = 28, kGap = 6, kLine = 20, kFlag = 26;

// A word with thin lines to one or two places of the bar.
struct Leader
{
    QString text;
    std::vector<double> to; // x
    double left = 0;
    double width = 0;
};

struct Layout
{
    QRectF bar;  // the scale
    QRectF over; // the compartment of OL; empty if there is none
    Axis axis;
    std::vector<Leader> leaders;
    bool leadersBelow = false;
    double flagTop = 0;
    double leaderY = 0; // middle of the words
    double height = 0;
};

double textWidth(const QString &text, Type type, const Style &style)
{
    return TextBlock({{text, type}}, style).width();
}

QRectF bandRect(const Layout &layout, const NumberLineState::Band &band)
{
    const double left = layout.axis.clamped(band.from);
    return {left, layout.bar.top(), layout.axis.clamped(band.to) - left, layout.bar.height()};
}

bool wordFits(const QRectF &rect, Judgement is, const Style &style)
{
    return is != Judgement::NoConclusion
        && rect.width() >= textWidth(judgementWord(is), Type::QuietStrong, style) + style.px(10);
}

// Leaders one beside the other, inside the width.
void spread(std::vector<Leader> &leaders, double left, double right, double gap)
{
    std::sort(leaders.begin(), leaders.end(), [](const Leader &a, const Leader &b) { return a.to.front() < b.to.front(); });
    double free = left;
    for (Leader &leader : leaders) {
        const double middle = (leader.to.front() + leader.to.back()) / 2;
        leader.left = std::max(free, std::min(middle - leader.width / 2, right - leader.width));
        free = leader.left + leader.width + gap;
    }
    double end = right;
    for (auto leader = leaders.rbegin(); leader != leaders.rend(); ++leader) {
        leader->left = std::max(left, std::min(leader->left, end - leader->width));
        end = leader->left - gap;
    }
}

std::vector<Leader> leadersOf(const Layout &layout, const NumberLineState &state, const Style &style)
{
    std::map<QString, std::vector<double>> places;
    for (const auto &band : state.bands) {
        const QRectF rect = bandRect(layout, band);
        if (rect.width() < 1 || wordFits(rect, band.is, style))
            continue;
        const bool between = band.is == Judgement::NoConclusion && !state.between.isEmpty();
        places[between ? state.between : judgementWord(band.is)].push_back(rect.center().x());
    }
    for (const auto &printed : state.printed)
        places[printed.text].push_back(layout.axis.clamped(printed.at));
    std::vector<Leader> leaders;
    for (const auto &[text, to] : places)
        leaders.push_back({text, to, 0, textWidth(text, Type::Quiet, style)});
    spread(leaders, layout.bar.left(), layout.over.isEmpty() ? layout.bar.right() : layout.over.right(), style.px(12));
    return leaders;
}

bool flagged(const NumberLineState &state)
{
    return std::any_of(state.flags.begin(), state.flags.end(), [](const auto &flag) { return !flag.earlier; });
}

Layout layOut(const NumberLineState &state, QPointF topLeft, double width, const Style &style)
{
    Layout layout;
    const double side = state.small ? 1 : style.px(9);
    double barWidth = width - 2 * side;
    const double overWidth = !state.over ? 0 : state.small
        ? width * 0.26
        : std::max(textWidth(NumberLine::tr("OL") + QStringLiteral(" ") + judgementWord(*state.over), Type::QuietStrong, style),
                   textWidth(NumberLine::tr("over limit"), Type::Quiet, style)) + style.px(18);
    if (state.over)
        barWidth -= overWidth + style.px(state.small ? 8 : 22);

    const bool flags = flagged(state) && !state.small;
    double y = topLeft.y() + 1;
    layout.flagTop = y;
    if (flags)
        y += style.px(kFlag + 14);
    const double barHeight = style.px(state.small ? 18 : kBar);
    layout.axis = {state.from, state.to, topLeft.x() + side, barWidth, state.logarithmic};
    layout.bar = {topLeft.x() + side, y, barWidth, barHeight};
    if (state.over)
        layout.over = {layout.bar.right() + style.px(state.small ? 8 : 22), y, overWidth, barHeight};
    if (!state.small)
        layout.leaders = leadersOf(layout, state, style);
    layout.leadersBelow = flags;
    const double leaderRoom = layout.leaders.empty() ? 0 : style.px(kLine + kGap);
    if (!layout.leadersBelow) {
        layout.leaderY = y + style.px(kLine) / 2;
        layout.bar.translate(0, leaderRoom);
        if (state.over)
            layout.over.translate(0, leaderRoom);
    }
    double bottom = layout.bar.bottom();
    if (!state.small && (state.numbers || state.over))
        bottom += style.px(5 + kLine);
    if (layout.leadersBelow && leaderRoom > 0) {
        layout.leaderY = bottom + style.px(kLine) / 2;
        bottom += style.px(kLine);
    }
    layout.height = bottom + 1 - topLeft.y();
    return layout;
}

void paintWord(QPainter &painter, const QString &word, const QRectF &in, const Style &style, QColor ground)
{
    const TextBlock text({{word, Type::QuietStrong}}, style);
    const QRectF box(in.center().x() - text.width() / 2 - style.px(5), in.top() + style.px(4),
                     text.width() + style.px(10), in.height() - style.px(8));
    painter.fillRect(box, ground);
    text.paint(painter, {box.center().x() - text.width() / 2, in.center().y() - text.height() / 2});
}

void paintGround(QPainter &painter, const QRectF &rect, Judgement is, const Style &style)
{
    const double edge = is == Judgement::Good ? 2 : 1;
    painter.fillRect(rect, style[is == Judgement::Good ? Role::Zone : Role::Sheet]);
    if (is == Judgement::Bad)
        paintHatch(painter, rect, style.px(kBadStep), style[Role::Hatch], 1.2);
    if (is == Judgement::NoConclusion)
        paintHatch(painter, rect, style.px(kUnclearStep), style[Role::Hatch], 1.4);
    painter.setPen(QPen(style[is == Judgement::Good ? Role::Ink : Role::Edge], edge, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect);
}

void paintBands(QPainter &painter, const Layout &layout, const NumberLineState &state, const Style &style)
{
    painter.setPen(QPen(style[Role::Edge], 1));
    painter.setBrush(style[Role::Sheet]);
    painter.drawRect(layout.bar);
    for (const bool good : {false, true}) { // the good one last: its edge lies on top
        for (const auto &band : state.bands) {
            const QRectF rect = bandRect(layout, band);
            if ((band.is == Judgement::Good) != good || rect.width() < 1)
                continue;
            paintGround(painter, rect, band.is, style);
            if (!state.small && wordFits(rect, band.is, style))
                paintWord(painter, judgementWord(band.is), rect, style, style[good ? Role::Zone : Role::Sheet]);
        }
    }
}

void paintOver(QPainter &painter, const Layout &layout, const NumberLineState &state, const Style &style)
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
    paintWord(painter, NumberLine::tr("OL") + QLatin1Char(' ') + judgementWord(*state.over), layout.over, style,
              style[*state.over == Judgement::Good ? Role::Zone : Role::Sheet]);
    paintLine(painter, {NumberLine::tr("over limit"), Type::Quiet, Role::Ink2}, style,
              {layout.over.center().x(), layout.over.bottom() + style.px(5 + kLine / 2)}, Qt::AlignHCenter);
}

void paintTicks(QPainter &painter, const Layout &layout, const NumberLineState &state, const Style &style)
{
    if (state.small || !state.numbers)
        return;
    std::vector<NumberLineState::Tick> ticks = state.ticks;
    if (ticks.empty()) {
        const double room = textWidth(tickText(state.to), Type::Quiet, style) + style.px(34);
        for (const double at : niceTicks(state.from, state.to, state.logarithmic, static_cast<int>(layout.bar.width() / room)))
            ticks.push_back({at, tickText(at)});
    }
    const double middle = layout.bar.bottom() + style.px(5 + kLine / 2);
    double free = layout.bar.left() - style.px(20);
    for (std::size_t i = 0; i < ticks.size(); ++i) {
        const double x = layout.axis.clamped(ticks[i].at);
        const bool last = i + 1 == ticks.size();
        const double width = textWidth(ticks[i].text, Type::Quiet, style);
        painter.setPen(QPen(style[Role::Edge], 1));
        painter.drawLine(QPointF(x, layout.bar.bottom()), QPointF(x, layout.bar.bottom() + style.px(5)));
        const double left = std::max(free, x - width / 2);
        free = left + width + style.px(4);
        paintLine(painter, {ticks[i].text + (last ? QLatin1Char(' ') + state.unit : QString()), Type::Quiet, Role::Ink2},
                  style, {left, middle});
    }
}

void paintLeaders(QPainter &painter, const Layout &layout, const Style &style)
{
    for (const Leader &leader : layout.leaders) {
        paintLine(painter, {leader.text, Type::Quiet, Role::Ink}, style, {leader.left, layout.leaderY});
        const double from = layout.leadersBelow ? layout.leaderY - style.px(kLine / 2) : layout.leaderY + style.px(kLine / 2);
        for (const double x : leader.to) {
            const double start = std::clamp(x, leader.left + style.px(2), leader.left + leader.width - style.px(2));
            const double dot = layout.bar.center().y() + (layout.leadersBelow ? style.px(6) : -style.px(6));
            painter.setPen(QPen(style[Role::Ink2], 1));
            painter.drawPolyline(QPolygonF({{start, from}, {x, layout.leadersBelow ? layout.bar.bottom() : layout.bar.top()}, {x, dot}}));
            painter.setPen(Qt::NoPen);
            painter.setBrush(style[Role::Ink2]);
            painter.drawEllipse(QPointF(x, dot), 2.2, 2.2);
        }
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

void paintUncertainty(QPainter &painter, const Layout &layout, const NumberLineState::Flag &flag, const Style &style)
{
    const double y = layout.bar.top() - style.px(6);
    const double left = layout.axis.clamped(flag.value - flag.halfWidth);
    const double right = layout.axis.clamped(flag.value + flag.halfWidth);
    painter.setPen(QPen(style[Role::Ink], 2, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    for (const double x : {left, right})
        painter.drawLine(QPointF(x, y - style.px(4)), QPointF(x, y + style.px(4)));
}

// Flags stand side by side from the left where they would cover each other.
void paintFlags(QPainter &painter, const Layout &layout, const NumberLineState &state, const Style &style)
{
    const auto overs = std::count_if(state.flags.begin(), state.flags.end(), [](const auto &flag) { return flag.over; });
    double free = layout.bar.left() - style.px(8);
    int over = 0;
    for (const auto &flag : state.flags) {
        double x = flag.over && !layout.over.isEmpty()
            ? layout.over.left() + layout.over.width() * (++over) / static_cast<double>(overs + 1)
            : layout.axis.clamped(flag.value);
        const bool shown = !flag.earlier && !state.small;
        if (shown) {
            const TextBlock text({{flag.text, Type::SafetyStrong, Role::Sheet}}, style);
            const double width = text.width() + style.px(20);
            const double right = (layout.over.isEmpty() ? layout.bar.right() : layout.over.right()) + style.px(8);
            const double left = std::clamp(x - width / 2, std::min(free, right - width), right - width);
            free = left + width + style.px(4);
            const QRectF box(left, layout.flagTop, width, style.px(kFlag));
            painter.setPen(Qt::NoPen);
            painter.setBrush(style[Role::Ink]);
            painter.drawRoundedRect(box, 2, 2);
            text.paint(painter, {left + style.px(10), box.center().y() - text.height() / 2});
            painter.setPen(QPen(style[Role::Ink], 3, Qt::SolidLine, Qt::FlatCap));
            const double stem = std::clamp(x, left + 2, left + width - 2);
            const double end = layout.bar.top() + (flag.over ? 0 : layout.bar.height() / 2);
            painter.drawPolyline(QPolygonF({{stem, box.bottom()}, {x, layout.bar.top() - style.px(12)}, {x, end}}));
            if (!flag.over && flag.halfWidth > 0)
                paintUncertainty(painter, layout, flag, style);
        }
        if (!flag.over || !shown)
            paintDiamond(painter, {x, layout.bar.center().y()}, style.px(7), !flag.earlier, style);
    }
}

} // namespace

double numberLineHeight(const NumberLineState &state, double width, const Style &style)
{
    return std::ceil(layOut(state, {0, 0}, width, style).height);
}

void paintNumberLine(QPainter &painter, const QRectF &into, const NumberLineState &state, const Style &style)
{
    if (!(state.to > state.from) || (state.logarithmic && state.from <= 0))
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Layout layout = layOut(state, into.topLeft(), into.width(), style);
    paintBands(painter, layout, state, style);
    paintOver(painter, layout, state, style);
    paintTicks(painter, layout, state, style);
    paintLeaders(painter, layout, style);
    paintFlags(painter, layout, state, style);
    painter.restore();
}

} // namespace app
