#include "core/session/cursor.h"
#include "core/session/evidence_of.h"

#include <algorithm>

namespace core {
namespace {

// Answers that speak for a suspect of the component, and those that speak for none of its suspects.
void countAnswers(const Facts &facts, const Suspects &suspects, const std::string &id, Finding &finding,
                  bool unsureCounts = false)
{
    const Looked *looked = lookedAt(facts, id);
    if (looked == nullptr)
        return;
    const auto a = answeredOf(facts, suspects, id);
    for (const std::string &answer : looked->answers) {
        if (a && !unsureCounts && std::ranges::find(a->answers, answer) == a->answers.end())
            continue;
        bool speaks = false;
        for (const int s : speaksFor(facts.machine, suspects, id, answer))
            speaks = speaks || suspects.list[static_cast<std::size_t>(s)].component == finding.component;
        ++(speaks ? finding.out : finding.good);
    }
    finding.done = !looked->answers.empty();
}

std::vector<std::string> modesShown(const Suspects &suspects, const std::string &component,
                                    const std::vector<std::vector<int>> &spoken)
{
    std::vector<std::string> modes;
    for (const auto &answer : spoken)
        for (const int s : answer) {
            const Suspect &suspect = suspects.list[static_cast<std::size_t>(s)];
            if (suspect.component == component && std::ranges::find(modes, suspect.mode) == modes.end())
                modes.push_back(suspect.mode);
        }
    return modes;
}

// Modes a meter test of a kind can show: those its placements' paths differ in.
std::vector<std::string> modesRead(const Kind &kind, const Test &test)
{
    if (!test.convicts.empty())
        return test.convicts;
    std::vector<std::string> modes;
    for (const FailureMode &mode : kind.fails)
        for (const Probes &p : test.placements) {
            const Path *path = kind.pathBetween(p.red, p.black);
            if (path != nullptr && mode.paths.contains(path->id) && std::ranges::find(modes, mode.id) == modes.end())
                modes.push_back(mode.id);
        }
    return modes;
}

Finding ofTest(const Facts &facts, const Abilities &abilities, const Suspects &suspects, const std::string &id,
               const Library::Found &found, const std::string &component)
{
    Finding f;
    f.test = id;
    f.component = component;
    f.byEye = found.test->byEye();
    f.energized = isEnergized(found.test->measure);
    f.possible = canDo(facts, abilities, found);
    f.refused = facts.notDone.contains(id);
    if (f.byEye) {
        countAnswers(facts, suspects, id, f);
        if (const auto a = answeredOf(facts, suspects, id))
            f.modes = modesShown(suspects, component, a->speaksFor);
        return f;
    }
    if (found.kind != nullptr)
        f.modes = modesRead(*found.kind, *found.test);
    const TestState state = testState(facts, id);
    f.done = state.done;
    f.out = state.out;
    f.good = state.good;
    f.jumps = state.jumps;
    const PlacementState past = pastState(facts, found, id);
    if (state.out == 0 && past.out > 0) { // it failed, and reads good since something was changed
        f.out = past.out;
        f.good = past.good;
        f.jumps = past.jumps;
    }
    return f;
}

void addSteps(const Facts &facts, const Abilities &abilities, const Suspects &suspects, std::vector<Finding> &findings)
{
    if (facts.machine.tree == nullptr)
        return;
    for (const Step &step : facts.machine.tree->steps) {
        if (step.what == Step::What::Test || !holds(step.only, facts.machine.answers))
            continue;
        const auto a = answeredOf(facts, suspects, step.id);
        std::set<std::string> components;
        for (const auto &answer : a->speaksFor)
            for (const int s : answer)
                components.insert(suspects.list[static_cast<std::size_t>(s)].component);
        for (const std::string &component : components) {
            Finding f;
            f.test = step.id;
            f.component = component;
            f.modes = modesShown(suspects, component, a->speaksFor);
            f.byEye = true;
            f.tried = a->gone >= 0;
            f.possible = canDoStep(facts, abilities, step);
            f.refused = facts.notDone.contains(step.id);
            countAnswers(facts, suspects, step.id, f);
            findings.push_back(std::move(f));
        }
    }
}

std::vector<std::string> chainTo(const Appliance &appliance, std::string place)
{
    std::vector<std::string> chain;
    for (int guard = 0; !place.empty() && guard < 16; ++guard) {
        const ServicePlace *p = appliance.servicePlace(place);
        if (p == nullptr)
            break;
        chain.insert(chain.begin(), place);
        place = p->after;
    }
    return chain;
}

} // namespace

std::vector<std::string> placesOf(const Machine &machine, std::string_view id)
{
    const Appliance &appliance = *machine.appliance;
    if (machine.tree != nullptr)
        if (const Step *step = machine.tree->step(id); step != nullptr && step->what != Step::What::Test)
            return chainTo(appliance, step->at);
    const Library::Found found = machine.library->test(appliance, id);
    if (found.test == nullptr)
        return {};
    if (found.kind == nullptr) {
        std::vector<std::string> all;
        for (const std::string &at : found.test->at)
            for (std::string &place : chainTo(appliance, at))
                if (std::ranges::find(all, place) == all.end())
                    all.push_back(std::move(place));
        return all;
    }
    const Component *component = appliance.component(found.component);
    if (component == nullptr) {
        const ConditionUse *use = appliance.condition(found.component);
        if (use == nullptr) // a condition of one mode's place stands for its tests
            for (const ConditionUse &c : appliance.conditions)
                if (componentOf(c.id) == found.component)
                    use = &c;
        return use == nullptr || found.test->appliance == ApplianceState::AsIs || found.test->appliance == ApplianceState::InUse
                   ? std::vector<std::string>{}
                   : chainTo(appliance, use->at);
    }
    const auto reach = component->reach.find(found.test->id);
    if (reach != component->reach.end())
        return chainTo(appliance, reach->second);
    if (found.test->byEye() && found.test->appliance != ApplianceState::NoPower)
        return {}; // looked at with everything closed
    return chainTo(appliance, component->at);
}

double minutesOf(const Facts &facts, const std::set<std::string> &openPlaces, std::string_view id)
{
    double minutes = 0;
    for (const std::string &place : placesOf(facts.machine, id))
        if (!openPlaces.contains(place))
            minutes += facts.machine.appliance->servicePlace(place)->minutes;
    if (facts.machine.tree != nullptr)
        if (const Step *step = facts.machine.tree->step(id); step != nullptr && step->what != Step::What::Test)
            return minutes + step->minutes;
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, id);
    return found.test == nullptr ? minutes : minutes + found.test->minutes;
}

std::vector<Finding> findingsOf(const Facts &facts, const Abilities &abilities, const Suspects &suspects,
                                const std::set<std::string> &openPlaces)
{
    std::vector<Finding> findings;
    const Machine &machine = facts.machine;
    std::set<std::string> owners;
    for (const Suspect &s : suspects.list)
        owners.insert(componentOf(s.component));
    for (const Component &c : machine.appliance->components)
        owners.insert(c.id);
    for (const std::string &owner : owners) {
        const Kind *kind = machine.library->kindOf(*machine.appliance, owner);
        if (kind == nullptr || !isOn(machine, owner))
            continue;
        for (const Test &test : kind->tests) {
            const std::string id = owner + "." + test.id;
            findings.push_back(ofTest(facts, abilities, suspects, id, {&test, kind, owner}, owner));
        }
    }
    for (const Test &loop : machine.appliance->loops)
        if (!loop.standsFor.empty())
            findings.push_back(ofTest(facts, abilities, suspects, loop.id, {&loop, nullptr, {}}, componentOf(loop.standsFor)));
    addSteps(facts, abilities, suspects, findings);
    for (Finding &f : findings)
        f.minutes = minutesOf(facts, openPlaces, f.test);
    return findings;
}

} // namespace core
