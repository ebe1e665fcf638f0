#include "core/tree/reading_names.h"

#include <algorithm>
#include <array>
#include <limits>

namespace core {
namespace {

using Word = std::string_view;
constexpr std::array<Word, 5> kOhms{"open", "good", "high", "low", "jumps"};
constexpr std::array<Word, 3> kTone{"tone", "no tone", "jumps"};
constexpr std::array<Word, 5> kLive{"none", "low", "good", "high", "jumps"};
constexpr std::array<Word, 4> kWarmth{"low", "good", "high", "jumps"};
constexpr std::array<Word, 5> kOpensAt{"good", "high", "low", "jumps", "stays closed"};

bool canBeLow(const Shown &good)
{
    return good.what == Shown::What::Open || good.span.lo > 0 || good.span.unit == Unit::Celsius;
}

bool canBeHigh(const Shown &good)
{
    return good.what == Shown::What::Value && good.span.hi < std::numeric_limits<double>::infinity();
}

bool isOpen(const Shown &good)
{
    return good.what == Shown::What::Open;
}

// Whether any value of `good`, of any placement and voltage, has the property.
template<class F>
bool any(std::span<const PathLimits *const> limits, F &&has)
{
    return std::ranges::any_of(limits, [&](const PathLimits *l) {
        return std::ranges::any_of(l->good, [&](const auto &entry) { return has(entry.second); });
    });
}

} // namespace

std::span<const std::string_view> readingNames(Measure measure)
{
    switch (measure) {
    case Measure::Resistance:
    case Measure::Capacitance:
    case Measure::Diode:
        return kOhms;
    case Measure::Continuity:
        return kTone;
    case Measure::VoltageAc:
    case Measure::VoltageDc:
    case Measure::VoltageLowImpedance:
    case Measure::CurrentClamp:
    case Measure::Frequency:
    case Measure::Duty:
        return kLive;
    case Measure::Temperature:
        return kWarmth;
    case Measure::OpensAt:
        return kOpensAt;
    case Measure::Look:
    case Measure::Hand:
    case Measure::Ear:
        return {};
    }
    return {};
}

std::vector<std::string> possibleReadings(const Test &test, std::span<const PathLimits *const> limits)
{
    if (test.byEye())
        return test.answers;
    const std::span<const std::string_view> names = readingNames(test.measure);
    std::vector<std::string> possible(names.begin(), names.end());
    if (limits.empty())
        return possible;
    const bool low = any(limits, canBeLow), high = any(limits, canBeHigh);
    const bool open = any(limits, [](const Shown &good) { return !isOpen(good); });
    std::erase_if(possible, [&](const std::string &name) {
        return ((name == "low" || name == "none") && !low) || (name == "high" && !high) || (name == "open" && !open);
    });
    return possible;
}

} // namespace core
