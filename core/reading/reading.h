#pragma once
// A reading: what the meter showed, or what a person saw, heard, felt.
#include "core/tree/kind.h"

namespace core {

struct Reading
{
    enum class What { Value, OverLimit, Tone, NoTone, Jumps, StaysClosed, Answer };
    What what = What::Value;
    Amount amount;       // Value; StaysClosed: the temperature that was reached
    double step = 0;     // Value: one count of the display as it was written, in the amount's unit (10.8 -> 0.1)
    std::string answer;  // Answer
    std::map<std::string, Amount> with; // temperatures given with it: part_temperature, printed_temperature
    friend bool operator==(const Reading &, const Reading &) = default;
};

} // namespace core
