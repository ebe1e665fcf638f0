#include "core/check/check.h"

#include <algorithm>

namespace core {
namespace {

struct Walk
{
    const Tree &tree;
    const Answers &answers;
    std::set<std::string> reached, onTheWay;
    std::set<std::pair<int, int>> told; // places already reported
    std::vector<Diagnostic> &found;

    void report(DiagnosticKind kind, const Place &place, std::string text, std::string hint)
    {
        if (told.insert({place.line, place.column}).second)
            found.push_back({kind, place, std::move(text), std::move(hint)});
    }

    void enter(const std::string &id, const Place &from)
    {
        const Step *step = tree.step(id);
        if (step == nullptr) {
            report(DiagnosticKind::DeadEnd, from, "this branch leads to no step",
                   "name a step, or end it with claim, fix, call or stop");
            return;
        }
        if (onTheWay.contains(id)) {
            report(DiagnosticKind::EndlessWalk, from, "this leads back to `" + id + "`, which lies on the way here",
                   "end the branch, or ask something new");
            return;
        }
        if (!holds(step->only, answers)) {
            onTheWay.insert(id);
            enter(step->otherwise, step->place);
            onTheWay.erase(id);
            return;
        }
        if (!reached.insert(id).second)
            return;
        onTheWay.insert(id);
        for (const auto &[answer, then] : step->then)
            if (then.what == Then::What::Go || then.what == Then::What::Found)
                enter(then.step, then.place);
        onTheWay.erase(id);
    }
};

} // namespace

std::vector<Diagnostic> checkSteps(const Library &library, const Tree &tree)
{
    std::vector<Diagnostic> found;
    const Appliance *appliance = library.appliance(tree.appliance);
    if (appliance == nullptr || tree.steps.empty())
        return found;
    std::set<std::string> reached;
    std::set<std::pair<int, int>> told;
    for (const Answers &answers : combinationsOf(*appliance)) {
        Walk walk{tree, answers, {}, {}, std::move(told), found};
        walk.enter(tree.steps.front().id, tree.steps.front().place);
        reached.merge(walk.reached);
        told = std::move(walk.told);
    }
    for (const Step &step : tree.steps)
        if (!reached.contains(step.id))
            found.push_back({DiagnosticKind::NeverReached, step.place, "no walk comes to the step `" + step.id + "`",
                             "let a branch lead to it, or take it out"});
    return found;
}

} // namespace core
