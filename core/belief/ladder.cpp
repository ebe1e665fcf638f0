#include "core/belief/ladder.h"

#include <algorithm>

namespace core {
namespace {

struct Ends // of an item, in the direction of the rung
{
    std::string in, out;
};

Ends endsOf(const Machine &machine, const RungItem &item)
{
    if (item.what == RungItem::What::Rail)
        return {item.component, item.component};
    if (item.what == RungItem::What::Point)
        return {"(" + item.component + ")", "(" + item.component + ")"};
    const Kind *kind = machine.library->kindOf(*machine.appliance, item.component);
    if (kind == nullptr || kind->paths.empty())
        return {};
    const Path *path = item.path.empty() ? &kind->paths.front() : kind->path(item.path);
    if (path == nullptr)
        return {};
    const std::string from = item.component + "." + path->from, to = item.component + "." + path->to;
    return item.flipped ? Ends{to, from} : Ends{from, to};
}

bool isMissing(const Machine &machine, const RungItem &item)
{
    return item.what == RungItem::What::Part && !isOn(machine, item.component);
}

} // namespace

std::vector<Wire> wiresOf(const Machine &machine)
{
    std::vector<Wire> wires;
    int number = 0;
    for (const Rung &rung : machine.appliance->rungs) {
        if (!holds(rung.only, machine.answers))
            continue;
        std::string before;
        for (const RungItem &item : rung.items) {
            if (isMissing(machine, item))
                continue; // a part this machine does not have is a plain wire
            const Ends ends = endsOf(machine, item);
            if (!before.empty() && !ends.in.empty())
                wires.push_back({number++, before, ends.in, rung.id});
            before = ends.out;
        }
    }
    return wires;
}

std::vector<Wire> lugsOf(const Machine &machine)
{
    const std::string lug = "power_cord_terminal.lug.";
    const auto &all = machine.appliance->rails;
    const auto supply = machine.answers.find("supply");
    auto rails = supply == machine.answers.end() ? all.end() : all.find(supply->second);
    if (rails == all.end())
        rails = all.find("");
    if (rails == all.end() || machine.appliance->component("power_cord_terminal") == nullptr)
        return {};
    std::vector<Wire> wires;
    const auto neutral = rails->second.find("N");
    for (const auto &[rail, volts] : rails->second) {
        const bool isNeutral = neutral != rails->second.end() && volts == neutral->second;
        wires.push_back({-1, lug + (isNeutral ? "w" : rail == "L1" ? "x" : "y"), rail, "supply"});
    }
    return wires;
}

std::vector<int> wiresBehind(const Machine &machine)
{
    const auto shows = [&](const std::string &rung) {
        if (machine.tree == nullptr)
            return false;
        const auto at = machine.tree->seen.find(rung);
        return at != machine.tree->seen.end() && (at->second == "nothing" || at->second == "weak");
    };
    std::vector<int> all, behind;
    for (const Wire &wire : wiresOf(machine)) {
        all.push_back(wire.number);
        if (shows(wire.rung))
            behind.push_back(wire.number);
    }
    return behind.empty() ? all : behind;
}

} // namespace core
