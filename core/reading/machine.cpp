#include "core/reading/machine.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

using Rails = std::map<std::string, double>;

const Rails *railsOf(const Machine &machine)
{
    const auto &all = machine.appliance->rails;
    if (const auto always = all.find(""); always != all.end())
        return &always->second;
    const auto supply = machine.answers.find("supply");
    const auto at = supply == machine.answers.end() ? all.end() : all.find(supply->second);
    return at == all.end() ? nullptr : &at->second;
}

double largestDifference(const Rails &rails)
{
    double most = 0;
    for (const auto &a : rails)
        for (const auto &b : rails)
            most = std::max(most, std::abs(a.second - b.second));
    return most;
}

bool passes(const Rung &rung, std::string_view name, RungItem::What what)
{
    return std::ranges::any_of(rung.items, [&](const RungItem &i) { return i.what == what && i.component == name; });
}

// Volts between the rails at the ends of a rung; a rung that begins and ends at named points has those of the rung it
// branches off.
double acrossRung(const Machine &machine, const Rung &rung, const Rails &rails, int depth = 0)
{
    std::vector<double> ends;
    for (const RungItem &item : rung.items)
        if (item.what == RungItem::What::Rail)
            if (const auto rail = rails.find(item.component); rail != rails.end())
                ends.push_back(rail->second);
    if (ends.size() >= 2)
        return std::abs(ends.front() - ends.back());
    if (depth > 4)
        return 0;
    for (const RungItem &item : rung.items) {
        if (item.what != RungItem::What::Point)
            continue;
        for (const Rung &other : machine.appliance->rungs)
            if (&other != &rung && holds(other.only, machine.answers) && passes(other, item.component, RungItem::What::Point))
                if (const double volts = acrossRung(machine, other, rails, depth + 1); volts > 0)
                    return volts;
    }
    return 0;
}

} // namespace

bool isOn(const Machine &machine, std::string_view name)
{
    if (const Component *c = machine.appliance->component(name))
        return holds(c->only, machine.answers);
    if (const ConditionUse *c = machine.appliance->condition(name))
        return holds(c->only, machine.answers);
    if (const Test *loop = machine.appliance->loop(name))
        return holds(loop->only, machine.answers);
    const std::string_view base = name.substr(0, name.find('.'));
    return base != name ? isOn(machine, base) : machine.library->kind(name) != nullptr;
}

int voltsOf(const Machine &machine, std::string_view component)
{
    const Rails *rails = railsOf(machine);
    if (rails == nullptr)
        return 0;
    for (const Rung &rung : machine.appliance->rungs)
        if (holds(rung.only, machine.answers) && passes(rung, component, RungItem::What::Part))
            return static_cast<int>(std::lround(acrossRung(machine, rung, *rails)));
    return static_cast<int>(std::lround(largestDifference(*rails)));
}

std::optional<Rating> ratingOf(const Machine &machine, std::string_view component)
{
    if (const auto plate = machine.plate.find(std::string(component)); plate != machine.plate.end())
        return plate->second;
    const Component *c = machine.appliance->component(component);
    if (c == nullptr)
        return std::nullopt;
    if (const auto always = c->ratings.find(""); always != c->ratings.end())
        return always->second;
    for (const auto &[ask, answer] : machine.answers)
        if (const auto at = c->ratings.find(answer); at != c->ratings.end())
            return at->second;
    return std::nullopt;
}

MachineFacts factsOf(const Machine &machine, std::string_view component, const std::map<std::string, Amount> &with)
{
    MachineFacts facts;
    facts.volts = voltsOf(machine, component);
    facts.with = with;
    if (machine.ambient)
        facts.with.try_emplace("ambient", *machine.ambient);
    if (const auto rating = ratingOf(machine, component)) {
        facts.plateRead = !rating->assumed;
        if (rating->value)
            facts.ratedOhm = rating->value->value;
        else if (rating->watts > 0)
            facts.ratedOhm = rating->volts * rating->volts / rating->watts;
    }
    return facts;
}

std::optional<Limits> limitsFor(const Machine &machine, std::string_view name, std::size_t placement,
                                const std::map<std::string, Amount> &with)
{
    const Library::Found found = machine.library->test(*machine.appliance, name);
    if (found.test == nullptr || found.test->byEye())
        return std::nullopt;
    if (found.kind != nullptr)
        return limitsOf(*found.kind, *found.test, placement, factsOf(machine, found.component, with));
    if (!found.test->limits)
        return std::nullopt;
    const std::string_view first = found.test->covers.empty() ? std::string_view{} : found.test->covers.front();
    return limitsOf(*found.test->limits, nullptr, false, factsOf(machine, first, with), found.test->measure);
}

} // namespace core
