#include "core/base/text.h"
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
    case ApplianceState::Unsaid:
        return Declared::Unsaid;
    case ApplianceState::AsIs:
        return Declared::AsIs;
    case ApplianceState::NoPower:
        return Declared::NoPower;
    case ApplianceState::InUse:
        return Declared::InUse;
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

// Two live rails of opposite phase: a large plug with a double breaker.
bool isSplitPhase(const Machine &machine)
{
    const auto split = [](const auto &rails) {
        return std::ranges::any_of(rails, [](const auto &rail) { return rail.second < 0; });
    };
    const auto supply = machine.answers.find("supply");
    if (supply == machine.answers.end()) // not asked yet: the line names itself whom it is for
        return std::ranges::any_of(machine.appliance->rails, [&](const auto &named) { return split(named.second); });
    const auto rails = machine.appliance->rails.find(supply->second);
    return rails != machine.appliance->rails.end() && split(rails->second);
}

// Which conditional lines of the safety texts hold for this machine and step.
std::vector<std::string> notesOf(const Machine &machine, const StepRequest &r, const Test *test)
{
    constexpr double kLowRailV = 50; // IEC 60364-4-41: extra-low voltage ends at 50 V ac (from memory)
    std::vector<std::string> notes(machine.appliance->hazards);
    const auto note = [&](bool holds, const char *name) {
        if (holds)
            notes.emplace_back(name);
    };
    const bool split = isSplitPhase(machine),
               gas = std::ranges::find(machine.appliance->hazards, "gas") != machine.appliance->hazards.end();
    const bool duct = machine.appliance->condition("vent_blocked") != nullptr;
    note(split, "big_plug");
    note(split && r.stepClass == StepClass::E2, "breaker_was_off");
    note(!split, "gfci");
    note(duct && !gas, "dryer_duct");
    note(duct && gas, "gas_dryer");
    note(!duct && gas, "gas_oven");
    note(r.stepClass == StepClass::E3 && !r.coverOff, "splitter");
    note(r.stepClass == StepClass::E3 && r.coverOff, "inside");
    if (test != nullptr && isEnergized(test->measure) && test->measure != Measure::CurrentClamp) {
        const auto limits = limitsFor(machine, r.test, 0, {});
        note(limits && limits->hi < kLowRailV, "low_rail");
    }
    return notes;
}

void fillTest(StepRequest &r, const Machine &machine, const Library::Found &found, std::size_t placement, const Phrases &phrases)
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
        // once for all that is behind one cover
        r.hotPart =
            r.coverOff ? phrases.say("hot.behind", {{"place", coverName(machine, r.place)}}) : nameOf(machine, found.component);
        r.hotWaitS = kHotWaitS;
    }
    r.params["function"] = phrases.say("function." + std::string(word(test.measure)));
    r.params["jacks"] = phrases.say("jacks." + std::string(test.measure == Measure::CurrentClamp ? "clamp" : "volts"));
    r.params["cycle"] = test.run.empty() ? phrases.say("run.any") : test.run;
    if (!test.placements.empty()) {
        const Probes &p = test.placements[std::min(placement, test.placements.size() - 1)];
        r.params["terminals"] =
            terminalName(machine, found.component, p.red, true) + " / " + terminalName(machine, found.component, p.black, true);
        r.params["red_slot"] = terminalName(machine, found.component, p.red, false);
        r.params["black_slot"] = terminalName(machine, found.component, p.black, false);
    }
    r.params["load"] = nameOf(machine, found.component);
    r.params["seconds"] = phrases.say("seconds", {{"n", std::to_string(static_cast<int>(test.waitS > 0 ? test.waitS : 10))}});
    r.notes = notesOf(machine, r, &test);
}

// What to watch for while it runs: the step's own question, or what can be seen where it only says what to do.
std::string watchedIn(const Step &step)
{
    const std::string &text = step.text;
    const auto end = text.rfind('?');
    if (end == std::string::npos) {
        std::vector<std::string> seen;
        for (const std::string &answer : step.answers())
            if (std::ranges::find(step.unsure, answer) == step.unsure.end())
                seen.push_back("\u201c" + answer + "\u201d");
        return seen.empty() ? text : joined(seen, ", ");
    }
    const auto before = text.find_last_of(".!?", end == 0 ? 0 : end - 1);
    const auto from = before == std::string::npos ? 0 : text.find_first_not_of(' ', before + 1);
    return "\u201c" + text.substr(from, end + 1 - from) + "\u201d";
}

void fillStep(StepRequest &r, const Machine &machine, const Step &step, const Phrases &phrases)
{
    r.touches = step.touches;
    StepFacts facts;
    facts.measure = step.what == Step::What::Do ? "do" : step.what == Step::What::Look ? "look" : "";
    facts.place = sortOf(r);
    facts.appliance = declaredAs(step.appliance);
    facts.touches = step.touches;
    facts.text = step.text;
    classifyInto(r, facts);
    r.notes = notesOf(machine, r, nullptr);
    r.params["what"] = watchedIn(step);
    r.params["minutes"] = phrases.say("minutes", {{"n", std::to_string(static_cast<int>(std::max(step.minutes, 3.)))}});
}

// The proof of a repair: the machine at its work, closed up.
void fillRun(StepRequest &r, const Machine &machine, const Phrases &phrases)
{
    StepFacts facts;
    facts.measure = "look";
    facts.appliance = Declared::InUse;
    classifyInto(r, facts);
    r.notes = notesOf(machine, r, nullptr);
    r.params["what"] = phrases.say("proof.watch");
    r.params["minutes"] = phrases.say("minutes", {{"n", "10"}});
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
    if (wanted.what == Wanted::What::Run) {
        fillRun(r, machine, phrases);
        if (facts.ran.contains(wanted.id))
            r.stepClass = StepClass::A;
        return r;
    }
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
            fillTest(r, machine, found, wanted.placement, phrases);
    } else if (const Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(wanted.id)) {
        fillStep(r, machine, *step, phrases);
    }
    if (r.stepClass == StepClass::R && facts.ran.contains(wanted.id)) {
        r.stepClass = StepClass::A;
        r.touches.clear();
    }
    const bool neutralFrame = isSplitPhase(machine) && machine.answers.contains("cord") && machine.answers.at("cord") == "3_wire";
    r.needs = markFor(r.stepClass, machine.appliance->hardWired, false);
    r.needsFrameCheck =
        !neutralFrame && (r.stepClass == StepClass::E1 || r.stepClass == StepClass::E3 || r.stepClass == StepClass::EO);
    for (const Test &loop : machine.appliance->loops)
        if (loop.frameCheck && !holds(loop.only, machine.answers))
            r.frameNotHere.push_back(loop.id);
    if (neutralFrame)
        r.notes.push_back("frame_is_neutral");
    r.conductors = conductorsOf(machine, phrases);
    r.params["category"] = shown(r.needs);
    return r;
}

} // namespace core
