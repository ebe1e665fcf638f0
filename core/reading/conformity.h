#pragma once
// What a reading says of the part: conformity to limits with the reading's uncertainty (JCGM 106:2012, 7 and 8).
#include "core/reading/limits.h"
#include "core/reading/meter.h"

namespace core {

// By the probability that the true value is inside the good limits: >= .95, > .5, > .05, the rest.
enum class Conformity { Good, GoodNear, OutNear, Out, NoConclusion };

// The names that a tree's `then` knows. Resistance: open good high low jumps (a tone that says nothing stays tone);
// continuity: tone, no tone, jumps; energized: none low good high jumps; opens_at: good high low jumps, stays closed.
// Unnamed: an answer.
enum class ReadingName { Unnamed, Open, Good, High, Low, Jumps, Tone, NoTone, None, StaysClosed };
std::string_view word(ReadingName name); // "open" ... "no tone"; "" for Unnamed

enum class Side { Inside, Below, Above };

struct Judgement
{
    Conformity conformity = Conformity::NoConclusion;
    // Probability that the true value is good, and that it is not surely bad (inside bad_below .. bad_above). Not a
    // number where there is NoConclusion: neither <= .05 nor >= .5 holds then.
    double pGood = std::numeric_limits<double>::quiet_NaN();
    double pNotBad = std::numeric_limits<double>::quiet_NaN();
    double value = 0; // after the probes were taken off; in the reading's unit. Values only
    double u = 0;     // standard uncertainty of it
    ReadingName name = ReadingName::Unnamed;
    Side side = Side::Inside; // on which side of good it lies; OL is Above
    bool convicts = false;    // outside good and outside not-bad, both with <= .05
    bool clears = false;      // Good
    bool clearsOpen = false;  // not open, whatever else: a tone, or any value of a conductor
    bool near = false;        // take a better reading before anything is said of the part
};

// u^2 = a^2/3 + step^2/12 + u_probe^2, a rectangular half width of the meter (JCGM 100:2008 4.3.7, F.2.2.1); the probes'
// mean is taken off in ohms. An infinite side, and a lower side at or below zero of what cannot be negative, is left out.
// OL outside the good limits conforms with 0; on a manual range it says only that the value is over that range's top.
// Below 2 ohm without a probe zero nothing convicts upwards and no two-sided band clears: probes only add.
// Limits that judge no value (no rating, no temperature): a value is named good, so that a tree goes on, and neither
// convicts nor clears; OL convicts if it is over 1 Mohm.
// A tone (threshold anywhere in 20 to 50 ohm) clears no more than OPEN; no tone on a contact is open.
Judgement judge(const Reading &reading, const Limits &limits, Measure measure, const Meter &meter);

// Probability that N(value, u) lies in lo..hi; infinite sides are left out; u 0: 0 or 1.
double conformance(double value, double u, double lo, double hi);

inline constexpr double kToneLow = 20;  // ohm: below it every meter beeps,
inline constexpr double kToneHigh = 50; // above it none does: common practice, no source

} // namespace core
