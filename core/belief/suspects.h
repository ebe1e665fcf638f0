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
    std::string id;        // "dryer_element.open", "house_supply.lost_leg"; of a condition with one way to be: "vent_blocked"
    std::string component; // "dryer_element", "vent_blocked"
    std::string mode;      // "" where the kind names none
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
    // What a name of the content stands for: a suspect's id, "component.mode", or a component or condition with all of
    // its modes. Empty: nobody.
    std::vector<int> named(std::string_view name) const;
};

// share = weight of the component or condition x share of the mode among the modes that count, all adding to 1. A weight
// "component.mode" counts that mode alone. Only what is on this machine. What may stand behind a protector, or beside
// anything, is listed too, with share 0 if the tree gives it no weight. Without a tree (a loose part): every mode of the
// machine's components by its share.
Suspects suspectsOf(const Machine &machine);

// The component whose wires are the ladder's own: every step along a rung is one of them.
inline constexpr std::string_view kHarness = "harness";

} // namespace core
