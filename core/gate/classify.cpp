#include "core/gate/classify.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <utility>

namespace core {
namespace {

template<class List>
bool in(const List &list, std::string_view word)
{
    return std::ranges::find(list, word) != list.end();
}

constexpr auto kDead = std::to_array<std::string_view>({"resistance", "continuity", "capacitance", "diode", "opens_at"});
constexpr auto kVolts =
    std::to_array<std::string_view>({"voltage_ac", "voltage_dc", "voltage_low_impedance", "frequency", "duty"});
constexpr auto kDeclares = std::to_array<std::string_view>({"temperature", "look", "hand", "ear", "do"});
constexpr auto kTouched = std::to_array<std::string_view>({"breaker", "gfci", "plug", "outlet", "switch"});

constexpr auto kZones = std::to_array<std::string_view>({"microwave", "sealed_system", "gas", "panel", "inverter"});

struct Forbidden
{
    std::string_view kind, test; // test "": every measured test of the kind
    std::string_view zone;
};
constexpr auto kForbidden = std::to_array<Forbidden>({
    {"mw_hv", "", "microwave"},
    {"mw_fuse", "", "microwave"},
    {"mw_interlocks", "", "microwave"},
    {"thermocouple", "", "gas"},           // millivolts with the pilot lit: a technician's
    {"compressor_inverter", "in", "inverter"},
});

// Volts that a person's own hand makes, at the unplugged connector of a permanent-magnet motor: up to about 30 V, turned
// slowly. The only reading in volts that is dead work; no tree can add to it.
struct SelfSourced
{
    std::string_view kind, test;
};
constexpr auto kSelfSourced = std::to_array<SelfSourced>({{"drive_motor_bldc", "gen"}});

bool isSelfSourced(const StepFacts &facts)
{
    const auto same = [&](const SelfSourced &entry) { return entry.kind == facts.kind && entry.test == facts.test; };
    return facts.turnedByHand && std::ranges::any_of(kSelfSourced, same);
}

StepClass deadClass(const StepFacts &facts)
{
    return facts.store == Store::None ? StepClass::D : StepClass::DS;
}

Classified fault(std::string text)
{
    Classified out;
    out.fault = std::move(text);
    return out;
}

Classified declared(const StepFacts &facts)
{
    Classified out;
    const bool behind = facts.place == PlaceSort::BehindCover;
    const Declared appliance = facts.measure.empty() ? Declared::AsIs : facts.appliance; // an ask is always that
    if (!facts.touches.empty()) {
        if (!in(kTouched, facts.touches))
            return fault("touches '" + facts.touches + "' is not one of breaker, gfci, plug, outlet, switch");
        if (behind)
            return fault("touches " + facts.touches + " with a cover off");
        out.stepClass = StepClass::AP;
        out.inUse = appliance == Declared::InUse;
        return out;
    }
    switch (appliance) {
    case Declared::Unsaid: return fault("says nothing of the appliance: as_is, no_power or in_use");
    case Declared::AsIs:
        if (behind)
            return fault("as_is behind a cover: a panel is off, so it is no_power or in_use");
        out.stepClass = StepClass::A;
        break;
    case Declared::NoPower: out.stepClass = deadClass(facts); break;
    case Declared::InUse: out.stepClass = behind ? StepClass::EO : StepClass::R; break;
    }
    return out;
}

Classified measured(const StepFacts &facts)
{
    Classified out;
    if (in(kDead, facts.measure) || isSelfSourced(facts))
        out.stepClass = deadClass(facts);
    else if (facts.measure == "current_clamp")
        out.stepClass = StepClass::E3;
    else if (in(kVolts, facts.measure))
        out.stepClass = facts.place == PlaceSort::OutletFace ? StepClass::E2 : StepClass::E1;
    else
        return fault("measures '" + facts.measure + "', which has no class");
    return out;
}

// Whole words, so that "restart" and "starter" are not "start".
bool hasPhrase(std::string_view text, std::string_view phrase)
{
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; };
    for (std::size_t at = text.find(phrase); at != std::string_view::npos; at = text.find(phrase, at + 1)) {
        const std::size_t end = at + phrase.size();
        if ((at == 0 || !letter(text[at - 1])) && (end == text.size() || !letter(text[end])))
            return true;
    }
    return false;
}

constexpr auto kAsksForPower = std::to_array<std::string_view>(
    {"start it", "start the", "running", "while on", "while it runs", "plug in", "plug it in", "plug it back in", "switch it on",
     "switch on", "turn it on", "turn on", "power on", "run it", "run the", "energized"});
constexpr auto kAsksToOpen = std::to_array<std::string_view>(
    {"remove the panel", "remove the cover", "take off the panel", "take off the rear panel", "take off the cover",
     "open the panel", "open the back", "unscrew", "reach inside", "pull the wire"});

} // namespace

Classified classify(const StepFacts &facts)
{
    Classified out = in(kDeclares, facts.measure) || facts.measure.empty() ? declared(facts) : measured(facts);
    if (!out.fault.empty())
        return out;
    const bool looks = facts.measure.empty() || in(kDeclares, facts.measure);
    const std::string zone = isXZone(facts.zone) ? facts.zone : std::string(looks ? "" : xZoneOf(facts.kind, facts.test));
    if (!zone.empty() && out.stepClass != StepClass::A) {
        out.stepClass = StepClass::X;
        out.zone = zone;
    }
    if (!facts.zone.empty() && !isXZone(facts.zone))
        return fault("zone '" + facts.zone + "' is not in the program's list");
    return out;
}

StepClass stricterOf(StepClass program, StepClass named)
{
    // Within one kind of work only: a dead step stays dead work. X is stricter than anything, E1 than a look from outside.
    constexpr auto rank = [](StepClass c) {
        switch (c) {
        case StepClass::A: return 0;
        case StepClass::AP:
        case StepClass::R: return 1;
        case StepClass::D: return 2;
        case StepClass::DS: return 3;
        case StepClass::E1:
        case StepClass::E2:
        case StepClass::E3:
        case StepClass::EO: return 4;
        case StepClass::P: return 5;
        case StepClass::X: return 6;
        }
        return 6;
    };
    return rank(named) > rank(program) ? named : program;
}

bool isXZone(std::string_view zone)
{
    return in(kZones, zone);
}

std::string_view xZoneOf(std::string_view kind, std::string_view test)
{
    const auto names = [&](const Forbidden &f) { return f.kind == kind && (f.test.empty() || f.test == test); };
    const auto it = std::ranges::find_if(kForbidden, names);
    return it == kForbidden.end() ? std::string_view() : it->zone;
}

std::optional<std::string> wordAgainst(StepClass stepClass, std::string_view text)
{
    const std::string low = lowered(text);
    const auto found = [&](const auto &list) -> std::optional<std::string> {
        const auto it = std::ranges::find_if(list, [&](std::string_view phrase) { return hasPhrase(low, phrase); });
        return it == list.end() ? std::nullopt : std::optional(std::string(*it));
    };
    if (isDeadWork(stepClass))
        return found(kAsksForPower);
    if (stepClass == StepClass::A || stepClass == StepClass::AP || stepClass == StepClass::R)
        return found(kAsksToOpen);
    return std::nullopt;
}

MeterMark markFor(StepClass stepClass, bool hardWired, bool terminalBlock)
{
    const bool wall = stepClass == StepClass::E2 || stepClass == StepClass::P || hardWired || terminalBlock;
    return wall ? kWallMark : kInsideMark;
}

} // namespace core
