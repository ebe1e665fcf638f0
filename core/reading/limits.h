#pragma once
// The limits of one placement on one machine: kind's values made concrete by supply, plate and temperature.
#include "core/reading/reading.h"

#include <limits>

namespace core {

// What is known of the machine at hand when a value is made concrete.
struct MachineFacts
{
    int volts = 0;                      // nominal across the part: 120, 230, 240; 0 unknown. 230 stands for 240 too
    std::optional<double> ratedOhm;     // V^2/P of the plate, or a value from the sheet; nullopt unknown
    bool plateRead = false;             // the rating was read off this machine, not assumed
    std::string ratingSaid;             // "5400 W at 240 V", for the basis text; "" leaves it out
    std::map<std::string, Amount> with; // part_temperature ... given with the reading
    double temperatureHalfWidth = 3;    // K: 3 the room's own, 2 a thermometer at the part, 0.5 ice slush (judgement)
    std::map<std::string, bool> closed; // path id -> what the test's position makes of the contact, where it says so
};

struct Limits
{
    static constexpr double kNone = std::numeric_limits<double>::infinity();
    bool openIsGood = false;                    // good is OL
    double lo = -kNone, hi = kNone;             // good
    double badBelow = -kNone, badAbove = kNone; // convicts outside; between these and lo/hi: no conclusion
    double stuckAbove = kNone;                  // opens_at: still closed at this temperature convicts
    bool openIsBad = true;                      // OL convicts (never where openIsGood)
    Unit unit = Unit::Ohm;
    Basis basis = Basis::CommonPractice;
    std::string basisText; // "plate 5400 W at 240 V: 10.7 Ω", "common practice", the published source
    bool judgesValues() const { return openIsGood || lo > -kNone || hi < kNone; }
    friend bool operator==(const Limits &, const Limits &) = default;
};

// Limits of `test` at `placement` (index). Loops: the test's own `limits`. A contact in a position or held by hand takes
// OL for good where it stands open. nullopt: nothing to compare with: no conclusion. Where a rating or a temperature is
// missing both sides stay infinite: no value can be judged, OL alone convicts.
// Common practice alone convicts by OL, by contact with metal, or by a value twice beyond the limit of good (below
// lo/2, above 2 hi; further out where the file's own bad edge is); plate, sheet, published and curve values convict at
// bad_below and bad_above. Temperatures have no "twice": common practice alone convicts by none.
// A thermostat's contact (closes_below, opens_above) is judged at its part_temperature: closed where it is surely
// closed, open where it is surely open, between them nullopt.
// opens_at: within 5 K of the printed_temperature good, more than 10 K off bad, not open 15 K above it stuck closed
// (common practice); without a print the span of opens_above, which convicts only if it is more than common practice.
std::optional<Limits> limitsOf(const Kind &kind, const Test &test, std::size_t placement, const MachineFacts &facts);
std::optional<Limits> limitsOf(const PathLimits &limits, const Path *path, bool heldOpen, const MachineFacts &facts,
                               Measure measure);

// Whether the path's contact is open when this test reads a good part: normally open and not held, or normally closed
// and held.
bool standsOpen(const Path &path, const Test &test);

// Below this a contact that ought to be open counts as closed (the upper threshold of a continuity tone); a path that
// ought to be open reads to bare metal: below 100 kohm is contact with metal. Common practice, no source.
inline constexpr double kClosedContactOhm = 50;
inline constexpr double kTouchesMetalOhm = 100e3;

} // namespace core
