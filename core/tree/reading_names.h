#pragma once
// The words by which a tree's `then` names what was read, one list a measure.
#include "core/tree/kind.h"

#include <span>

namespace core {

// resistance, capacitance, diode: open good high low jumps; continuity: tone, no tone, jumps; volts, amperes, hertz, duty:
// none low good high jumps; temperature: low good high jumps; opens_at: good high low jumps, stays closed. By eye, hand or
// ear: none, the test's own answers are the names.
std::span<const std::string_view> readingNames(Measure measure);

// The names that a reading of this test can get, of `readingNames` or the test's answers: OL is good where good is OL,
// nothing is low where good begins at zero. Without limits of its own (`limits` empty) every name of the measure.
std::vector<std::string> possibleReadings(const Test &test, std::span<const PathLimits *const> limits);

} // namespace core
