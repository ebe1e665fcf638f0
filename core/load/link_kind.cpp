#include "core/base/text.h"
#include "core/load/link.h"

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

void wantTerminal(const Kind &kind, std::string_view name, bool orConnector, const Node &at, Linker &link)
{
    const std::string_view terminal = withoutWire(name);
    if (!terminal.empty() && !isTerminal(kind, terminal, orConnector))
        link.add(DiagnosticKind::UnknownTerminal, at, fmt::format("{} has no terminal `{}`", kind.id, terminal),
                 didYouMean(terminal, kind.terminals));
}

void checkPaths(const Kind &kind, Linker &link)
{
    for (const Path &path : kind.paths) {
        wantTerminal(kind, path.from, false, link.at({"paths", path.id, "between", path.from}), link);
        wantTerminal(kind, path.to, false, link.at({"paths", path.id, "between", path.to}), link);
        if (!path.along.empty() && (path.along == path.id || kind.path(path.along) == nullptr))
            link.add(DiagnosticKind::UnknownPath, link.at({"paths", path.id, "along"}),
                     fmt::format("{} has no other path `{}`", kind.id, path.along), didYouMean(path.along, idsOf(kind.paths)));
    }
}

void wantMode(const Kind &kind, const std::string &mode, const Node &at, Linker &link)
{
    if (kind.mode(mode) == nullptr)
        link.add(DiagnosticKind::UnknownMode, at, fmt::format("{} does not fail as `{}`", kind.id, mode),
                 didYouMean(mode, idsOf(kind.fails)));
}

bool isLoop(const std::string &name, const Library &library)
{
    return std::ranges::any_of(library.appliances, [&](const auto &entry) { return entry.second.loop(name) != nullptr; });
}

// A loop of an appliance that uses the kind, or "component.test": nearly all components are called like their kind.
void wantOther(const std::string &name, const Node &at, Linker &link)
{
    const std::size_t dot = name.find('.');
    const std::string base = name.substr(0, dot);
    const Kind *other = link.library().kind(base);
    if (link.around().broken.contains(base) || (dot == std::string::npos && isLoop(name, link.library())))
        return;
    if (dot == std::string::npos)
        link.add(DiagnosticKind::UnknownTest, at, fmt::format("no loop `{}`", name), "write `component.test`");
    else if (other == nullptr)
        link.add(DiagnosticKind::UnknownKind, at, fmt::format("no kind or condition `{}`", base), "");
    else if (other->test(name.substr(dot + 1)) == nullptr)
        link.add(DiagnosticKind::UnknownTest, at, fmt::format("no test `{}`", name),
                 didYouMean(name.substr(dot + 1), idsOf(other->tests)));
}

// Something must say what a good one reads: the test, or the path between its probes.
void checkLimits(const Kind &kind, const Test &test, Linker &link)
{
    const bool unread = std::ranges::any_of(kind.paths, [](const Path &p) { return p.from.empty() || p.to.empty(); });
    if (test.byEye() || test.limits || unread || !link.at({"tests", test.id}).isMap())
        return;
    if (test.measure == Measure::OpensAt) {
        if (std::ranges::none_of(kind.paths, [](const Path &p) { return p.opensAbove || p.closesBelow; }))
            link.add(DiagnosticKind::NothingToCompare, link.keyAt({"tests", test.id}),
                     fmt::format("nothing says where a good {} opens", kind.id),
                     "add `good:` here or `opens_above:` to its path");
        return;
    }
    for (const Probes &probes : test.placements) {
        const Path *path = kind.pathBetween(withoutWire(probes.red), withoutWire(probes.black));
        const bool fits =
            path != nullptr && (path->limits.good.empty() || path->limits.good.begin()->second.what == Shown::What::Open ||
                                path->limits.good.begin()->second.span.of != Span::Of::Itself ||
                                path->limits.good.begin()->second.span.unit == unitOf(test.measure));
        if (!fits && isTerminal(kind, withoutWire(probes.red), false) && isTerminal(kind, withoutWire(probes.black), false)) {
            link.add(DiagnosticKind::NothingToCompare, link.keyAt({"tests", test.id}),
                     fmt::format("nothing says what {} to {} reads when it is good", probes.red, probes.black),
                     "add `good:` here, or a path between them");
            return;
        }
        if (test.placements.size() == 1 && probes.red.empty())
            link.add(DiagnosticKind::NothingToCompare, link.keyAt({"tests", test.id}), "nothing says what is good",
                     "add `good:`");
    }
}

void checkTest(const Kind &kind, const Test &test, Linker &link)
{
    for (const Probes &probes : test.placements)
        for (const std::string &probe : {probes.red, probes.black})
            wantTerminal(kind, probe, false, link.at({"tests", test.id, probe}), link);
    wantTerminal(kind, test.jaw, true, link.at({"tests", test.id, "jaw"}), link);
    for (const std::string &terminal : test.pull)
        wantTerminal(kind, terminal, true, link.at({"tests", test.id, "pull", terminal}), link);
    for (const std::string &contact : test.hold)
        if (contactOf(kind, contact) == nullptr)
            link.add(DiagnosticKind::NotAContact, link.at({"tests", test.id, "hold", contact}),
                     fmt::format("`{}` is no contact of {}", contact, kind.id),
                     "a path with `normally: closed` or `open` is one");
    for (const std::string &mode : test.convicts)
        wantMode(kind, mode, link.at({"tests", test.id, "convicts", mode}), link);
    for (const auto &[answer, modes] : test.proves)
        for (const std::string &mode : modes)
            wantMode(kind, mode, link.at({"tests", test.id, "proves", answer, mode}), link);
    for (const std::string &name : test.onceGood)
        wantOther(name, link.at({"tests", test.id, "once_good", name}), link);
    checkLimits(kind, test, link);
    checkWords(test, "tests", link);
}

void checkNeeds(const Kind &kind, Linker &link)
{
    for (const auto &[mode, tests] : kind.buyNeeds) {
        if (mode != "else")
            wantMode(kind, mode, link.keyAt({"buy_needs", mode}), link);
        for (const std::string &test : tests)
            if (test.find('.') != std::string::npos)
                wantOther(test, link.at({"buy_needs", test}), link);
            else if (kind.test(test) == nullptr)
                link.add(DiagnosticKind::UnknownTest, link.at({"buy_needs", test}),
                         fmt::format("{} has no test `{}`", kind.id, test), didYouMean(test, idsOf(kind.tests)));
    }
}

void checkLookBehind(const Kind &kind, Linker &link)
{
    for (const auto &[name, chance] : kind.lookBehind) {
        const std::string base = name.substr(0, name.find('.'));
        const Kind *other = link.library().kind(base);
        const bool modeKnown = other == nullptr || base == name || other->mode(name.substr(base.size() + 1)) != nullptr;
        if (!link.around().known(base))
            link.add(DiagnosticKind::UnknownKind, link.keyAt({"look_behind", name}),
                     fmt::format("no kind or condition `{}`", base), "");
        else if (!modeKnown)
            link.add(DiagnosticKind::UnknownMode, link.keyAt({"look_behind", name}), fmt::format("no `{}`", name),
                     didYouMean(name.substr(base.size() + 1), idsOf(other->fails)));
    }
}

} // namespace

void linkKind(const Kind &kind, Linker &link)
{
    checkPaths(kind, link);
    for (const Test &test : kind.tests)
        checkTest(kind, test, link);
    checkNeeds(kind, link);
    checkLookBehind(kind, link);
}

} // namespace core
