#pragma once
// What was measured and seen of each part, in the form the verdict reads it. Put together by the session from the log.
#include "core/reading/machine.h"

namespace core {

// One test that can convict a part or show a condition: a part's own test, a loop that stands for it, a look, or a step
// of the tree that speaks for a suspect.
struct Finding
{
    std::string test;      // "dryer_element.ohm", "heat_wires", or the id of a step
    std::string component; // or condition
    std::vector<std::string> modes; // suspects' modes it can show; empty: all
    bool byEye = false, energized = false;
    bool tried = false;    // a `do` that can put the condition right
    bool done = false;
    int out = 0;           // seatings outside the good span, or answers that speak for it
    int good = 0;          // seatings inside, or answers against it
    bool jumps = false;    // of a part that jumps, good seatings do not count
    bool possible = true;  // this person, with this meter, may still do it
    bool refused = false;  // skipped or declined
    double minutes = 0;    // with the places still to be opened
};

bool fails(const Finding &finding); // at least one out, and no more good than out
bool shows(const Finding &finding, std::string_view mode);

} // namespace core
