#pragma once
// What a job knows: readings by placement and seating, and answers. One entry a placement, one an answered step.
#include "core/belief/prediction.h"

#include <span>
#include <string>
#include <variant>
#include <vector>

namespace core {

// Where the probes are: a test, which of its placements, and the temperatures its readings go by.
struct Placement
{
    std::string test; // "component.test" or a loop
    std::size_t index = 0;
    std::map<std::string, Amount> with;
    friend bool operator==(const Placement &, const Placement &) = default;
    friend bool operator<(const Placement &a, const Placement &b);
};

using Seating = std::vector<Reading>; // readings without the probes coming off in between

struct Placed
{
    Placement placement;
    Measure measure = Measure::Resistance;
    std::vector<Seating> seatings;  // none: no evidence
    bool pullsAny = false;          // the test asks for wires off: one may have stayed on unseen
    bool wireLeftOn = false;        // the person said that it stayed on
    bool confirmed = false;         // re-seated with contrast: tips together, then back on the part named and drawn
    friend bool operator==(const Placed &, const Placed &) = default;
};

// An ask, look, do or a test by eye, hand or ear. An answer speaks for its suspects and against all others; an answer
// that speaks for none clears.
struct Answered
{
    std::string id;                           // step or test
    std::vector<std::string> answers;         // all that say something; unsure ones are left out
    std::vector<std::vector<int>> speaksFor;  // of each answer
    std::vector<std::string> given;           // in order of time; none, or not among `answers`: no evidence
    double sensitivity = .85;                 // chance of an answer that speaks for what is there
    double falseAlarm = .06;                  // chance of an answer that speaks for anything, where nothing is
    double again = .7; // chance that a repeated answer only repeats: .7 look, .5 warm-air test, .2 a `do`
    int gone = -1; // a `do`: the answer that the complaint is gone, expected only if nothing else explains it; -1: none
    std::vector<int> putsRight; // a `do`: what it has put right afterwards, whatever was answered
    friend bool operator==(const Answered &, const Answered &) = default;
};

using Evidence = std::variant<Placed, Answered>; // in order of time

// One reading a seating: the same again says nothing new; different by more than 2 (a + d) within one seating is jumps;
// otherwise the last counts.
Reading settled(const Seating &seating, Measure measure);
std::vector<Reading> settled(const Placed &placed);
std::vector<Reading> distinct(std::span<const Reading> readings, Measure measure);

} // namespace core
