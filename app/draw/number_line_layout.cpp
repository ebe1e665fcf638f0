#include "app/draw/number_line_layout.h"

#include "app/shared/text_block.h"

#include <algorithm>

namespace app {
namespace {

using Layout = NumberLineLayout;
using Leader = Layout::Leader;

double widthOf(const QString &text, Type type, const Style &style)
{
    return TextBlock({{text, type}}, style).width();
}

void placeBars(Layout &layout, const NumberLineState &state, QPointF topLeft, double width, const Style &style)
{
    const double side = state.small ? 1 : style.px(9);
    const double gap = style.px(state.small ? 8 : 22);
    double bar = width - 2 * side;
    double over = 0;
    if (state.over) {
        const double word = widthOf(NumberLine::tr("OL") + QLatin1Char(' ') + judgementWord(*state.over), Type::QuietStrong, style);
        over = state.small ? width * 0.26 : std::max(word, widthOf(NumberLine::tr("over limit"), Type::Quiet, style)) + style.px(18);
        bar -= over + gap;
    }
    const double high = style.px(state.small ? 18 : kLineBar);
    layout.bar = {topLeft.x() + side, topLeft.y() + 1, bar, high};
    if (state.over)
        layout.over = {layout.bar.right() + gap, layout.bar.top(), over, high};
    layout.axis = {state.from, state.to, layout.bar.left(), bar, state.logarithmic};
    for (const auto &band : state.bands) {
        const double left = layout.axis.clamped(band.from);
        layout.bands.push_back({left, layout.bar.top(), layout.axis.clamped(band.to) - left, high});
    }
}

double rightEnd(const Layout &layout)
{
    return layout.over.isNull() ? layout.bar.right() : layout.over.right();
}

void placeFlags(Layout &layout, const NumberLineState &state, const Style &style)
{
    const auto overs = std::count_if(state.flags.begin(), state.flags.end(), [](const auto &flag) { return flag.over; });
    int over = 0;
    for (std::size_t i = 0; i < state.flags.size(); ++i) {
        const auto &flag = state.flags[i];
        const double x = flag.over && !layout.over.isNull()
            ? layout.over.left() + layout.over.width() * ++over / static_cast<double>(overs + 1)
            : layout.axis.clamped(flag.value);
        const bool boxed = !flag.earlier && !state.small;
        layout.flags.push_back({i, x, 0, boxed ? widthOf(flag.text, Type::SafetyStrong, style) + style.px(20) : 0});
    }
    std::stable_sort(layout.flags.begin(), layout.flags.end(), [](const auto &a, const auto &b) { return a.x < b.x; });
    double free = layout.bar.left() - style.px(8);
    const double end = rightEnd(layout) + style.px(8);
    for (auto &flag : layout.flags) {
        if (flag.width <= 0)
            continue;
        flag.left = std::max(free, std::min(flag.x - flag.width / 2, end - flag.width));
        free = flag.left + flag.width + style.px(4);
    }
    for (auto flag = layout.flags.rbegin(); flag != layout.flags.rend(); ++flag) { // back from the right end
        static constexpr double kFar = 1e9;
        double limit = kFar;
        for (auto after = layout.flags.rbegin(); after != flag; ++after)
            if (after->width > 0)
                limit = std::min(limit, after->left - style.px(4));
        if (flag->width > 0)
            flag->left = std::min(flag->left, std::min(limit, end) - flag->width);
    }
}

void placeTicks(Layout &layout, const NumberLineState &state, const Style &style)
{
    if (state.small || !state.numbers)
        return;
    std::vector<NumberLineState::Tick> ticks = state.ticks;
    if (ticks.empty()) {
        const double room = widthOf(tickText(state.to), Type::Quiet, style) + style.px(44);
        for (const double at : niceTicks(state.from, state.to, state.logarithmic, static_cast<int>(layout.bar.width() / room)))
            ticks.push_back({at, tickText(at)});
    }
    double free = layout.bar.left() - style.px(9);
    const double limit = layout.over.isNull() ? layout.bar.right() + style.px(9)
                                              : layout.over.center().x() - widthOf(NumberLine::tr("over limit"), Type::Quiet, style) / 2 - style.px(6);
    for (std::size_t i = 0; i < ticks.size(); ++i) {
        const bool last = i + 1 == ticks.size();
        Layout::Tick tick{ticks[i].text + (last ? QLatin1Char(' ') + state.unit : QString()), layout.axis.clamped(ticks[i].at), 0, 0};
        tick.width = widthOf(tick.text, Type::Quiet, style);
        const double number = widthOf(ticks[i].text, Type::Quiet, style); // the number stands under its tick, the unit after it
        tick.left = std::max(free, std::min(tick.x - number / 2, limit - tick.width));
        free = tick.left + tick.width + style.px(4);
        layout.ticks.push_back(tick);
    }
}

// The word in the middle of its band, else beside the mark that stands there; false: no room.
bool placeWord(Layout &layout, const QRectF &band, const QString &word, Judgement is, const Style &style)
{
    const double half = widthOf(word, Type::QuietStrong, style) / 2 + style.px(5);
    for (const double middle : {band.center().x(), band.left() + half + 2, band.right() - half - 2}) {
        const bool inside = middle - half >= band.left() && middle + half <= band.right();
        const bool marked = std::any_of(layout.flags.begin(), layout.flags.end(), [&](const auto &flag) {
            return std::abs(flag.x - middle) < half + style.px(8);
        });
        if (inside && !marked) {
            layout.words.push_back({word, middle, is});
            return true;
        }
    }
    return false;
}

// A place in the band for the end of a leader, off the numbers below and off the marks.
double leaderEnd(const Layout &layout, const QRectF &band, const Style &style)
{
    const auto taken = [&](double x) {
        const bool number = layout.leadersBelow && std::any_of(layout.ticks.begin(), layout.ticks.end(), [&](const auto &tick) {
            return x > tick.left - 2 && x < tick.left + tick.width + 2;
        });
        return number || std::any_of(layout.flags.begin(), layout.flags.end(), [&](const auto &flag) { return std::abs(flag.x - x) < style.px(9); });
    };
    const double middle = band.center().x();
    for (double off = 0; off < band.width() / 2 - 3; off += 2)
        for (const double x : {middle - off, middle + off})
            if (!taken(x))
                return x;
    return middle;
}

std::vector<Leader> wantedLeaders(Layout &layout, const NumberLineState &state, const Style &style)
{
    std::vector<Leader> leaders;
    std::vector<std::pair<double, double>> between; // width of the band, place
    for (std::size_t i = 0; i < state.bands.size(); ++i) {
        const QRectF &rect = layout.bands[i];
        const Judgement is = state.bands[i].is;
        if (rect.width() < 1 || (is != Judgement::NoConclusion && placeWord(layout, rect, judgementWord(is), is, style)))
            continue;
        const double at = leaderEnd(layout, rect, style);
        if (is == Judgement::NoConclusion)
            between.emplace_back(rect.width(), at);
        else
            leaders.push_back({judgementWord(is), {at}});
    }
    for (const auto &printed : state.printed)
        leaders.push_back({printed.text, {layout.axis.clamped(printed.at)}, 0, 0, 0, true});
    if (!between.empty()) {
        const QString said = state.between.isEmpty() ? judgementWord(Judgement::NoConclusion) : state.between;
        const double span = between.back().second - between.front().second;
        if (span < widthOf(said, Type::Quiet, style)) { // one text reaches them all
            Leader leader{said, {}};
            for (const auto &[width, at] : between)
                leader.to.push_back(at);
            leaders.push_back(leader);
        } else { // the widest has the whole sentence, the others the word
            const auto widest = std::max_element(between.begin(), between.end());
            for (auto each = between.begin(); each != between.end(); ++each)
                leaders.push_back({each == widest ? said : judgementWord(Judgement::NoConclusion), {each->second}});
        }
    }
    for (Leader &leader : leaders)
        leader.width = widthOf(leader.text, Type::Quiet, style);
    std::stable_sort(leaders.begin(), leaders.end(), [](const Leader &a, const Leader &b) { return a.width < b.width; });
    return leaders;
}

bool collides(const Leader &a, const Leader &b, double gap)
{
    if (a.row == b.row)
        return a.left < b.left + b.width + gap && b.left < a.left + a.width + gap;
    const Leader &nearer = a.row < b.row ? a : b;
    const Leader &farther = a.row < b.row ? b : a;
    return std::any_of(farther.to.begin(), farther.to.end(), [&](double x) { return x > nearer.left - 4 && x < nearer.left + nearer.width + 4; });
}

// Short words first and nearest; a text that would cover another, or be crossed by its line, goes a row further.
void placeLeaders(Layout &layout, std::vector<Leader> leaders, const Style &style)
{
    const double low = layout.bar.left() - style.px(8);
    const double high = rightEnd(layout) + style.px(8);
    for (Leader &leader : leaders) {
        bool placed = false;
        for (leader.row = 0; leader.row < 4 && !placed; ++leader.row) {
            for (const double shift : {0.5, 0.1, 0.9}) {
                leader.left = std::clamp(leader.middle() - leader.width * shift, low, std::max(low, high - leader.width));
                placed = std::none_of(layout.leaders.begin(), layout.leaders.end(), [&](const Leader &other) { return collides(leader, other, style.px(10)); });
                if (placed)
                    break;
            }
            if (placed)
                break;
        }
        layout.leaders.push_back(leader);
    }
}

void moveDown(Layout &layout, double by)
{
    layout.bar.translate(0, by);
    layout.over.translate(0, layout.over.isNull() ? 0 : by);
    for (QRectF &band : layout.bands)
        band.translate(0, by);
}

} // namespace

double NumberLineLayout::leaderY(const Leader &leader, const Style &style) const
{
    const double off = style.px(kLineRow) * (leader.row + 0.5);
    return leadersBelow ? bar.bottom() + (ticks.empty() && over.isNull() ? style.px(6) : style.px(kLineTickRow)) + off : bar.top() - style.px(6) - off;
}

NumberLineLayout layOutNumberLine(const NumberLineState &state, QPointF topLeft, double width, const Style &style)
{
    NumberLineLayout layout;
    layout.flagTop = topLeft.y() + 1;
    placeBars(layout, state, topLeft, width, style);
    placeFlags(layout, state, style);
    placeTicks(layout, state, style);
    const bool boxes = std::any_of(layout.flags.begin(), layout.flags.end(), [](const auto &flag) { return flag.width > 0; });
    layout.leadersBelow = boxes;
    if (!state.small)
        placeLeaders(layout, wantedLeaders(layout, state, style), style);
    int rows = 0;
    for (const Leader &leader : layout.leaders)
        rows = std::max(rows, leader.row + 1);
    if (boxes)
        moveDown(layout, style.px(kLineFlag + 14));
    else if (rows > 0)
        moveDown(layout, style.px(kLineRow * rows + 6));
    double bottom = layout.bar.bottom();
    if (!state.small && (!layout.ticks.empty() || !layout.over.isNull()))
        bottom += style.px(kLineTickRow);
    if (layout.leadersBelow)
        bottom += style.px(kLineRow) * rows;
    layout.height = bottom + 1 - topLeft.y();
    return layout;
}

} // namespace app
