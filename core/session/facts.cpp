#include "core/session/facts.h"

#include "core/base/text.h"
#include "core/session/cursor.h"
#include "core/session/proving.h"

#include <algorithm>

namespace core {
namespace {

bool touches(const Library::Found &found, const Test &test, const std::string &component)
{
    return found.kind != nullptr ? found.component == component : std::ranges::find(test.covers, component) != test.covers.end();
}

// Readings of what was replaced no longer count at all.
void forget(Facts &facts, const std::string &suspect)
{
    const std::string component = componentOf(suspect);
    std::erase_if(facts.measured, [&](const Measured &m) {
        const Library::Found found = facts.machine.library->test(*facts.machine.appliance, m.test);
        return found.test != nullptr && touches(found, *found.test, component);
    });
}

// Readings of what a `do` changed say what was before it.
void leaveBehind(Facts &facts, const std::string &component)
{
    for (Measured &m : facts.measured) {
        const Library::Found found = facts.machine.library->test(*facts.machine.appliance, m.test);
        m.past = m.past || (found.test != nullptr && touches(found, *found.test, component));
    }
}

// Nothing was changed where the answer says nothing, or claims the very part.
bool wasChanged(const Step &step, const std::string &answer, const std::string &changed)
{
    if (std::ranges::find(step.unsure, answer) != step.unsure.end())
        return false;
    const Then *then = step.thenFor(answer);
    return then == nullptr || then->what != Then::What::Claim || componentOf(then->suspect) != componentOf(changed);
}

void takeOutcome(Facts &facts, const std::string &told, const std::vector<std::string> &replaced)
{
    facts.outcome = told;
    if (told != "not_fixed")
        return;
    for (const std::string &component : replaced) {
        facts.replaced.insert(component);
        forget(facts, component);
    }
}

void takeReading(Facts &facts, const Event &e)
{
    if (e.reported) {
        facts.reported.push_back({e.test, e.value, e.number});
        return;
    }
    if (facts.chosen == e.test)
        facts.chosen.reset();
    facts.notDone.erase(e.test);
    if (!e.reading)
        return;
    const auto index = static_cast<std::size_t>(e.placement);
    std::vector<Measured> &measured = e.step == kProofStep && facts.proving ? facts.proving->read : facts.measured;
    auto at =
        std::ranges::find_if(measured, [&](const Measured &m) { return m.test == e.test && m.placement == index && !m.past; });
    if (at == measured.end())
        at = measured.insert(at, Measured{e.test, index, {}, false, false});
    at->takes.push_back({*e.reading, e.number, e.reseated});
    at->wireLeftOn = at->wireLeftOn || e.wireLeftOn;
}

void takeAnswer(Facts &facts, const Event &e)
{
    const Appliance &appliance = *facts.machine.appliance;
    if (e.step == "S0") {
        facts.atStart = e.value;
        return;
    }
    if (e.step == kProofStep) {
        facts.ran.erase(e.step);
        facts.running.clear();
        facts.proving.reset();
        if (e.value != "unsure")
            takeOutcome(facts, e.value == "works" ? "fixed" : "not_fixed", e.boxes);
        return;
    }
    if (appliance.asked(e.step) != nullptr && e.test.empty()) {
        facts.machine.answers[e.step] = e.value;
        return;
    }
    const std::string id = e.test.empty() ? e.step : e.test;
    if (facts.chosen == id)
        facts.chosen.reset();
    facts.notDone.erase(id);
    facts.ran.erase(id);
    facts.running.clear();
    auto at = std::ranges::find(facts.looked, id, &Looked::id);
    if (at == facts.looked.end())
        at = facts.looked.insert(at, Looked{id, {}, {}});
    at->answers.push_back(e.value);
    at->events.push_back(e.number);
    const Step *step = facts.machine.tree == nullptr ? nullptr : facts.machine.tree->step(e.step);
    if (step == nullptr || step->what != Step::What::Do)
        return;
    for (const std::string &changed : step->changes)
        if (wasChanged(*step, e.value, changed))
            leaveBehind(facts, componentOf(changed));
}

void takeSheet(Facts &facts, const Event &e)
{
    const std::string component = componentOf(e.step);
    std::optional<Rating> base = ratingOf(facts.machine, component);
    Rating rating = base.value_or(Rating{});
    if (!e.reading)
        return;
    rating.assumed = false;
    rating.value = e.reading->amount;
    facts.machine.plate[component] = rating;
}

// It ran and is off again: what was seen can still be told.
void endRun(Facts &facts)
{
    if (!facts.running.empty())
        facts.ran.insert(facts.running);
    facts.running.clear();
}

void take(Facts &facts, const Event &e)
{
    switch (e.what) {
    case Event::What::Answered:
        takeAnswer(facts, e);
        break;
    case Event::What::Read:
        takeReading(facts, e);
        break;
    case Event::What::Skipped:
        if (facts.proving) { // left for another day; the verdict stays
            facts.proving.reset();
            break;
        }
        facts.notDone[e.test.empty() ? e.step : e.test] = e.value;
        if (facts.chosen == e.test)
            facts.chosen.reset();
        break;
    case Event::What::Declined:
        if (facts.proving)
            facts.proving.reset();
        else if (!e.test.empty()) {
            facts.notDone[e.test] = e.never ? "never in this job" : "declined";
            if (facts.chosen == e.test)
                facts.chosen.reset();
        }
        break;
    case Event::What::Shown:
        if (e.request && e.request->stepClass == StepClass::R && e.step == e.request->step)
            facts.running = e.request->test.empty() ? e.step : e.request->test;
        break;
    case Event::What::Confirmed:
        if (e.step == "S9")
            endRun(facts);
        break;
    case Event::What::Lapsed:
    case Event::What::Left:
    case Event::What::Resumed:
        endRun(facts);
        break;
    case Event::What::Chosen:
        facts.proving.reset();
        facts.ran.erase(e.test); // to be run once more
        facts.ran.erase(e.test); // to be run once more
        facts.chosen = e.test;
        facts.notDone.erase(e.test);
        break;
    case Event::What::Sheet:
        takeSheet(facts, e);
        break;
    case Event::What::MeterChanged:
        if (e.meter)
            facts.machine.meter = *e.meter;
        break;
    case Event::What::Outcome:
        takeOutcome(facts, e.value, e.boxes);
        break;
    case Event::What::Proving:
        facts.proving = Proving{e.boxes, {}};
        break;
    case Event::What::Started:
    case Event::What::Acknowledged:
    case Event::What::Detour:
    case Event::What::Undone:
    case Event::What::Amended:
    case Event::What::Stopped:
    case Event::What::NotGas:
    case Event::What::Mistake:
    case Event::What::VerdictShown:
    case Event::What::PutBack:
    case Event::What::Repaired:
    case Event::What::Energized:
    case Event::What::NeverTakenBack:
        break;
    }
}

} // namespace

std::string componentOf(std::string_view suspect)
{
    return std::string(suspect.substr(0, suspect.find('.')));
}

std::string qualified(std::string_view test, std::string_view component)
{
    if (test.find('.') != std::string_view::npos || component.empty())
        return std::string(test);
    return std::string(component) + "." + std::string(test);
}

const Measured *measuredAt(const Facts &facts, std::string_view test, std::size_t placement)
{
    const auto at = std::ranges::find_if(
        facts.measured, [&](const Measured &m) { return m.test == test && m.placement == placement && !m.past; });
    return at == facts.measured.end() ? nullptr : &*at;
}

const Looked *lookedAt(const Facts &facts, std::string_view id)
{
    const auto at = std::ranges::find(facts.looked, id, &Looked::id);
    return at == facts.looked.end() ? nullptr : &*at;
}

Facts factsFrom(const std::vector<Event> &events, const Library &library, const Abilities &abilities)
{
    Facts facts;
    facts.machine.library = &library;
    if (events.empty() || !events.front().snapshot)
        return facts;
    const Snapshot &start = *events.front().snapshot;
    facts.machine.appliance = library.appliance(start.appliance);
    facts.machine.tree = library.tree(start.tree);
    facts.machine.meter = start.meter;
    facts.machine.ambient = start.ambient;
    if (facts.machine.appliance == nullptr)
        return facts;
    if (facts.machine.tree != nullptr && !facts.machine.tree->steps.empty())
        facts.cursor.step = facts.machine.tree->steps.front().id;
    for (const Event &e : events) {
        take(facts, e);
        settle(facts, abilities);
    }
    return facts;
}

} // namespace core
