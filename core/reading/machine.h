#pragma once
// The machine at hand: what the content says of it, made concrete by the answers to `asks` and by its plate.
#include "core/reading/limits.h"
#include "core/reading/meter.h"
#include "core/tree/library.h"

namespace core {

struct Machine
{
    const Library *library = nullptr; // outlives the machine
    const Appliance *appliance = nullptr;
    const Tree *tree = nullptr; // nullptr: a loose part
    Answers answers;
    Meter meter;
    std::optional<Amount> ambient;
    std::map<std::string, Rating> plate; // component -> as read off this machine; wins over the appliance's
};

// Whether a component, condition, rung or loop is on this machine (`only` against the answers).
bool isOn(const Machine &machine, std::string_view componentOrCondition);
// Nominal volts across the rung a component hangs on (a motor of a split-phase machine: 120, its heater 240); what is on
// no rung: the largest between two rails. 0 while the supply was not asked for.
int voltsOf(const Machine &machine, std::string_view component);
// V^2/P or value of the plate; the rating assumed by the appliance until a plate was read.
std::optional<Rating> ratingOf(const Machine &machine, std::string_view component);
MachineFacts factsOf(const Machine &machine, std::string_view component, const std::map<std::string, Amount> &with);
// Limits of "component.test" or a loop. nullopt: nothing to compare with.
std::optional<Limits> limitsFor(const Machine &machine, std::string_view test, std::size_t placement,
                                const std::map<std::string, Amount> &with);

} // namespace core
