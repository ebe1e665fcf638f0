#pragma once
// What the chain shows: the rung of the complaint from rail to rail, or the machine by place where no rung explains it.
#include "app/shared/marks.h"

#include <QString>

#include <optional>
#include <vector>

namespace app {

enum class LadderSymbol { Contact, Thermostat, OneShot, Heater, Winding, Relay, Box };

struct ChainRow
{
    QString id;      // given back by activated()
    QString name;    // "Heating element"
    LadderSymbol symbol = LadderSymbol::Box;
    bool open = false; // a contact or thermostat drawn open
    Standing standing = Standing::Untested;
    QString words;   // beside the mark: "cleared, 0.1 Ω"; empty: the standing's own word
    QString shelf;   // a further quiet line: "Part 0043, 84 USD, 2 here"; mostly empty
    bool likeliest = false;    // at most one row
    bool pulledTop = false;    // its wire towards the upper rail is off this component
    bool pulledBottom = false; // … towards the lower rail
    bool brokenBelow = false;  // the wire from here to the next component is broken
    std::optional<double> ohms; // what it read, for the sum of folded rows
    friend bool operator==(const ChainRow &, const ChainRow &) = default;
};

struct ChainRung
{
    QString title;  // "heat"; shown where two rungs stand side by side
    QString top;    // "L1"
    QString bottom; // "L2"
    std::vector<ChainRow> rows; // from the upper rail to the lower one
    friend bool operator==(const ChainRung &, const ChainRung &) = default;
};

// What the meter sees: from the upper end of row `first` to the lower end of row `last` of the first rung.
struct ChainLit
{
    int first = 0;
    int last = 0;
    bool redOnTop = true;
    QString other; // where one probe is when it is on no wire of the rung: "bare metal"; then the upper end has the other
    friend bool operator==(const ChainLit &, const ChainLit &) = default;
};

// A condition, or a control that commands a contact: at the left, with a dashed line to where it acts.
struct ChainCondition
{
    enum class At { TopRail, Rows, BottomRail };
    QString id;
    QString name;
    Standing standing = Standing::Untested;
    QString words; // empty: the standing's own word
    At at = At::Rows;
    int first = 0; // rows of the first rung it reaches over, when at Rows; more than one: a bracket
    int last = 0;
    friend bool operator==(const ChainCondition &, const ChainCondition &) = default;
};

// One part with a contact on each of two rungs: row `first` of the first rung, row `second` of the second.
struct ChainLink
{
    int first = 0;
    int second = 0;
    friend bool operator==(const ChainLink &, const ChainLink &) = default;
};

struct ChainPlace // the machine by place, from the outside in
{
    QString name;    // "Rear panel off"
    QString minutes; // "12 min"
    bool open = false;
    std::vector<ChainRow> rows;
    friend bool operator==(const ChainPlace &, const ChainPlace &) = default;
};

struct ChainState
{
    QString title; // for a screen reader: "The chain: heat, from L1 to L2, wiring as assumed"
    std::vector<ChainRung> rungs; // one or two; none: `places`
    std::vector<ChainLink> links;
    std::vector<ChainCondition> conditions;
    std::vector<ChainPlace> places;
    std::optional<ChainLit> lit;
    std::optional<Standing> wires; // what lies between the components; empty: not said
    QString wiresWords;            // empty: the standing's own word
    friend bool operator==(const ChainState &, const ChainState &) = default;
};

struct ChainWords
{
    Q_DECLARE_TR_FUNCTIONS(app::ChainWords)
public:
    static QString shown(const ChainRow &row);   // the words beside the mark
    static QString spoken(const ChainRow &row, bool lit); // name, standing, likeliest, pulled wires, lit
    static QString spoken(const ChainCondition &condition);
    static QString wires(const ChainState &state);
    static QString summary(const ChainState &state); // "Six parts. Three cleared. Heating element suspected, likeliest now."
};

} // namespace app
