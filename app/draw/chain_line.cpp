#include "app/draw/chain_line.h"

#include "app/shared/fit_height.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kPad = 10, kMarkStep = 26;

// The one row that is worth a word: proven, else failed, else likeliest, else the first suspected one.
const ChainRow *telling(const std::vector<ChainRow> &rows)
{
    const auto find = [&](auto &&is) {
        const auto row = std::find_if(rows.begin(), rows.end(), is);
        return row == rows.end() ? nullptr : &*row;
    };
    for (const Standing standing : {Standing::Proven, Standing::Failed})
        if (const ChainRow *row = find([&](const ChainRow &each) { return each.standing == standing; }))
            return row;
    if (const ChainRow *row = find([](const ChainRow &each) { return each.likeliest; }))
        return row;
    return find([](const ChainRow &each) { return each.standing == Standing::Suspected; });
}

std::vector<ChainRow> rowsOf(const ChainState &state)
{
    if (!state.rungs.empty())
        return state.rungs.front().rows;
    std::vector<ChainRow> rows;
    for (const auto &place : state.places)
        rows.insert(rows.end(), place.rows.begin(), place.rows.end());
    return rows;
}

Runs wordsOf(const ChainState &state)
{
    const auto rows = rowsOf(state);
    const ChainRow *row = telling(rows);
    if (!row)
        return {};
    QString said = ChainWords::shown(*row);
    if (row->likeliest)
        said += QStringLiteral(", ") + ChainWords::tr("likeliest now");
    return {{row->name + QStringLiteral("  "), Type::Strong}, {said, Type::Text}};
}

double marksWidth(const ChainState &state, const Style &style)
{
    double width = style.px(2 * kPad) + style.px(kMarkStep) * static_cast<double>(rowsOf(state).size());
    if (!state.rungs.empty())
        for (const QString &rail : {state.rungs.front().top, state.rungs.front().bottom})
            width += TextBlock({{rail, Type::Text}}, style).width() + style.px(6);
    return width;
}

} // namespace

ChainLine::ChainLine(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    followHeight(this);
    followTheme(this);
}

void ChainLine::setState(ChainState state)
{
    m_state = std::move(state);
    setAccessibleName(ChainWords::summary(m_state));
    fitHeight(this);
    update();
}

QSize ChainLine::sizeHint() const
{
    const Style &style = Theme::current().style();
    const int width = static_cast<int>(std::ceil(marksWidth(m_state, style) + TextBlock(wordsOf(m_state), style).width() + style.px(24)));
    return {width, heightForWidth(width)};
}

QSize ChainLine::minimumSizeHint() const
{
    return {static_cast<int>(std::ceil(marksWidth(m_state, Theme::current().style()))), 0};
}

int ChainLine::heightForWidth(int width) const
{
    const Style &style = Theme::current().style();
    const double marks = marksWidth(m_state, style);
    const double room = width - marks - style.px(12 + kPad);
    const double wish = TextBlock(wordsOf(m_state), style).width();
    const bool below = wish > room && room < style.px(160);
    const TextBlock words(wordsOf(m_state), style, below ? width - style.px(2 * kPad) : std::max(1.0, room));
    return static_cast<int>(std::ceil(below ? style.px(36) + words.height() : std::max(style.px(36), words.height() + style.px(8))));
}

void ChainLine::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), style[Role::Well]);
    const double y = style.px(18);
    double x = style.px(kPad);
    const bool railed = !m_state.rungs.empty();
    if (railed)
        x += paintLine(painter, {m_state.rungs.front().top, Type::Text, Role::Ink2}, style, {x, y}) + style.px(6);
    for (const ChainRow &row : rowsOf(m_state)) {
        paintMark(painter, row.standing, {x + style.px(kMarkStep / 2), y}, style, style[Role::Ink], style[Role::Well]);
        x += style.px(kMarkStep);
    }
    if (railed)
        x += style.px(6) + paintLine(painter, {m_state.rungs.front().bottom, Type::Text, Role::Ink2}, style, {x + style.px(6), y});
    const double room = width() - x - style.px(12 + kPad);
    const double wish = TextBlock(wordsOf(m_state), style).width();
    if (wish > room && room < style.px(160)) {
        TextBlock(wordsOf(m_state), style, width() - style.px(2 * kPad)).paint(painter, {style.px(kPad), style.px(32)});
        return;
    }
    const TextBlock words(wordsOf(m_state), style, std::max(1.0, room));
    words.paint(painter, {x + style.px(12), std::max(style.px(2), y - words.height() / 2)});
}

} // namespace app
