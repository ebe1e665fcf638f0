#include "app/draw/chain.h"
#include "app/shared/counted.h"

#include <algorithm>
#include <map>

namespace app {
namespace {

std::vector<ChainRow> allRows(const ChainState &state)
{
    std::vector<ChainRow> rows;
    for (const auto &rung : state.rungs)
        rows.insert(rows.end(), rung.rows.begin(), rung.rows.end());
    for (const auto &place : state.places)
        rows.insert(rows.end(), place.rows.begin(), place.rows.end());
    return rows;
}

QString counted(Standing standing, int count)
{
    switch (standing) {
    case Standing::Untested:
        return ChainWords::tr("%n untested", nullptr, count);
    case Standing::Suspected:
        return ChainWords::tr("%n suspected", nullptr, count);
    case Standing::Cleared:
        return ChainWords::tr("%n cleared", nullptr, count);
    case Standing::Failed:
        return ChainWords::tr("%n failed", nullptr, count);
    case Standing::Proven:
        return ChainWords::tr("%n proven", nullptr, count);
    case Standing::NoConclusion:
        return ChainWords::tr("%n without conclusion", nullptr, count);
    case Standing::Noted:
        return ChainWords::tr("%n noted", nullptr, count);
    }
    Q_UNREACHABLE();
}

} // namespace

QString ChainWords::shown(const ChainRow &row)
{
    return row.words.isEmpty() ? StandingWords::word(row.standing) : row.words;
}

QString ChainWords::spoken(const ChainRow &row, bool lit)
{
    QStringList words{row.name};
    const QString standing = StandingWords::word(row.standing);
    const QString beside = shown(row);
    if (!beside.startsWith(standing))
        words += standing;
    words += beside;
    if (row.likeliest)
        words += tr("likeliest now");
    if (!row.shelf.isEmpty())
        words += row.shelf;
    if (row.pulledTop && row.pulledBottom)
        words += tr("both its wires are pulled");
    else if (row.pulledTop || row.pulledBottom)
        words += row.pulledTop ? tr("its upper wire is pulled") : tr("its lower wire is pulled");
    if (row.brokenBelow)
        words += tr("the wire below it is broken");
    if (lit)
        words += tr("under test");
    return words.join(QStringLiteral(", "));
}

QString ChainWords::spoken(const ChainCondition &condition)
{
    const QString standing = StandingWords::word(condition.standing);
    QStringList words{condition.name};
    if (!condition.words.startsWith(standing))
        words += standing;
    if (!condition.words.isEmpty())
        words += condition.words;
    return words.join(QStringLiteral(", "));
}

QString ChainWords::wires(const ChainState &state)
{
    if (!state.wires)
        return {};
    return tr("the wires and tabs between them: %1")
        .arg(state.wiresWords.isEmpty() ? StandingWords::word(*state.wires) : state.wiresWords);
}

QString ChainWords::summary(const ChainState &state)
{
    const std::vector<ChainRow> rows = allRows(state);
    std::map<Standing, int> counts;
    for (const ChainRow &row : rows)
        ++counts[row.standing];
    QStringList words;
    if (!state.title.isEmpty())
        words += state.title;
    words += counted(static_cast<int>(rows.size()), tr("%1 part"), tr("%1 parts"));
    for (const auto &[standing, count] : counts)
        words += counted(standing, count);
    for (const ChainRow &row : rows)
        if (row.likeliest || row.standing == Standing::Proven)
            words += spoken(row, false);
    return words.join(QStringLiteral(". "));
}

} // namespace app
