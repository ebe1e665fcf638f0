#pragma once
// The limits of one placement on one machine: kind's values made concrete by supply, plate and temperature.
#include "core/reading/reading.h"

#include <limits>

namespace core {

// What is known of the machine at hand when a value is made concrete.
struct MachineFacts
{
    int volts = 0;                        // nominal of the supply: 120, 230, 240; 0 unknown
    std::optional<double> ratedOhm;       // V^2/P of the plate, or a value from the sheet; nullopt unknown
    bool plateRead = false;               // the rating was read off this machine, not assumed
    std::map<std::string, Amount> with;   // part_temperature ... given with the reading
};

struct Limits
{
    static constexpr double kNone = std::numeric_limits<double>::infinity();
    bool openIsGood = false; // good is OL
    double lo = -kNone, hi = kNone;                 // good
    double badBelow = -kNone, badAbove = kNone;     // convicts outside; between these and lo/hi: no conclusion
    bool openIsBad = true;   // OL convicts (never where openIsGood)
    Unit unit = Unit::Ohm;
    Basis basis = Basis::CommonPractice;
    std::string basisText;   // "plate 5400 W at 240 V: 10.7 ohm", "common practice", the published source
    friend bool operator==(const Limits &, const Limits &) = default;
};

// Limits of `test` at `placement` (index). Loops: the test's own `limits`. A contact in a position or held by hand takes
// OL for good where it stands open. nullopt: nothing to compare with (no rating, no temperature): no conclusion.
// Common practice alone convicts by OL, by contact with metal, or by a value twice beyond the limit of good (below
// lo/2, above 2 hi); plate, sheet, published and curve values convict at bad_below and bad_above.
std::optional<Limits> limitsOf(const Kind &kind, const Test &test, std::size_t placement, const MachineFacts &facts);
std::optional<Limits> limitsOf(const PathLimits &limits, const Path *path, bool heldOpen, const MachineFacts &facts, Measure measure);

// Whether the path's contact is open when this test reads a good part: normally open and not held, or normally closed
// and held.
bool standsOpen(const Path &path, const Test &test);

} // namespace core
