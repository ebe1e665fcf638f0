#include "app/draw/chain_layout.h"

#include "app/draw/axis.h"
#include "app/draw/ladder_symbols.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

using Item = ChainLayout::Item;
constexpr double kMarkRoom = kMarkSide + 7;

std::shared_ptr<TextBlock> block(const Runs &runs, const Style &style, double width)
{
    return std::make_shared<TextBlock>(runs, style, std::max(1.0, width));
}

// Name, mark and words, badge and more, one under the other from `top`; returns the height.
double layOutText(Item &item, const ChainRow &row, double left, double top, double width, const Style &style)
{
    const bool plain = row.standing == Standing::Untested || row.standing == Standing::Cleared;
    const bool bad = row.standing == Standing::Failed || row.standing == Standing::Proven;
    const Type type = bad ? Type::QuietStrong : Type::Quiet;
    item.textAt = {left, top};
    item.name = block({{row.name, Type::Strong}}, style, width);
    double y = top + item.name->height() + style.px(1);
    item.words = block({{ChainWords::shown(row), type, plain ? Role::Ink2 : Role::Ink}}, style, width - style.px(kMarkRoom));
    item.wordsAt = {left + style.px(kMarkRoom), y};
    item.markAt = {left + style.px(kMarkSide / 2), y + std::min(item.words->height(), style.px(18)) / 2};
    if (row.likeliest) {
        item.badge = block({{ChainWords::tr("likeliest now"), Type::QuietStrong, Role::Sheet}}, style, width - style.px(10));
        const QSizeF size(item.badge->width() + style.px(10), item.badge->height() + style.px(2));
        const double beside = item.wordsAt.x() + item.words->width() + style.px(5);
        const bool fits = beside + size.width() <= left + width + 1;
        if (!fits)
            y += item.words->height() + style.px(2);
        item.badgeRect = QRectF(fits ? beside : left, y - style.px(1), size.width(), size.height());
    }
    y += std::max(item.badge ? item.badgeRect.height() : 0, item.words->height());
    if (!row.shelf.isEmpty()) {
        item.more = block({{row.shelf, Type::Quiet, Role::Ink2}}, style, width);
        item.moreAt = {left, y};
        y += item.more->height();
    }
    return y - top;
}

// Rows first to last of cleared rows in a run, as one.
ChainRow foldedRow(const ChainRung &rung, int first, int count)
{
    ChainRow row = rung.rows[static_cast<std::size_t>(first)];
    double ohms = 0;
    bool all = true;
    QStringList names;
    for (int i = first; i < first + count; ++i) {
        const ChainRow &each = rung.rows[static_cast<std::size_t>(i)];
        all = all && each.ohms.has_value();
        ohms += each.ohms.value_or(0);
        names += each.name;
    }
    row.name = ChainWords::tr("%n cleared, folded", nullptr, count);
    row.words = all ? ChainWords::tr("%1 Ω together").arg(tickText(std::round(ohms * 10) / 10)) : ChainWords::tr("cleared");
    row.shelf = names.join(QStringLiteral(", "));
    row.symbol = LadderSymbol::Contact;
    row.open = false;
    row.pulledBottom = rung.rows[static_cast<std::size_t>(first + count - 1)].pulledBottom;
    return row;
}

bool mayFold(const ChainState &state, int rung, int index)
{
    const ChainRow &row = state.rungs[static_cast<std::size_t>(rung)].rows[static_cast<std::size_t>(index)];
    const bool lit = rung == 0 && state.lit && index >= state.lit->first - 1 && index <= state.lit->last + 1;
    const bool held =
        rung == 0 && std::any_of(state.conditions.begin(), state.conditions.end(), [&](const auto &condition) {
            return condition.at == ChainCondition::At::Rows && (index == condition.first || index == condition.last);
        });
    return row.standing == Standing::Cleared && !lit && !held && !row.pulledTop && !row.pulledBottom;
}

int foldableFrom(const ChainState &state, int rung, int first)
{
    const int size = static_cast<int>(state.rungs[static_cast<std::size_t>(rung)].rows.size());
    int count = 0;
    while (first + count < size && mayFold(state, rung, first + count))
        ++count;
    return count >= 3 ? count : 0;
}

struct Column
{
    double wireX = 0;
    double textLeft = 0;
    double textWidth = 0;
};

// px at 100 % of one row, round its words, and of the ends of pulled wires.
struct Spacing
{
    double row, round, pulled, both;
};

Spacing spacingOf(bool tight)
{
    return tight ? Spacing{44, 6, 22, 34} : Spacing{54, 14, 22, 36};
}

double pulledRoom(const ChainRow *above, const ChainRow *below, const Spacing &spacing, const Style &style)
{
    const int ends = (above && above->pulledBottom ? 1 : 0) + (below && below->pulledTop ? 1 : 0);
    return style.px(ends == 2 ? spacing.both : ends == 1 ? spacing.pulled : 0);
}

void layOutRung(ChainLayout &layout, const ChainState &state, int rungIndex, const Column &column, double top, const Style &style,
                bool folds)
{
    const Spacing spacing = spacingOf(layout.tight);
    const ChainRung &rung = state.rungs[static_cast<std::size_t>(rungIndex)];
    ChainLayout::Rail rail{
        column.wireX, top + style.px(kRailY), 0, rung.top, rung.bottom, state.rungs.size() > 1 ? rung.title : QString()};
    double y = rail.top + style.px(8);
    const ChainRow *above = nullptr;
    ChainRow last;
    const int size = static_cast<int>(rung.rows.size());
    for (int i = 0; i < size;) {
        const int folded = folds ? foldableFrom(state, rungIndex, i) : 0;
        const ChainRow row = folded > 0 ? foldedRow(rung, i, folded) : rung.rows[static_cast<std::size_t>(i)];
        Item item;
        item.kind = folded > 0 ? ChainLayout::Kind::Fold : ChainLayout::Kind::Row;
        item.rung = rungIndex;
        item.index = i;
        item.count = std::max(1, folded);
        y += pulledRoom(above, &row, spacing, style);
        const double textHeight = layOutText(item, row, column.textLeft, y, column.textWidth, style);
        const double height =
            std::max({style.px(spacing.row), textHeight + style.px(spacing.round), style.px(symbolLength(row.symbol) + 2)});
        const double down = (height - textHeight) / 2;
        for (QPointF *at : {&item.textAt, &item.wordsAt, &item.moreAt, &item.markAt})
            at->ry() += down;
        item.badgeRect.translate(0, down);
        const double length = style.px(symbolLength(row.symbol));
        item.wireX = column.wireX;
        item.top = y + (height - length) / 2;
        item.bottom = item.top + length;
        item.rect = QRectF(column.wireX - style.px(28), y + style.px(2),
                           column.textLeft + column.textWidth - column.wireX + style.px(28), height - style.px(4));
        layout.items.push_back(item);
        y += height;
        last = row;
        above = &last;
        i += item.count;
    }
    rail.bottom = y + pulledRoom(above, nullptr, spacing, style) + style.px(6);
    layout.rails.push_back(rail);
    layout.height = std::max(layout.height, rail.bottom + style.px(12));
}

double conditionWidth(const ChainState &state, double width, const Style &style)
{
    double widest = 0;
    for (const auto &condition : state.conditions) {
        const QString words = condition.words.isEmpty() ? StandingWords::word(condition.standing) : condition.words;
        widest = std::max({widest, TextBlock({{condition.name, Type::QuietStrong}}, style).width(),
                           TextBlock({{words, Type::Quiet}}, style).width() + style.px(kMarkRoom - 3)});
    }
    return std::min(widest, width * 0.3);
}

Item conditionItem(const ChainCondition &condition, int index, double width, const Style &style)
{
    const QString words = condition.words.isEmpty() ? StandingWords::word(condition.standing) : condition.words;
    Item item;
    item.kind = ChainLayout::Kind::Condition;
    item.index = index;
    item.name = block({{condition.name, Type::QuietStrong}}, style, width);
    item.words = block({{words, Type::Quiet, Role::Ink2}}, style, width - style.px(kMarkRoom - 3));
    item.rect = QRectF(0, 0, width, item.name->height() + item.words->height());
    return item;
}

void moveCondition(Item &item, double x, double y, const Style &style)
{
    item.rect.moveTo(x, y);
    item.textAt = {x, y};
    item.wordsAt = {x + style.px(kMarkRoom - 3), y + item.name->height()};
    item.markAt = {x + style.px(kMarkSide / 2), item.wordsAt.y() + std::min(item.words->height(), style.px(18)) / 2};
}

// Where a condition acts, as the y it would like to stand at.
double wish(const ChainLayout &layout, const ChainCondition &condition, const Style &style)
{
    if (condition.at == ChainCondition::At::TopRail)
        return layout.rails.front().top + style.px(3);
    if (condition.at == ChainCondition::At::BottomRail)
        return layout.rails.front().bottom;
    const Item *first = layout.itemOf(0, condition.first);
    const Item *last = layout.itemOf(0, condition.last);
    return first && last ? (first->top + last->bottom) / 2 : layout.rails.front().top;
}

// Beside the rung: each at the height where it acts, pushed apart where they would cover each other.
void layOutConditions(ChainLayout &layout, const ChainState &state, double width, const Style &style)
{
    std::vector<Item> items;
    std::vector<double> tops;
    for (std::size_t i = 0; i < state.conditions.size(); ++i) {
        items.push_back(conditionItem(state.conditions[i], static_cast<int>(i), width, style));
        const double high = items.back().rect.height();
        const bool lowest = state.conditions[i].at == ChainCondition::At::BottomRail; // stays above what is pinned
        tops.push_back(std::max(0.0, wish(layout, state.conditions[i], style) - (lowest ? high + style.px(14) : high / 2)));
    }
    std::vector<std::size_t> order(items.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return tops[a] < tops[b]; });
    double free = 0;
    for (const std::size_t i : order) {
        tops[i] = std::max(tops[i], free);
        free = tops[i] + items[i].rect.height() + style.px(3);
    }
    layout.height = std::max(layout.height, free);
    for (std::size_t i = 0; i < items.size(); ++i)
        moveCondition(items[i], 0, tops[i], style);
    layout.items.insert(layout.items.end(), items.begin(), items.end());
}

void layOutBelow(ChainLayout &layout, const ChainState &state, double width, const Style &style)
{
    layout.conditionsBelow = true;
    double y = layout.height + style.px(6);
    for (std::size_t i = 0; i < state.conditions.size(); ++i) {
        Item item = conditionItem(state.conditions[i], static_cast<int>(i), width, style);
        moveCondition(item, 0, y, style);
        y += item.rect.height() + style.px(4);
        layout.items.push_back(item);
    }
    if (!state.conditions.empty())
        layout.height = y;
}

void layOutPlaces(ChainLayout &layout, const ChainState &state, double width, const Style &style)
{
    double y = style.px(4);
    const double left = style.px(32);
    for (std::size_t p = 0; p < state.places.size(); ++p) {
        const ChainPlace &place = state.places[p];
        Item head;
        head.kind = ChainLayout::Kind::Place;
        head.walked = false;
        head.rung = static_cast<int>(p);
        head.more = block({{place.minutes, Type::Quiet, Role::Ink2}}, style, TextBlock::kNoLimit);
        head.name = block({{place.name, Type::Strong}}, style, width - left - head.more->width() - style.px(8));
        head.textAt = {left, y};
        head.moreAt = {width - head.more->width(), y + style.px(1)};
        head.rect = QRectF(0, y, width, head.name->height());
        layout.items.push_back(head);
        y += head.name->height() + style.px(4);
        for (std::size_t i = 0; i < place.rows.size(); ++i) {
            Item item;
            item.rung = static_cast<int>(p);
            item.index = static_cast<int>(i);
            const double height = layOutText(item, place.rows[i], left + style.px(2), y, width - left - style.px(2), style);
            item.rect = QRectF(style.px(20), y - style.px(2), width - style.px(20), height + style.px(4));
            layout.items.push_back(item);
            y += height + style.px(6);
        }
        y += style.px(8);
    }
    layout.height = y;
}

void layOutRungs(ChainLayout &layout, const ChainState &state, double width, const Style &style, bool folds)
{
    const bool two = state.rungs.size() > 1;
    const bool beside = two && width >= style.px(300);
    const bool conditions = !state.conditions.empty() && !two && width >= style.px(260);
    const double condWidth = conditions ? conditionWidth(state, width, style) : 0;
    const double wireX = conditions ? condWidth + style.px(34) : style.px(32);
    layout.bracketX = condWidth - style.px(2);
    const double titleRoom = two ? style.px(20) : 0;
    const double right = layout.strip ? width - style.px(kStripWidth + 6) : width;
    const double half = beside ? width / 2 - style.px(8) : right;
    layout.textWidth = half - wireX - style.px(32);
    layOutRung(layout, state, 0, {wireX, wireX + style.px(32), layout.textWidth}, titleRoom, style, folds);
    if (beside) {
        const double second = half + style.px(46);
        layOutRung(layout, state, 1, {second, second + style.px(24), width - second - style.px(24)}, titleRoom, style, folds);
        for (auto &rail : layout.rails) // both lower rails at one height
            rail.bottom = layout.height - style.px(12);
    } else if (two) {
        layout.secondAsLine = ChainWords::tr("same part: %1 rung").arg(state.rungs[1].title);
    }
    if (conditions)
        layOutConditions(layout, state, condWidth, style);
    else
        layOutBelow(layout, state, width, style);
}

} // namespace

const ChainLayout::Item *ChainLayout::itemOf(int rung, int row) const
{
    const auto item = std::find_if(items.begin(), items.end(), [&](const Item &each) {
        return (each.kind == Kind::Row || each.kind == Kind::Fold) && each.rung == rung && row >= each.index &&
               row < each.index + each.count;
    });
    return item == items.end() ? nullptr : &*item;
}

ChainLayout layOutChain(const ChainState &state, double width, const Style &style, bool folds, bool tight)
{
    ChainLayout layout;
    layout.tight = tight;
    layout.strip = state.rungs.size() == 1 && state.rungs.front().rows.size() >= kManyRows;
    if (state.rungs.empty())
        layOutPlaces(layout, state, width, style);
    else
        layOutRungs(layout, state, width, style, folds && layout.strip);
    Runs foot;
    if (!layout.secondAsLine.isEmpty())
        foot.push_back({layout.secondAsLine + (state.wires ? QStringLiteral("\n") : QString()), Type::Quiet, Role::Ink2});
    if (state.wires)
        foot.push_back({ChainWords::wires(state), Type::Quiet, Role::Ink2});
    if (!foot.empty()) {
        layout.foot = block(foot, style, width - style.px(24));
        layout.footHeight = layout.foot->height() + style.px(14);
    }
    layout.height = std::ceil(layout.height);
    return layout;
}

} // namespace app
