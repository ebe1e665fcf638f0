#include "core/tree/library.h"

#include <algorithm>
#include <array>

namespace core {
namespace {

template<class Items>
auto byId(const Items &items, std::string_view id) -> decltype(&*items.begin())
{
    const auto at = std::ranges::find_if(items, [id](const auto &item) { return item.id == id; });
    return at == items.end() ? nullptr : &*at;
}

template<class Map>
auto valueAt(const Map &map, std::string_view id) -> decltype(&map.begin()->second)
{
    const auto at = map.find(id);
    return at == map.end() ? nullptr : &at->second;
}

} // namespace

const Path *Kind::path(std::string_view wanted) const { return byId(paths, wanted); }
const Test *Kind::test(std::string_view wanted) const { return byId(tests, wanted); }
const FailureMode *Kind::mode(std::string_view wanted) const { return byId(fails, wanted); }

const Path *Kind::pathBetween(std::string_view a, std::string_view b) const
{
    const auto joins = [&](const Path &p) { return (p.from == a && p.to == b) || (p.from == b && p.to == a); };
    const auto at = std::ranges::find_if(paths, joins);
    if (at != paths.end())
        return &*at;
    // a conductor that may touch metal is bare at both its ends: `along` joins its far end to the metal as well
    for (const Path &p : paths) {
        const Path *conductor = p.along.empty() ? nullptr : path(p.along);
        if (conductor == nullptr)
            continue;
        const auto isEnd = [&](std::string_view t) { return t == conductor->from || t == conductor->to; };
        if ((isEnd(a) && b == p.to) || (isEnd(b) && a == p.to))
            return &p;
    }
    return nullptr;
}

std::string_view Kind::cureOf(std::string_view modeId) const
{
    const FailureMode *m = mode(modeId);
    return m != nullptr && !m->cure.empty() ? m->cure : cure;
}

const std::vector<std::string> &Kind::needsFor(std::string_view modeId) const
{
    static const std::vector<std::string> kNone;
    if (const auto at = buyNeeds.find(std::string(modeId)); at != buyNeeds.end())
        return at->second;
    const auto rest = buyNeeds.find("else");
    return rest == buyNeeds.end() ? kNone : rest->second;
}

std::string_view word(Measure measure)
{
    static constexpr std::array<std::string_view, 15> kWords{
        "resistance", "continuity", "capacitance", "diode", "voltage_ac", "voltage_dc", "voltage_low_impedance", "current_clamp",
        "frequency", "duty", "temperature", "opens_at", "look", "hand", "ear"};
    return kWords[static_cast<std::size_t>(measure)];
}

std::string_view word(Basis basis)
{
    static constexpr std::array<std::string_view, 4> kWords{"common practice", "plate", "sheet", "published"};
    return kWords[static_cast<std::size_t>(basis)];
}

bool isEnergized(Measure measure)
{
    return measure >= Measure::VoltageAc && measure <= Measure::Duty;
}

bool isDead(Measure measure)
{
    return measure <= Measure::Diode || measure == Measure::OpensAt;
}

Unit unitOf(Measure measure)
{
    switch (measure) {
    case Measure::Resistance:
    case Measure::Continuity: return Unit::Ohm;
    case Measure::Capacitance: return Unit::Farad;
    case Measure::Diode:
    case Measure::VoltageAc:
    case Measure::VoltageDc:
    case Measure::VoltageLowImpedance: return Unit::Volt;
    case Measure::CurrentClamp: return Unit::Ampere;
    case Measure::Frequency: return Unit::Hertz;
    case Measure::Duty: return Unit::Percent;
    case Measure::Temperature:
    case Measure::OpensAt: return Unit::Celsius;
    case Measure::Look:
    case Measure::Hand:
    case Measure::Ear: return Unit::None;
    }
    return Unit::None;
}

bool holds(const Only &only, const Answers &answers)
{
    return std::ranges::all_of(only, [&](const auto &rule) {
        const auto given = answers.find(rule.first);
        return given != answers.end() && std::ranges::find(rule.second, given->second) != rule.second.end();
    });
}

const Component *Appliance::component(std::string_view wanted) const { return byId(components, wanted); }
const ServicePlace *Appliance::servicePlace(std::string_view wanted) const { return byId(places, wanted); }
const Test *Appliance::loop(std::string_view wanted) const { return byId(loops, wanted); }
const ConditionUse *Appliance::condition(std::string_view wanted) const { return byId(conditions, wanted); }
const Ask *Appliance::nextAsk(const Answers &answers) const
{
    const auto at = std::ranges::find_if(asks, [&](const Ask &a) { return !answers.contains(a.id) && holds(a.only, answers); });
    return at == asks.end() ? nullptr : &*at;
}
const Ask *Appliance::asked(std::string_view wanted) const { return byId(asks, wanted); }

const Then *Step::thenFor(std::string_view reading) const
{
    const auto named = [&](std::string_view name) {
        return std::ranges::find_if(then, [name](const auto &branch) { return branch.first == name; });
    };
    if (const auto branch = named(reading); branch != then.end())
        return &branch->second;
    const auto rest = named("else");
    return rest == then.end() ? nullptr : &rest->second;
}

std::vector<std::string> Step::answers() const
{
    std::vector<std::string> names;
    for (const auto &[name, next] : then)
        if (name != "else" && name != "not_done")
            names.push_back(name);
    return names;
}

const Step *Tree::step(std::string_view wanted) const { return byId(steps, wanted); }

double Tree::weightOf(std::string_view name) const
{
    const auto at = std::ranges::find_if(weights, [name](const auto &w) { return w.first == name; });
    return at == weights.end() ? 0 : at->second;
}

const Kind *Library::kind(std::string_view name) const { return valueAt(kinds, name); }
const Appliance *Library::appliance(std::string_view name) const { return valueAt(appliances, name); }
const Tree *Library::tree(std::string_view name) const { return valueAt(trees, name); }

const Kind *Library::kindOf(const Appliance &machine, std::string_view name) const
{
    if (const Component *c = machine.component(name))
        return kind(c->kind);
    const std::string_view base = name.substr(0, name.find('.'));
    if (const Component *c = machine.component(base))
        return kind(c->kind);
    return kind(base);
}

Library::Found Library::test(const Appliance &machine, std::string_view name) const
{
    if (const Test *loop = machine.loop(name))
        return {loop, nullptr, {}};
    const auto dot = name.find('.');
    if (dot == std::string_view::npos)
        return {};
    const std::string component(name.substr(0, dot));
    const Kind *k = kindOf(machine, component);
    const Test *t = k == nullptr ? nullptr : k->test(name.substr(dot + 1));
    return t == nullptr ? Found{} : Found{t, k, component};
}

} // namespace core
