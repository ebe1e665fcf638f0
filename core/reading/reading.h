#pragma once
// A reading: what the meter showed, or what a person saw, heard, felt.
#include "core/tree/kind.h"

namespace core {

struct Reading
{
    enum class What { Value, OverLimit, Tone, NoTone, Jumps, StaysClosed, Answer };
    What what = What::Value;
    Amount amount;                      // Value; StaysClosed: the temperature that was reached, unit None where it was not said
    double step = 0;                    // Value: one count of the display as it was written, in the amount's unit (10.8 -> 0.1)
    std::string answer;                 // Answer
    std::map<std::string, Amount> with; // temperatures given with it: part_temperature, printed_temperature
    friend bool operator==(const Reading &, const Reading &) = default;
};

// As it is said back to a person, with every digit that was written: "10.8 Ω", "10.3 kΩ", "OL", "no tone", "jumps",
// "stays closed at 85 °C", an answer as it is. What understand() can read it reads back as the same value and step;
// never one separator before exactly three digits, which would be a question (1.500 kΩ is said "1500 Ω").
std::string saidBack(const Reading &reading);

// For storage: everything, without loss. "value 10.8 ohm step 0.1; part_temperature 22 Cel", "over_limit",
// "answer = hardly lifts". Names in `with` are ids ([a-z0-9_]). Numbers in the plain unit (F, not uF).
std::string storedText(const Reading &reading);
// nullopt: not a text that storedText() writes.
std::optional<Reading> readStored(std::string_view text);

} // namespace core
