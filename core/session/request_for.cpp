#include "core/gate/classify.h"
#include "core/session/evidence_of.h"
#include "core/session/names.h"
#include "core/session/safety.h"

#include <algorithm>

namespace core {
namespace {

// Screens of a dryer's hot parts: common practice, no source.
constexpr double kHotWaitS = 15 * 60;

struct Where
{
    std::string place;
    bool coverOff = false;
};

Where whereOf(const Machine &machine, std::string_view id)
{
    const auto places = placesOf(machine, id);
    if (places.empty())
        return {};
    const ServicePlace *last = machine.appliance->servicePlace(places.back());
    const bool cover = std::ranges::any_of(places, [&](const std::string &p) {
        const ServicePlace *place = machine.appliance->servicePlace(p);
        return place != nullptr && place->cover && p != "outlet";
    });
    return {last->id, cover};
}

PlaceSort sortOf(const StepRequest &r)
{
    return r.place == "outlet" ? PlaceSort::OutletFace : r.coverOff ? PlaceSort::BehindCover : PlaceSort::NoCover;
}

Declared declaredAs(ApplianceState state)
{
    switch (state) {
    case ApplianceState::Unsaid: return Declared::Unsaid;
    case ApplianceState::AsIs: return Declared::AsIs;
    case ApplianceState::NoPower: return Declared::NoPower;
    case ApplianceState::InUse: return Declared::InUse;
    }
    return Declared::Unsaid;
}

// What contradicts itself is withheld: the gate refuses class P to everybody but itself.
void classifyInto(StepRequest &r, const StepFacts &facts)
{
    const Classified classified = classify(facts);
    r.stepClass = classified.fault.empty() ? classified.stepClass : StepClass::P;
    r.inUse = classified.inUse;
    r.zone = classified.zone;
}

std::vector<std::string> conductorsOf(const Machine &machine, const Phrases &phrases)
{
    std::vector<std::string> names;
    const auto supply = machine.answers.find("supply");
    auto rails = machine.appliance->rails.find(supply == machine.answers.end() ? std::string() : supply->second);
    if (rails == machine.appliance->rails.end())
        rails = machine.appliance->rails.find("");
    if (rails != machine.appliance->rails.end())
        for (const auto &rail : rails->second)
            names.push_back(rail.first);
    names.push_back(phrases.say("bare_metal"));
    return names;
}

void fillTest(StepRequest &r, const Machine &machine, const Library::Found &found, const Phrases &phrases)
{
    const Test &test = *found.test;
    for (const std::string &pull : test.pull)
        r.pulls.push_back(wireId(found.component, pull));
    r.touches = test.touches;
    if (test.storedCharge) {
        r.store = found.component.find("capacitor") != std::string::npos ? Store::Motor : Store::Board;
        r.storeName = nameOf(machine, found.component);
    }
    StepFacts facts;
    facts.kind = found.kind == nullptr ? std::string() : found.kind->id;
    facts.test = test.id;
    facts.measure = std::string(word(test.measure));
    facts.place = sortOf(r);
    facts.appliance = declaredAs(test.appliance);
    facts.touches = test.touches;
    facts.store = r.store;
    facts.text = test.say;
    classifyInto(r, facts);
    if (test.hot && isDeadWork(r.stepClass)) {
        r.hotPart = nameOf(machine, found.component);
        r.hotWaitS = kHotWaitS;
    }
    r.params["function"] = phrases.say("function." + std::string(word(test.measure)));
    r.params["jacks"] = phrases.say("jacks." + std::string(test.measure == Measure::CurrentClamp ? "clamp" : "volts"));
    r.params["cycle"] = test.run.empty() ? phrases.say("run.any") : test.run;
    if (!test.placements.empty()) {
        const Probes &p = test.placements.front();
        r.params["terminals"] = terminalName(machine, found.component, p.red, true) + " / " + terminalName(machine, found.component, p.black, true);
        r.params["slot"] = terminalName(machine, found.component, p.red, false);
    }
    r.params["load"] = nameOf(machine, found.component);
    r.params["seconds"] = std::to_string(static_cast<int>(test.waitS > 0 ? test.waitS : 10));
}

void fillStep(StepRequest &r, const Step &step, const Phrases &phrases)
{
    r.touches = step.touches;
    StepFacts facts;
    facts.measure = step.what == Step::What::Do ? "do" : step.what == Step::What::Look ? "look" : "";
    facts.place = sortOf(r);
    facts.appliance = declaredAs(step.appliance);
    facts.touches = step.touches;
    facts.text = step.text;
    classifyInto(r, facts);
    r.params["what"] = step.text;
    r.params["minutes"] = phrases.say("minutes", {{"n", std::to_string(static_cast<int>(std::max(step.minutes, 3.)))}});
}

} // namespace

StepRequest requestFor(const Facts &facts, const Wanted &wanted, const std::string &process, const Phrases &phrases)
{
    const Machine &machine = facts.machine;
    StepRequest r;
    r.process = process;
    if (wanted.what == Wanted::What::End) {
        StepRequest verdict = verdictRequest();
        verdict.process = process;
        verdict.conductors = conductorsOf(machine, phrases);
        return verdict;
    }
    r.step = wanted.step.empty() ? wanted.id : wanted.step;
    if (wanted.what == Wanted::What::Ask)
        return r;
    const Where where = whereOf(machine, wanted.id);
    r.place = where.place;
    r.coverOff = where.coverOff;
    r.params["what"] = titleOf(machine, wanted.id);
    r.params["minutes"] = phrases.say("minutes", {{"n", "3"}});
    r.params["cover"] = coverName(machine, r.place);
    if (wanted.what == Wanted::What::Test) {
        r.test = wanted.id;
        r.placement = std::to_string(wanted.placement + 1);
        const Library::Found found = machine.library->test(*machine.appliance, wanted.id);
        if (found.test != nullptr)
            fillTest(r, machine, found, phrases);
    } else if (const Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(wanted.id)) {
        fillStep(r, *step, phrases);
    }
    const bool neutralFrame = machine.answers.contains("cord") && machine.answers.at("cord") == "3_wire";
    r.needs = markFor(r.stepClass, machine.appliance->hardWired, false);
    r.needsFrameCheck = !neutralFrame && (r.stepClass == StepClass::E1 || r.stepClass == StepClass::E3 || r.stepClass == StepClass::EO);
    if (neutralFrame)
        r.notes.push_back("frame_is_neutral");
    r.conductors = conductorsOf(machine, phrases);
    r.params["category"] = shown(r.needs);
    return r;
}

} // namespace core
