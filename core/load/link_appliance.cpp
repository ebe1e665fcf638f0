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

void wantPlace(const std::string &place, const Appliance &a, const Node &at, Linker &link)
{
    if (!place.empty() && a.servicePlace(place) == nullptr)
        link.add(DiagnosticKind::UnknownPlace, at, fmt::format("{} has no place `{}`", a.id, place),
                 didYouMean(place, idsOf(a.places)));
}

void checkPlaces(const Appliance &a, Linker &link)
{
    for (const ServicePlace &place : a.places) {
        wantPlace(place.after, a, link.at({"places", place.id, "after"}), link);
        const ServicePlace *before = a.servicePlace(place.after);
        for (std::size_t steps = 0; before != nullptr; before = a.servicePlace(before->after))
            if (before->id == place.id || ++steps > a.places.size()) {
                link.add(DiagnosticKind::CircularPlace, link.at({"places", place.id, "after"}),
                         fmt::format("`{}` comes after itself", place.id),
                         "say what is opened first, and leave `after` out there");
                break;
            }
    }
}

bool goesByRating(const Kind &kind)
{
    const auto rated = [](const auto &entry) {
        return entry.second.what == Shown::What::Value && entry.second.span.of == Span::Of::Rating;
    };
    return std::ranges::any_of(kind.paths, [&](const Path &p) { return std::ranges::any_of(p.limits.good, rated); });
}

void checkRatings(const Component &c, const Kind *kind, const Appliance &a, Linker &link)
{
    if (kind != nullptr && c.ratings.empty() && goesByRating(*kind))
        link.add(DiagnosticKind::NoRating, link.keyAt({"components", c.id}),
                 fmt::format("`{}` is judged by its rating and has none", c.id),
                 "add `rating: 240 V 5400 W`, or one for each answer of a question");
    if (c.ratings.empty() || c.ratings.contains(""))
        return;
    const auto answers = [&](const Ask &ask) {
        return std::ranges::all_of(c.ratings,
                                   [&](const auto &r) { return std::ranges::find(ask.answers, r.first) != ask.answers.end(); });
    };
    if (std::ranges::none_of(a.asks, answers))
        link.add(DiagnosticKind::UnknownAnswer, link.at({"components", c.id, "rating"}),
                 fmt::format("the ratings of `{}` do not go by the answers of one question", c.id),
                 "their keys are answers of one of `asks`");
}

void checkSkips(const Component &c, const Kind *kind, const Appliance &a, Linker &link)
{
    for (const auto &[test, machines] : c.skips) {
        if (kind != nullptr && kind->test(test) == nullptr)
            link.add(DiagnosticKind::UnknownTest, link.keyAt({"components", c.id, "skips", test}),
                     fmt::format("{} has no test `{}`", kind->id, test), didYouMean(test, idsOf(kind->tests)));
        checkOnly(machines, a, link.at({"components", c.id, "skips", test}), link);
    }
}

void checkReach(const Component &c, const Kind *kind, const Appliance &a, Linker &link)
{
    for (const auto &[test, place] : c.reach) {
        if (kind != nullptr && kind->test(test) == nullptr)
            link.add(DiagnosticKind::UnknownTest, link.keyAt({"components", c.id, "reach", test}),
                     fmt::format("{} has no test `{}`", kind->id, test), didYouMean(test, idsOf(kind->tests)));
        wantPlace(place, a, link.at({"components", c.id, "reach", test}), link);
    }
}

void checkComponent(const Component &c, const Appliance &a, Linker &link)
{
    const Kind *kind = link.library().kind(c.kind);
    if (!link.around().known(c.kind)) {
        std::vector<std::string> kinds;
        for (const auto &[id, k] : link.library().kinds)
            kinds.push_back(id);
        link.add(DiagnosticKind::UnknownKind,
                 c.kind == c.id ? link.keyAt({"components", c.id}) : link.at({"components", c.id, "kind"}),
                 fmt::format("no kind or condition `{}`", c.kind), didYouMean(c.kind, kinds));
    }
    wantPlace(c.at, a, link.at({"components", c.id, "at"}), link);
    checkReach(c, kind, a, link);
    checkSkips(c, kind, a, link);
    checkOnly(c.only, a, link.at({"components", c.id, "only"}), link);
    checkRatings(c, kind, a, link);
    if (!c.workedBy.empty() && (c.workedBy == c.id || a.component(c.workedBy) == nullptr))
        link.add(DiagnosticKind::UnknownComponent, link.at({"components", c.id, "worked_by"}),
                 fmt::format("no other component `{}`", c.workedBy), didYouMean(c.workedBy, idsOf(a.components)));
    if (kind == nullptr)
        return;
    for (const Test &test : kind->tests)
        if (!test.position.empty() && std::ranges::none_of(a.closed, [&](const auto &p) { return p.first == test.position; }))
            link.add(DiagnosticKind::UnknownPosition, link.keyAt({"components", c.id}),
                     fmt::format("the test {}.{} wants the position `{}`", c.id, test.id, test.position), "add it to `closed`");
}

// "component.terminal" or "component.path"; the part before the first point is looked up here.
const Kind *kindBefore(std::string_view name, const Appliance &a, const Node &at, Linker &link, bool &known)
{
    const std::string_view base = name.substr(0, name.find('.'));
    const Component *c = a.component(base);
    known = c != nullptr;
    if (c == nullptr)
        link.add(DiagnosticKind::UnknownComponent, at, fmt::format("{} has no component `{}`", a.id, base),
                 didYouMean(base, idsOf(a.components)));
    return c == nullptr ? nullptr : link.library().kind(c->kind);
}

std::string_view behindPoint(std::string_view name)
{
    const std::size_t dot = name.find('.');
    return dot == std::string_view::npos ? std::string_view{} : name.substr(dot + 1);
}

void wantTerminal(std::string_view written, const Appliance &a, bool orConnector, const Node &at, Linker &link)
{
    const std::string_view name = withoutWire(written);
    if (name.empty())
        return;
    bool known = false;
    const Kind *kind = kindBefore(name, a, at, link, known);
    const std::string_view terminal = behindPoint(name);
    if (known && kind != nullptr && !isTerminal(*kind, terminal, orConnector))
        link.add(DiagnosticKind::UnknownTerminal, at, fmt::format("{} has no terminal `{}`", kind->id, terminal),
                 didYouMean(terminal, kind->terminals));
}

auto contactsOf(const Kind &kind)
{
    return std::ranges::count_if(kind.paths, [](const Path &p) { return p.normally != Path::Normally::Always; });
}

// Checks a contact and spells it out: "door_switch" becomes "door_switch.contact".
void spellContact(std::string &name, const Appliance &a, const Node &at, Linker &link)
{
    bool known = false;
    const Kind *kind = kindBefore(name, a, at, link, known);
    if (kind == nullptr)
        return;
    const std::string_view path = behindPoint(name);
    if (path.empty() && contactsOf(*kind) > 1)
        link.add(DiagnosticKind::NotAContact, at, fmt::format("`{}` has several contacts", name),
                 "say which, as `component.path`");
    else if (const Path *contact = contactOf(*kind, path))
        name = name.substr(0, name.find('.')) + "." + contact->id;
    else if (!path.empty() && kind->path(path) == nullptr)
        link.add(DiagnosticKind::UnknownPath, at, fmt::format("{} has no path `{}`", kind->id, path),
                 didYouMean(path, idsOf(kind->paths)));
    else
        link.add(DiagnosticKind::NotAContact, at, fmt::format("`{}` is no contact", name),
                 "its path needs `normally: closed` or `open`");
}

bool isRail(const Appliance &a, std::string_view name)
{
    return name == "G" || std::ranges::any_of(a.rails, [&](const auto &set) { return set.second.contains(std::string(name)); });
}

void checkConditions(Appliance &a, Linker &link)
{
    for (ConditionUse &use : a.conditions) {
        const std::string base = use.id.substr(0, use.id.find('.'));
        const Component *c = a.component(base);
        const std::string kindId = c == nullptr ? base : c->kind;
        const Kind *kind = link.library().kind(kindId);
        const Node &at = link.keyAt({"conditions", use.id});
        if (!link.around().known(kindId))
            link.add(DiagnosticKind::UnknownKind, at, fmt::format("no kind or condition `{}`", base), "");
        else if (kind != nullptr && base != use.id && kind->mode(behindPoint(use.id)) == nullptr)
            link.add(DiagnosticKind::UnknownMode, at, fmt::format("no `{}`", use.id),
                     didYouMean(behindPoint(use.id), idsOf(kind->fails)));
        wantPlace(use.at, a, link.at({"conditions", use.id, "at"}), link);
        if (!use.loses.empty() && !isRail(a, use.loses))
            link.add(DiagnosticKind::UnknownRail, link.at({"conditions", use.id, "loses"}),
                     fmt::format("no rail `{}`", use.loses), "rails are named under `rails`");
        for (std::string &contact : use.opens)
            spellContact(contact, a, link.at({"conditions", use.id, "opens", contact}), link);
        for (const std::string &part : use.overheats)
            if (a.component(part) == nullptr)
                link.add(DiagnosticKind::UnknownComponent, link.at({"conditions", use.id, "overheats", part}),
                         fmt::format("{} has no component `{}`", a.id, part), didYouMean(part, idsOf(a.components)));
        checkOnly(use.only, a, link.at({"conditions", use.id, "only"}), link);
    }
}

void checkRails(const Appliance &a, Linker &link)
{
    if (a.rails.empty() || a.rails.contains(""))
        return;
    const Ask *supply = a.asked("supply");
    if (supply == nullptr)
        link.add(DiagnosticKind::UnknownAsk, link.keyAt({"rails"}), "rails for several supplies, and no question `supply`",
                 "add it to `asks`");
    for (const auto &[answer, rails] : a.rails)
        if (supply != nullptr && std::ranges::find(supply->answers, answer) == supply->answers.end())
            link.add(DiagnosticKind::UnknownAnswer, link.keyAt({"rails", answer}),
                     fmt::format("`{}` is no answer to `supply`", answer), didYouMean(answer, supply->answers));
    for (const std::string &answer : supply == nullptr ? std::vector<std::string>{} : supply->answers)
        if (!a.rails.contains(answer))
            link.add(DiagnosticKind::MissingKey, link.keyAt({"rails"}), fmt::format("no rails for `{}`", answer),
                     "every supply has its own");
}

void checkLoop(Test &loop, const Appliance &a, Linker &link)
{
    const auto where = [&](std::string_view key, std::string_view name) -> const Node & {
        return link.at({"loops", loop.id, key, name});
    };
    for (const Probes &probes : loop.placements)
        for (const std::string &probe : {probes.red, probes.black})
            wantTerminal(probe, a, false, link.at({"loops", loop.id, probe}), link);
    wantTerminal(loop.jaw, a, true, where("jaw", loop.jaw), link);
    for (const std::string &wire : loop.pull)
        wantTerminal(wire, a, true, where("pull", wire), link);
    for (std::string &contact : loop.hold)
        spellContact(contact, a, where("hold", contact), link);
    for (const std::string &place : loop.at)
        wantPlace(place, a, where("at", place), link);
    for (const std::string &part : loop.covers)
        if (!suspectExists(part, a, link.around()))
            link.add(DiagnosticKind::UnknownComponent, where("covers", part), fmt::format("{} has no component `{}`", a.id, part),
                     didYouMean(part, idsOf(a.components)));
    if (!loop.position.empty() && std::ranges::none_of(a.closed, [&](const auto &p) { return p.first == loop.position; }))
        link.add(DiagnosticKind::UnknownPosition, link.at({"loops", loop.id, "position"}),
                 fmt::format("no position `{}`", loop.position), "positions are the keys of `closed`");
    const auto wantTest = [&](const std::string &name, const Node &at) {
        if (!name.empty() && testOf(name, a, link.library()).test == nullptr && !mayBeBroken(name, a, link.around()))
            link.add(DiagnosticKind::UnknownTest, at, fmt::format("{} has no test `{}`", a.id, name),
                     didYouMean(name, testNames(a, link.library())));
    };
    wantTest(loop.standsFor, link.at({"loops", loop.id, "stands_for"}));
    for (const std::string &name : loop.onceGood)
        wantTest(name, where("once_good", name));
    checkOnly(loop.only, a, link.at({"loops", loop.id, "only"}), link);
    checkWords(loop, "loops", link);
}

} // namespace

void linkAppliance(Appliance &a, Linker &link)
{
    checkPlaces(a, link);
    for (const Component &c : a.components)
        checkComponent(c, a, link);
    checkRails(a, link);
    for (const std::string &terminal : a.frame)
        wantTerminal(terminal, a, false, link.at({"frame", terminal}), link);
    checkConditions(a, link);
    for (auto &[position, contacts] : a.closed)
        for (std::string &contact : contacts)
            spellContact(contact, a, link.at({"closed", position, contact}), link);
    linkRungs(a, link);
    for (Test &loop : a.loops)
        checkLoop(loop, a, link);
}

} // namespace core
