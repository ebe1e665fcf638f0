#include "core/base/text.h"
#include "core/load/link.h"
#include "core/load/words.h"
#include "core/tree/reading_names.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

std::vector<std::string> idsOf(const auto &items)
{
    std::vector<std::string> ids;
    for (const auto &item : items)
        ids.push_back(item.id);
    return ids;
}

struct Case // one step of one tree, and what it is checked against
{
    const Tree &tree;
    const Step &step;
    const Appliance &appliance;
    Linker &link;

    const Node &at(std::string_view key) const { return link.at({"steps", step.id, key}); }
    const Node &at(std::string_view key, std::string_view name) const { return link.at({"steps", step.id, key, name}); }
    void wantSuspect(const std::string &name, const Node &node) const
    {
        if (!name.empty() && !suspectExists(name, appliance, link.around()))
            link.add(DiagnosticKind::UnknownSuspect, node,
                     fmt::format("{} has no component or condition `{}`", appliance.id, name),
                     didYouMean(name, suspectNames(appliance, link.library())));
    }
    void wantStep(const std::string &name, const Node &node) const
    {
        if (!name.empty() && tree.step(name) == nullptr)
            link.add(DiagnosticKind::UnknownStep, node, fmt::format("no step `{}`", name), didYouMean(name, idsOf(tree.steps)));
    }
};

// The cure of a suspect: "" if it is not known, or differs from mode to mode and none is named.
std::string cureOf(const std::string &suspect, const Appliance &a, const Library &library)
{
    const std::string base = suspect.substr(0, suspect.find('.'));
    const Kind *kind = library.kindOf(a, suspect);
    if (kind == nullptr)
        return {};
    return std::string(base == suspect ? kind->cure : kind->cureOf(suspect.substr(base.size() + 1)));
}

// Only what is replaced is bought; everything else is a fix or a call.
void checkCure(const Case &c, const Then &then, const Node &node)
{
    const Kind *kind = c.link.library().kindOf(c.appliance, then.suspect);
    const std::string cure = cureOf(then.suspect, c.appliance, c.link.library());
    if (cure.empty() || kind == nullptr)
        return;
    const bool whole = then.suspect.find('.') == std::string::npos;
    const auto bought = [&](const FailureMode &m) { return kind->cureOf(m.id) == "replace"; };
    const bool buys = whole ? std::ranges::any_of(kind->fails, bought) : cure == "replace";
    const bool fixes = whole ? !std::ranges::all_of(kind->fails, bought) : cure != "replace";
    if (then.what == Then::What::Claim && !buys)
        c.link.add(DiagnosticKind::WrongCure, node, fmt::format("`{}` is not bought: its cure is {}", then.suspect, cure),
                   "write `fix:` or `call:`");
    if (then.what == Then::What::Fix && !fixes)
        c.link.add(DiagnosticKind::WrongCure, node, fmt::format("`{}` cannot be mended: its cure is replace", then.suspect),
                   "write `claim:`");
}

void checkBranches(const Case &c)
{
    const Node &thens = c.at("then");
    for (const auto &[name, then] : c.step.then) {
        const Node *written = thens.value(name);
        const Node &node = written == nullptr ? thens : *written;
        const auto value = [&](std::string_view key) -> const Node & {
            return node.isMap() && node.value(key) != nullptr ? *node.value(key) : node;
        };
        c.wantStep(then.step, then.what == Then::What::Found ? value("go") : node);
        if (then.suspect.empty())
            continue;
        const std::string_view key = then.what == Then::What::Claim  ? "claim"
                                     : then.what == Then::What::Fix  ? "fix"
                                     : then.what == Then::What::Call ? "for"
                                                                     : "found";
        if (suspectExists(then.suspect, c.appliance, c.link.around()))
            checkCure(c, then, value(key));
        else
            c.wantSuspect(then.suspect, value(key));
    }
}

std::vector<const PathLimits *> limitsOf(const Library::Found &found)
{
    std::vector<const PathLimits *> limits;
    if (found.test->limits)
        return {&*found.test->limits};
    for (const Probes &probes : found.test->placements)
        if (const Path *path =
                found.kind == nullptr ? nullptr : found.kind->pathBetween(withoutWire(probes.red), withoutWire(probes.black)))
            limits.push_back(&path->limits);
    return limits.size() == found.test->placements.size() ? limits : std::vector<const PathLimits *>{};
}

// Every reading that can occur has its branch, and every branch is a reading.
void checkReadings(const Case &c, const Library::Found &found)
{
    const Test &test = *found.test;
    const auto names = readingNames(test.measure);
    std::vector<std::string> known(names.begin(), names.end());
    if (test.byEye())
        known = test.answers;
    for (const auto &[name, then] : c.step.then) {
        if (name == "else" || name == "not_done" || name.empty() || std::ranges::find(known, name) != known.end())
            continue;
        const Node &thens = c.at("then");
        std::string hint = didYouMean(name, known);
        c.link.add(DiagnosticKind::UnknownReading, keyOf(thens, name), fmt::format("`{}` reads no `{}`", c.step.test, name),
                   hint.empty() ? "one of " + joined(known, ", ") : hint);
    }
    std::vector<std::string> missing = possibleReadings(test, limitsOf(found));
    std::erase_if(missing, [&](const std::string &name) { return c.step.thenFor(name) != nullptr; });
    if (!missing.empty() && !c.step.then.empty())
        c.link.add(DiagnosticKind::ReadingWithoutBranch, c.link.keyAt({"steps", c.step.id, "then"}),
                   fmt::format("`{}` can read {}, and no branch says what then", c.step.test, joined(missing, ", ")),
                   "add a branch for each, or `else`");
}

void checkTest(const Case &c)
{
    const Library::Found found = testOf(c.step.test, c.appliance, c.link.library());
    if (found.test != nullptr)
        checkReadings(c, found);
    else if (!c.step.test.empty() && !mayBeBroken(c.step.test, c.appliance, c.link.around()))
        c.link.add(DiagnosticKind::UnknownTest, c.at("test"),
                   fmt::format("{} has no test or loop `{}`", c.appliance.id, c.step.test),
                   didYouMean(c.step.test, testNames(c.appliance, c.link.library())));
}

void checkPower(const Case &c)
{
    const Step &step = c.step;
    const ServicePlace *place = c.appliance.servicePlace(step.at);
    if (!step.at.empty() && place == nullptr)
        c.link.add(DiagnosticKind::UnknownPlace, c.at("at"), fmt::format("{} has no place `{}`", c.appliance.id, step.at),
                   didYouMean(step.at, idsOf(c.appliance.places)));
    if (place != nullptr && place->cover && step.appliance == ApplianceState::AsIs)
        c.link.add(DiagnosticKind::BehindCover, c.at("at"),
                   fmt::format("`{}` is behind a cover, and the step is `as_is`", step.at), "make it `appliance: no_power`");
    if (step.what == Step::What::Test)
        return;
    const std::string_view key = step.what == Step::What::Ask ? "ask" : step.what == Step::What::Look ? "look" : "do";
    const bool quiet = step.what != Step::What::Ask && step.appliance != ApplianceState::InUse;
    const bool closed = step.appliance == ApplianceState::AsIs || (step.appliance == ApplianceState::InUse && step.at.empty());
    const std::string power = quiet && step.touches.empty() ? wordsOfPower(step.text) : "";
    const std::string opening = closed ? wordsOfOpening(step.text) : "";
    if (!power.empty())
        c.link.add(DiagnosticKind::WordsAgainstPower, c.at(key), fmt::format("\"{}\" in a step without power", power),
                   "make it `appliance: in_use`, or say it without");
    if (!opening.empty())
        c.link.add(DiagnosticKind::WordsAgainstPower, c.at(key), fmt::format("\"{}\" in a step with the covers on", opening),
                   "make it `appliance: no_power` and say `at:`");
}

void checkStep(const Case &c)
{
    if (c.step.what == Step::What::Test)
        checkTest(c);
    checkPower(c);
    checkOnly(c.step.only, c.appliance, c.at("only"), c.link);
    c.wantStep(c.step.otherwise, c.at("otherwise"));
    for (const std::string &name : c.step.changes)
        c.wantSuspect(name, c.at("changes", name));
    for (const auto &[answer, suspects] : c.step.shows)
        for (const std::string &name : suspects)
            c.wantSuspect(name, c.link.at({"steps", c.step.id, "shows", answer, name}));
    checkBranches(c);
}

void checkSeen(const Tree &tree, const Appliance &a, Linker &link)
{
    if (!tree.during.empty() && std::ranges::none_of(a.closed, [&](const auto &p) { return p.first == tree.during; })) {
        std::vector<std::string> positions;
        for (const auto &[position, contacts] : a.closed)
            positions.push_back(position);
        link.add(DiagnosticKind::UnknownPosition, link.at({"seen", "during"}),
                 fmt::format("{} has no position `{}`", a.id, tree.during), didYouMean(tree.during, positions));
    }
    for (const auto &[rung, word] : tree.seen)
        if (std::ranges::none_of(a.rungs, [&id = rung](const Rung &r) { return r.id == id; }))
            link.add(DiagnosticKind::UnknownRung, link.keyAt({"seen", rung}), fmt::format("{} has no rung `{}`", a.id, rung),
                     didYouMean(rung, idsOf(a.rungs)));
}

} // namespace

void linkTree(Tree &tree, Linker &link)
{
    const Appliance *appliance = link.library().appliance(tree.appliance);
    if (appliance == nullptr) {
        std::vector<std::string> names;
        for (const auto &[id, a] : link.library().appliances)
            names.push_back(id);
        if (!tree.appliance.empty() && !link.around().broken.contains(tree.appliance))
            link.add(DiagnosticKind::UnknownAppliance, link.at({"tree"}), fmt::format("no appliance `{}`", tree.appliance),
                     didYouMean(tree.appliance, names));
        return;
    }
    checkSeen(tree, *appliance, link);
    for (const auto &[name, weight] : tree.weights) {
        if (!name.empty() && !suspectExists(name, *appliance, link.around()))
            link.add(DiagnosticKind::UnknownSuspect, link.keyAt({"weights", name}),
                     fmt::format("{} has no component or condition `{}`", appliance->id, name),
                     didYouMean(name, suspectNames(*appliance, link.library())));
    }
    for (Step &step : tree.steps) {
        checkStep({tree, step, *appliance, link});
        if (const Test *test = testOf(step.test, *appliance, link.library()).test;
            test != nullptr && step.what == Step::What::Test)
            step.minutes = test->minutes;
    }
}

} // namespace core
