// A reading in words and digits, as a person is told it.
#include "core/reading/reading.h"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <span>

namespace core {
namespace {

struct Prefixed
{
    int exponent;
    std::string_view text;
};

constexpr std::array<Prefixed, 3> kOhm{{{6, " M\u03a9"}, {3, " k\u03a9"}, {0, " \u03a9"}}};
constexpr std::array<Prefixed, 2> kVolt{{{0, " V"}, {-3, " mV"}}};
constexpr std::array<Prefixed, 2> kAmpere{{{0, " A"}, {-3, " mA"}}};
constexpr std::array<Prefixed, 3> kFarad{{{0, " F"}, {-6, " \u00b5F"}, {-9, " nF"}}};
constexpr std::array<Prefixed, 2> kHertz{{{3, " kHz"}, {0, " Hz"}}};
constexpr std::array<Prefixed, 1> kCelsius{{{0, " \u00b0C"}}};
constexpr std::array<Prefixed, 1> kPercent{{{0, " %"}}};
constexpr std::array<Prefixed, 1> kWatt{{{0, " W"}}};
constexpr std::array<Prefixed, 1> kSecond{{{0, " s"}}};
constexpr std::array<Prefixed, 1> kPlain{{{0, ""}}};

std::span<const Prefixed> prefixesOf(Unit unit)
{
    switch (unit) {
    case Unit::Ohm:
        return kOhm;
    case Unit::Volt:
        return kVolt;
    case Unit::Ampere:
        return kAmpere;
    case Unit::Farad:
        return kFarad;
    case Unit::Hertz:
        return kHertz;
    case Unit::Celsius:
        return kCelsius;
    case Unit::Percent:
        return kPercent;
    case Unit::Watt:
        return kWatt;
    case Unit::Second:
        return kSecond;
    case Unit::None:
        break;
    }
    return kPlain;
}

double tenTo(int exponent)
{
    return std::pow(10.0, exponent);
}

// The largest prefix under the value that leaves at least one digit and not exactly three behind the separator.
const Prefixed *prefixFor(double value, int stepExponent, Unit unit)
{
    for (const Prefixed &p : prefixesOf(unit)) {
        const int decimals = p.exponent - stepExponent;
        const double head = std::abs(value) / tenTo(p.exponent);
        const bool plain = p.exponent == (unit == Unit::Farad ? -6 : 0); // good for values under one as well
        const bool large = head >= 1 || (plain && decimals >= 0) || (value == 0 && decimals == 0);
        if (large && decimals >= 0 && (decimals != 3 || head < 1))
            return &p;
    }
    return nullptr;
}

std::string counted(double value, double step, Unit unit)
{
    const int stepExponent = static_cast<int>(std::floor(std::log10(step) + 1e-9));
    const Prefixed *prefix = prefixFor(value, stepExponent, unit);
    if (prefix != nullptr)
        return fmt::format("{:.{}f}{}", value / tenTo(prefix->exponent), prefix->exponent - stepExponent, prefix->text);
    // three digits and no smaller prefix: one digit more keeps it from being a question
    Prefixed last = prefixesOf(unit).front();
    for (const Prefixed &p : prefixesOf(unit))
        if (p.exponent >= stepExponent)
            last = p;
    const double head = value / tenTo(last.exponent);
    const int decimals = std::max(0, last.exponent - stepExponent);
    return fmt::format("{:.{}f}{}", head, decimals == 3 && std::abs(head) >= 1 ? 4 : decimals, last.text);
}

bool isPlainStep(double step)
{
    return std::isfinite(step) && step >= 1e-15 && step <= 1e12;
}

} // namespace

std::string saidBack(const Reading &reading)
{
    switch (reading.what) {
    case Reading::What::Value: {
        const auto &[value, unit] = reading.amount;
        return isPlainStep(reading.step) && std::abs(value) < 1e12 ? counted(value, reading.step, unit) : shown(reading.amount);
    }
    case Reading::What::OverLimit:
        return "OL";
    case Reading::What::Tone:
        return "tone";
    case Reading::What::NoTone:
        return "no tone";
    case Reading::What::Jumps:
        return "jumps";
    case Reading::What::StaysClosed:
        return reading.amount.unit == Unit::Celsius ? "stays closed at " + shown(reading.amount) : "stays closed";
    case Reading::What::Answer:
        break;
    }
    return reading.answer;
}

} // namespace core
