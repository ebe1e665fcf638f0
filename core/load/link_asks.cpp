#include "core/load/link.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

bool names(const Only &only, const std::string &ask)
{
    return std::ranges::any_of(only, [&](const auto &rule) { return rule.first == ask; });
}

bool isUsedByTree(const Ask &ask, const Appliance &a, const Library &library)
{
    return std::ranges::any_of(library.trees, [&](const auto &entry) {
        const Tree &tree = entry.second;
        return tree.appliance == a.id && std::ranges::any_of(tree.steps, [&](const Step &s) { return names(s.only, ask.id); });
    });
}

bool isUsed(const Ask &ask, const Appliance &a, const Library &library)
{
    const auto refers = [&](const auto &thing) { return names(thing.only, ask.id); };
    const auto isAnswer = [&](const std::string &word) { return std::ranges::find(ask.answers, word) != ask.answers.end(); };
    const auto isRated = [&](const Component &c) {
        return std::ranges::any_of(c.ratings, [&](const auto &r) { return isAnswer(r.first); });
    };
    const bool railed = ask.id == "supply" && !a.rails.empty();
    return railed || std::ranges::any_of(a.asks, refers) || std::ranges::any_of(a.components, refers) ||
           std::ranges::any_of(a.components, isRated) || std::ranges::any_of(a.conditions, refers) ||
           std::ranges::any_of(a.rungs, refers) || std::ranges::any_of(a.loops, refers) || isUsedByTree(ask, a, library);
}

} // namespace

void linkAsks(const Appliance &a, Linker &link)
{
    std::vector<std::string> before;
    for (const Ask &ask : a.asks) {
        for (const auto &[other, answers] : ask.only)
            if (std::ranges::find(before, other) == before.end() && a.asked(other) != nullptr)
                link.add(DiagnosticKind::UnknownAnswer, link.at({"asks", ask.id, "only", other}),
                         fmt::format("`{}` goes by `{}`, which is put after it", ask.id, other), "put that question first");
        checkOnly(ask.only, a, link.at({"asks", ask.id, "only"}), link);
        before.push_back(ask.id);
    }
    for (const Ask &ask : a.asks)
        if (!ask.id.empty() && !isUsed(ask, a, link.library()))
            link.add(DiagnosticKind::NeverUsed, link.keyAt({"asks", ask.id}),
                     fmt::format("nothing goes by the answer to `{}`", ask.id),
                     "every question costs each caller time; take it out, or use it in an `only`");
}

} // namespace core
