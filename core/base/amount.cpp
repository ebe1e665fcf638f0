#include "core/base/amount.h"

#include <array>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace core {
namespace {

struct Spelling
{
    std::string_view text;
    Unit unit;
    double factor;
};

constexpr std::array kSpellings = std::to_array<Spelling>({
    {"ohm", Unit::Ohm, 1},      {"ohms", Unit::Ohm, 1},        {"Ohm", Unit::Ohm, 1},         {"Ohms", Unit::Ohm, 1},
    {"\u03a9", Unit::Ohm, 1},   {"\u2126", Unit::Ohm, 1},      {"kohm", Unit::Ohm, 1e3},      {"kOhm", Unit::Ohm, 1e3},
    {"k\u03a9", Unit::Ohm, 1e3}, {"k\u2126", Unit::Ohm, 1e3},  {"K\u03a9", Unit::Ohm, 1e3},   {"Kohm", Unit::Ohm, 1e3},
    {"Mohm", Unit::Ohm, 1e6},   {"MOhm", Unit::Ohm, 1e6},      {"M\u03a9", Unit::Ohm, 1e6},   {"M\u2126", Unit::Ohm, 1e6},
    {"V", Unit::Volt, 1},       {"v", Unit::Volt, 1},          {"volt", Unit::Volt, 1},       {"volts", Unit::Volt, 1},
    {"mV", Unit::Volt, 1e-3},   {"kV", Unit::Volt, 1e3},       {"A", Unit::Ampere, 1},        {"a", Unit::Ampere, 1},
    {"amp", Unit::Ampere, 1},   {"amps", Unit::Ampere, 1},     {"mA", Unit::Ampere, 1e-3},    {"F", Unit::Farad, 1},
    {"uF", Unit::Farad, 1e-6},  {"\u00b5F", Unit::Farad, 1e-6}, {"\u03bcF", Unit::Farad, 1e-6}, {"nF", Unit::Farad, 1e-9},
    {"Hz", Unit::Hertz, 1},     {"kHz", Unit::Hertz, 1e3},     {"Cel", Unit::Celsius, 1},     {"C", Unit::Celsius, 1},
    {"\u00b0C", Unit::Celsius, 1}, {"W", Unit::Watt, 1},       {"kW", Unit::Watt, 1e3},       {"s", Unit::Second, 1},
    {"min", Unit::Second, 60},  {"%", Unit::Percent, 1},
});

struct Prefix
{
    double from;
    double factor;
    std::string_view text;
};

std::string threeDigits(double value)
{
    const double size = std::abs(value);
    const int decimals = size >= 100 || size == 0 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0')
            text.pop_back();
        if (text.back() == '.')
            text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

} // namespace

std::string_view unitCode(Unit unit)
{
    switch (unit) {
    case Unit::None: return "";
    case Unit::Ohm: return "ohm";
    case Unit::Volt: return "V";
    case Unit::Ampere: return "A";
    case Unit::Farad: return "uF";
    case Unit::Hertz: return "Hz";
    case Unit::Celsius: return "Cel";
    case Unit::Watt: return "W";
    case Unit::Second: return "s";
    case Unit::Percent: return "%";
    }
    return "";
}

std::optional<ScaledUnit> unitNamed(std::string_view text)
{
    for (const Spelling &s : kSpellings)
        if (s.text == text)
            return ScaledUnit{s.unit, s.factor};
    return std::nullopt;
}

std::optional<double> numberIn(std::string_view text)
{
    if (text.size() > 1 && text.front() == '+' && text[1] != '-')
        text.remove_prefix(1);
    const std::string_view digits = !text.empty() && text.front() == '-' ? text.substr(1) : text;
    if (digits.empty() || digits.find_first_not_of("0123456789.") != std::string_view::npos)
        return std::nullopt;
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

std::string plainNumber(double value)
{
    std::array<char, 32> buffer{};
    const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    return error == std::errc{} ? std::string(buffer.data(), end) : fmt::format("{}", value);
}

std::string shown(Amount amount)
{
    if (amount.unit == Unit::Ohm) {
        const double size = std::abs(amount.value);
        const Prefix p = size >= 999.5e3 ? Prefix{0, 1e-6, "M\u03a9"} : size >= 999.5 ? Prefix{0, 1e-3, "k\u03a9"} : Prefix{0, 1, "\u03a9"};
        return threeDigits(amount.value * p.factor) + " " + std::string(p.text);
    }
    switch (amount.unit) {
    case Unit::Celsius: return threeDigits(amount.value) + " \u00b0C";
    case Unit::Farad: return threeDigits(amount.value * 1e6) + " \u00b5F";
    case Unit::Percent: return threeDigits(amount.value) + " %";
    case Unit::None: return threeDigits(amount.value);
    case Unit::Ohm:
    case Unit::Volt:
    case Unit::Ampere:
    case Unit::Hertz:
    case Unit::Watt:
    case Unit::Second: break;
    }
    return threeDigits(amount.value) + " " + std::string(unitCode(amount.unit));
}

std::string written(Amount amount)
{
    const double value = amount.unit == Unit::Farad ? amount.value * 1e6 : amount.value;
    const std::string_view code = unitCode(amount.unit);
    return code.empty() ? plainNumber(value) : plainNumber(value) + " " + std::string(code);
}

} // namespace core
