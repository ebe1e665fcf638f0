#pragma once
// The person's meter as they described it: functions, jacks, category, accuracy. Never a maker.
#include "core/tree/kind.h"

#include <set>

namespace core {

// +-(percent of reading + counts), a rectangular half width (GUM, JCGM 100:2008 4.3.7).
struct Accuracy
{
    double percent = .9;
    double counts = 2;
    friend bool operator==(const Accuracy &, const Accuracy &) = default;
};
double halfWidth(const Accuracy &accuracy, double value, double step);

struct Meter
{
    std::set<std::string> functions; // words of Measure: resistance, continuity, voltage_ac, ...; empty: no meter
    std::string category;            // "CAT III 600 V" as marked; "" = not marked
    bool autoRange = true;
    double top = 40e6;               // ohm: over this it shows OL; manual: of the range in use
    std::optional<Amount> probeZero; // tips together; nullopt: not zeroed
    int displayCounts = 4000;
    std::map<std::string, Accuracy> accuracy; // word of Measure -> the person's own sheet; absent: a common hand-held's

    bool can(Measure measure) const { return functions.contains(std::string(word(measure))); }
};

// Half width of the meter's own error at a reading, in the reading's unit, `step` one count. Ohms 0.9 % + 2 counts (from
// 4 Mohm up 2 % + 2 counts), volts 1 % + 3 counts, capacitance 3 % + 5, clamp 2.5 % + 5, temperature 2 K: a common
// hand-held's sheet (common practice, no source).
double meterHalfWidth(Measure measure, double value, double step);
// The same with the person's own sheet in its place where the meter has one.
double meterHalfWidth(const Meter &meter, Measure measure, double value, double step);

// What probes and contacts add in series: mean and standard uncertainty, ohm.
struct ProbeError
{
    double mean = 0;
    double deviation = 0;
};
// Zeroed: the tips-together value and 0.07; display already zeroed: 0 and 0.07; not known: 0.3 and 0.15 (judgement).
ProbeError probeError(const Meter &meter);

} // namespace core
