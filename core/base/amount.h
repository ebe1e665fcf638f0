#pragma once
// A number with its unit. Values are kept in the unit named here (ohm, never kohm); prefixes live in text only.
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace core {

// UCUM's case-sensitive codes are the words of the protocol: Ohm is "ohm" there for design's sake, temperature "Cel".
enum class Unit { None, Ohm, Volt, Ampere, Farad, Hertz, Celsius, Watt, Second, Percent };

struct Amount
{
    double value = 0;
    Unit unit = Unit::None;
    friend bool operator==(const Amount &, const Amount &) = default;
};

// "ohm V A uF Hz Cel W s %": the unit as JSON and YAML write it. Farad is written in uF.
std::string_view unitCode(Unit unit);
// The unit a text names, with the factor that brings the value to it: "kohm" -> {Ohm, 1000}, "C" -> {Celsius, 1}.
// Ω U+03A9, U+2126, "ohm", "ohms", µ U+00B5 and U+03BC are understood. °F is not a factor and is not read here.
struct ScaledUnit
{
    Unit unit = Unit::None;
    double factor = 1;
};
std::optional<ScaledUnit> unitNamed(std::string_view text);
// A finite decimal number, whole string, point only. No inf, nan, hex, octal.
std::optional<double> numberIn(std::string_view text);

// As a person reads it: three significant digits and a prefix, "10.7 Ω", "2.6 kΩ", "33.6 kΩ", "-17 °C", "0.2 Ω", "5 uF".
std::string shown(Amount amount);
// As the protocol writes it and unitNamed() reads it back without loss: "10.8 ohm", "-17 Cel".
std::string written(Amount amount);
// The shortest text that reads back as the same number.
std::string plainNumber(double value);

} // namespace core
