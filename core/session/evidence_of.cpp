#include "core/session/evidence_of.h"

#include "core/verdict/verdict.h"

#include <algorithm>

namespace core {
namespace {

// Chance that a complaint goes away just when something else was tried. Judgement.
constexpr double kGoneByItself = .01;

const Step *stepNamed(const Machine &machine, std::string_view id)
{
    return machine.tree == nullptr ? nullptr : machine.tree->step(id);
}

void add(std::vector<int> &to, const std::vector<int> &more)
{
    for (const int s : more)
        if (std::ranges::find(to, s) == to.end())
            to.push_back(s);
}

std::vector<int> shownByStep(const Suspects &suspects, const Step &step, std::string_view answer)
{
    std::vector<int> spoken;
    if (const auto shows = step.shows.find(std::string(answer)); shows != step.shows.end()) {
        for (const std::string &id : shows->second)
            add(spoken, suspectsNamed(suspects, id));
        return spoken;
    }
    const Then *then = step.thenFor(answer);
    if (then != nullptr && !then->suspect.empty())
        add(spoken, suspectsNamed(suspects, then->suspect));
    return spoken;
}

bool isUnsure(const std::vector<std::string> &unsure, const std::string &answer)
{
    return std::ranges::find(unsure, answer) != unsure.end();
}

Answered ofStep(const Machine &machine, const Suspects &suspects, const Step &step)
{
    Answered a;
    a.id = step.id;
    a.sensitivity = step.sensitivity;
    a.falseAlarm = step.falseAlarm;
    a.again = step.what == Step::What::Do ? .2 : .7;
    for (const std::string &answer : step.answers()) {
        if (isUnsure(step.unsure, answer))
            continue;
        a.answers.push_back(answer);
        a.speaksFor.push_back(speaksFor(machine, suspects, step.id, answer));
    }
    if (step.what == Step::What::Do) {
        for (std::size_t n = 0; n < a.answers.size() && a.gone < 0; ++n)
            if (const Then *then = step.thenFor(a.answers[n]); then != nullptr && then->what == Then::What::Fix)
                a.gone = static_cast<int>(n);
        if (a.gone >= 0)
            a.falseAlarm = std::min(a.falseAlarm, kGoneByItself);
        for (const std::string &changed : step.changes)
            for (const int s : suspectsNamed(suspects, changed)) {
                const Suspect &suspect = suspects.list[static_cast<std::size_t>(s)];
                const Kind *kind = machine.library->kindOf(*machine.appliance, suspect.component);
                const auto cure = kind == nullptr ? std::nullopt : cureNamed(kind->cureOf(suspect.mode));
                if (cure && buysNothing(*cure)) // a part is not put right by a push, what trips or is set is
                    add(a.putsRight, {s});
            }
    }
    return a;
}

Answered ofTest(const Machine &machine, const Suspects &suspects, const Test &test, const std::string &id)
{
    Answered a;
    a.id = id;
    a.sensitivity = test.sensitivity;
    a.falseAlarm = test.falseAlarm;
    for (const std::string &answer : test.answers) {
        if (isUnsure(test.unsure, answer))
            continue;
        a.answers.push_back(answer);
        a.speaksFor.push_back(speaksFor(machine, suspects, id, answer));
    }
    return a;
}

Placed placedOf(const Facts &facts, const Measured &measured, const Test &test)
{
    Placed p;
    p.placement = {measured.test, measured.placement, {}};
    p.measure = test.measure;
    p.pullsAny = !test.pull.empty();
    p.wireLeftOn = measured.wireLeftOn;
    for (const Take &take : measured.takes) {
        Reading reading = take.reading;
        if (facts.machine.ambient)
            p.placement.with.try_emplace("ambient", *facts.machine.ambient);
        for (const auto &[id, amount] : reading.with)
            p.placement.with[id] = amount;
        p.seatings.push_back({std::move(reading)});
        p.confirmed = p.confirmed || take.contrast;
    }
    return p;
}

} // namespace

std::vector<int> suspectsNamed(const Suspects &suspects, std::string_view id)
{
    std::vector<int> named;
    for (std::size_t i = 0; i < suspects.list.size(); ++i) {
        const Suspect &s = suspects.list[i];
        if (s.id == id || (s.component == id && id.find('.') == std::string_view::npos))
            named.push_back(static_cast<int>(i));
    }
    return named;
}

std::vector<int> speaksFor(const Machine &machine, const Suspects &suspects, std::string_view id, std::string_view answer)
{
    if (const Step *step = stepNamed(machine, id))
        return shownByStep(suspects, *step, answer);
    const Library::Found found = machine.library->test(*machine.appliance, id);
    std::vector<int> spoken;
    if (found.test == nullptr)
        return spoken;
    const auto proves = found.test->proves.find(std::string(answer));
    if (proves == found.test->proves.end())
        return spoken;
    for (const std::string &mode : proves->second) {
        const bool whole = mode.find('.') != std::string::npos || machine.library->kind(mode) != nullptr;
        add(spoken, suspectsNamed(suspects, whole ? mode : found.component + "." + mode));
        if (!whole && found.kind != nullptr && found.kind->fails.size() <= 1)
            add(spoken, suspectsNamed(suspects, found.component));
    }
    return spoken;
}

std::optional<Answered> answeredOf(const Facts &facts, const Suspects &suspects, std::string_view id)
{
    const Machine &machine = facts.machine;
    std::optional<Answered> a;
    if (const Step *step = stepNamed(machine, id); step != nullptr && step->what != Step::What::Test)
        a = ofStep(machine, suspects, *step);
    else if (const Library::Found found = machine.library->test(*machine.appliance, id);
             found.test != nullptr && found.test->byEye())
        a = ofTest(machine, suspects, *found.test, std::string(id));
    if (a)
        if (const Looked *looked = lookedAt(facts, id))
            a->given = looked->answers;
    return a;
}

std::vector<Evidence> evidenceOf(const Facts &facts, const Suspects &suspects)
{
    std::vector<std::pair<int, Evidence>> timed;
    for (const Measured &measured : facts.measured) {
        const Library::Found found = facts.machine.library->test(*facts.machine.appliance, measured.test);
        if (found.test != nullptr && !measured.takes.empty())
            timed.emplace_back(measured.takes.front().event, placedOf(facts, measured, *found.test));
    }
    for (const Looked &looked : facts.looked)
        if (const auto a = answeredOf(facts, suspects, looked.id); a && !looked.events.empty())
            timed.emplace_back(looked.events.front(), *a);
    std::ranges::stable_sort(timed, {}, [](const auto &t) { return t.first; });
    std::vector<Evidence> evidence;
    for (auto &[event, entry] : timed)
        evidence.push_back(std::move(entry));
    return evidence;
}

} // namespace core
