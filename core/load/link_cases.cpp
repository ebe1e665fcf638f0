#include "core/load/link.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

void checkNames(const WorkedCase &c, const Appliance &a, Linker &link)
{
    const auto want = [&](const std::string &name, const Node &at) {
        if (!suspectExists(name, a, link.around()))
            link.add(DiagnosticKind::UnknownSuspect, at, fmt::format("{} has no component or condition `{}`", a.id, name),
                     didYouMean(name, suspectNames(a, link.library())));
    };
    for (const std::string &name : c.truth)
        want(name, link.at({"cases", c.id, "truth", name}));
    for (const std::string &name : c.parts)
        want(name, link.at({"cases", c.id, "verdict", "parts", name}));
    for (const std::string &name : c.conditions)
        want(name, link.at({"cases", c.id, "verdict", "conditions", name}));
}

void checkAnswers(const WorkedCase &c, const Tree &tree, const Appliance &a, Linker &link)
{
    for (const auto &[name, answer] : c.answers) {
        if (tree.step(name) == nullptr && testOf(name, a, link.library()).test == nullptr && !mayBeBroken(name, a, link.around()))
            link.add(DiagnosticKind::UnknownTest, link.keyAt({"cases", c.id, "answers", name}),
                     fmt::format("`{}` is no step of {} and no test", name, tree.id),
                     didYouMean(name, testNames(a, link.library())));
    }
    for (const auto &[ask, answer] : c.asks)
        checkOnly({{ask, {answer}}}, a, link.at({"cases", c.id, "asks"}), link);
}

} // namespace

void linkCases(std::span<const WorkedCase> cases, Linker &link)
{
    std::vector<std::string> trees;
    for (const auto &[id, tree] : link.library().trees)
        trees.push_back(id);
    for (const WorkedCase &c : cases) {
        const Tree *tree = link.library().tree(c.tree);
        const Appliance *a = tree == nullptr ? nullptr : link.library().appliance(tree->appliance);
        if (tree == nullptr && !c.tree.empty() && !link.around().broken.contains(c.tree))
            link.add(DiagnosticKind::UnknownTree, link.at({"cases", c.id, "tree"}), fmt::format("no tree `{}`", c.tree),
                     didYouMean(c.tree, trees));
        if (a == nullptr)
            continue;
        checkNames(c, *a, link);
        checkAnswers(c, *tree, *a, link);
    }
}

} // namespace core
