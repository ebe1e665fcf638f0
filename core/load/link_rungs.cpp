#include "core/base/text.h"
#include "core/load/link.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

struct Spot // an item of a rung, with the node it stands in
{
    RungItem &item;
    const Node &node;
};

bool isRail(const Appliance &a, std::string_view name)
{
    return name == "G" || std::ranges::any_of(a.rails, [&](const auto &set) { return set.second.contains(std::string(name)); });
}

// The path meant by what stands behind the point: a path's name, or the terminal at which it is entered.
const Path *pathMeant(const Kind &kind, std::string_view name, bool &flipped)
{
    if (name.empty())
        return kind.paths.empty() ? nullptr : &kind.paths.front();
    if (const Path *path = kind.path(name))
        return path;
    for (const Path &path : kind.paths)
        if (path.from == name || path.to == name) {
            flipped = path.to == name;
            return &path;
        }
    return nullptr;
}

void spellItem(Spot spot, const Appliance &a, Linker &link)
{
    RungItem &item = spot.item;
    if (item.what == RungItem::What::Point || item.component.empty())
        return;
    if (isRail(a, item.component)) {
        item.what = RungItem::What::Rail;
        return;
    }
    const std::string written = item.component;
    const std::size_t dot = written.find('.');
    item.component = written.substr(0, dot);
    item.path = dot == std::string::npos ? "" : written.substr(dot + 1);
    const Component *c = a.component(item.component);
    if (c == nullptr) {
        std::vector<std::string> names;
        for (const Component &other : a.components)
            names.push_back(other.id);
        link.add(DiagnosticKind::UnknownComponent, spot.node,
                 fmt::format("`{}` is no rail and no component of {}", item.component, a.id), didYouMean(item.component, names));
        return;
    }
    const Kind *kind = link.library().kind(c->kind);
    if (kind == nullptr)
        return;
    if (const Path *path = pathMeant(*kind, item.path, item.flipped))
        item.path = path->id;
    else
        link.add(DiagnosticKind::UnknownPath, spot.node, fmt::format("{} has no path `{}`", kind->id, item.path),
                 "name a path of the kind, or the terminal where it is entered");
}

std::size_t usesOf(const Appliance &a, const std::string &point)
{
    std::size_t uses = 0;
    for (const Rung &rung : a.rungs)
        for (const RungItem &item : rung.items)
            uses += item.what == RungItem::What::Point && item.component == point ? 1U : 0U;
    return uses;
}

void checkShape(const Rung &rung, const Node &path, const Appliance &a, Linker &link)
{
    const auto complain = [&](std::size_t at) {
        link.add(DiagnosticKind::LooseEnd, path.items[at],
                 fmt::format("the rung `{}` ends in `{}`", rung.id, path.items[at].text),
                 "a rung runs from a rail or point to a rail or point");
    };
    if (rung.items.front().what == RungItem::What::Part)
        complain(0);
    if (rung.items.back().what == RungItem::What::Part)
        complain(rung.items.size() - 1);
    for (std::size_t i = 0; i < rung.items.size(); ++i) {
        const RungItem &item = rung.items[i];
        if (item.what == RungItem::What::Point && usesOf(a, item.component) < 2)
            link.add(DiagnosticKind::LoosePoint, path.items[i], fmt::format("the point `{}` is named only once", item.component),
                     "a point joins two rungs; take it out, or name it in the other one");
        if (item.what == RungItem::What::Rail && i != 0 && i + 1 != rung.items.size())
            link.add(DiagnosticKind::LooseEnd, path.items[i],
                     fmt::format("the rail `{}` in the middle of a rung", item.component),
                     "end the rung there and begin another");
    }
}

} // namespace

void linkRungs(Appliance &a, Linker &link)
{
    const Node &rungs = link.at({"rungs"});
    for (std::size_t r = 0; r < a.rungs.size() && rungs.isList(); ++r) {
        Rung &rung = a.rungs[r];
        const Node *path = rungs.items[r].value("path");
        if (path == nullptr || !path->isList() || path->items.size() != rung.items.size() || rung.items.empty())
            continue;
        for (std::size_t i = 0; i < rung.items.size(); ++i)
            spellItem({rung.items[i], path->items[i]}, a, link);
        if (const Node *only = rungs.items[r].value("only"))
            checkOnly(rung.only, a, *only, link);
    }
    for (std::size_t r = 0; r < a.rungs.size() && rungs.isList(); ++r) {
        const Node *path = rungs.items[r].value("path");
        if (path != nullptr && path->isList() && path->items.size() == a.rungs[r].items.size() && !a.rungs[r].items.empty())
            checkShape(a.rungs[r], *path, a, link);
    }
}

} // namespace core
