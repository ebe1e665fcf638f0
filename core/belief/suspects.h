#pragma once
// Who may be behind the complaint: every component in each of its modes, and every condition, with its weight.
#include "core/reading/machine.h"

#include <string>
#include <vector>

namespace core {

// A hidden or continuous parameter of a suspect, in one cell. A cell predicts the span between its edges: a point would
// take a true value between two points for a slip.
struct Cell
{
    enum class State { Steady, Open, Jumps, Hides }; // Steady: as the mode says; the rest: an intermittent contact now
    double weight = 1; // share of the suspect; the cells' weights add to 1
    State state = State::Steady;
    double lo = 0, hi = 0;   // Steady: the mode's value, ohm; a ground: its contact, ohm; of rating or curve: the factor
    double xLo = 0, xHi = 0; // a ground along a conductor: where, as a share of the conductor from its first terminal
    int side = 0;            // a ground on a broken conductor: the end it hangs on, 1 or 2
    int wire = -1;           // a wire of the harness: its number; -1: none
    friend bool operator==(const Cell &, const Cell &) = default;
};

struct Suspect
{
    std::string id;        // "dryer_element.open"; a condition's own id: "vent_blocked", "house_supply.lost_leg"
    std::string component; // "dryer_element"; of a condition without modes its id
    std::string mode;      // "" for a condition that has but one
    double share = 0;      // o: of the complaint, given the complaint; 0: cannot cause it alone, only stand behind or beside
    std::vector<Cell> cells{Cell{}};
    bool explains() const { return share > 0; }
};

// Chance that `cause` stands behind the protector `suspect` and opened it.
struct Link
{
    int suspect = 0, cause = 0;
    double chance = 0;
};

// Chance that a condition is there beside anything.
struct Beside
{
    int condition = 0;
    double chance = 0;
};

struct Suspects
{
    std::vector<Suspect> list;
    std::vector<Link> links; // of one suspect at most .9 in sum
    std::vector<Beside> beside;
    int find(std::string_view id) const; // -1: not among them
};

// share = weight of the component or condition x share of the mode among the modes that count, all adding to 1. A weight
// "component.mode" counts that mode alone. Only what is on this machine. Without a tree (a loose part): every mode of
// the machine's components by its share.
Suspects suspectsOf(const Machine &machine);

} // namespace core
