#include "core/belief/loop_network.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace core {
namespace {

constexpr std::string_view kWireEnd = "wire(";

// .05 +- .03 of the wire and a tab joint of .02 +- .01 at each end; judgement
constexpr double kWireMu = .09, kWireSigma = .033;

bool lists(const std::vector<std::string> &names, const std::string &component, const std::string &path)
{
    return std::ranges::any_of(names, [&](const std::string &n) { return n == component || n == component + "." + path; });
}

const std::vector<std::string> *closedIn(const Appliance &appliance, const std::string &position)
{
    for (const auto &[id, contacts] : appliance.closed)
        if (position.empty() || id == position)
            return &contacts;
    return nullptr;
}

std::map<std::string, bool> contactsOf(const Excerpt &chosen, const Kind &kind, const std::string &component)
{
    std::map<std::string, bool> closed;
    const std::vector<std::string> *standing = closedIn(*chosen.machine->appliance, chosen.test->position);
    for (const Path &path : kind.paths) {
        if (path.normally == Path::Normally::Always)
            continue;
        if (chosen.ownKind) {
            closed[path.id] = !standsOpen(path, *chosen.test);
            continue;
        }
        const bool rests = path.normally == Path::Normally::Closed || (standing != nullptr && lists(*standing, component, path.id));
        closed[path.id] = lists(chosen.test->hold, component, path.id) != rests;
    }
    return closed;
}

const Faulty *faultIn(const std::vector<Faulty> &faults, std::string_view component)
{
    const auto at = std::ranges::find_if(faults, [component](const Faulty &f) { return f.component == component; });
    return at == faults.end() ? nullptr : &*at;
}

void addPart(std::vector<Branch> &network, const Excerpt &chosen, const std::string &component, const std::vector<Faulty> &faults)
{
    const Faulty *fault = faultIn(faults, component);
    if (const auto kept = chosen.healthy.find(component); fault == nullptr && kept != chosen.healthy.end()) {
        network.insert(network.end(), kept->second.begin(), kept->second.end());
        return;
    }
    PartState part;
    part.component = component;
    part.kind = chosen.machine->library->kindOf(*chosen.machine->appliance, component);
    if (part.kind == nullptr)
        return;
    part.facts = factsOf(*chosen.machine, component, chosen.with);
    part.closed = contactsOf(chosen, *part.kind, component);
    if (fault != nullptr) {
        part.mode = fault->mode;
        part.cell = fault->cell;
    }
    for (Branch &b : branchesOf(part))
        network.push_back(std::move(b));
}

// the component a node belongs to: "drive_motor_split.main.t1" -> "drive_motor_split"; a rail or wire point: itself
std::string_view ownerOf(std::string_view node) { return node.substr(0, node.find('.')); }

bool isPulled(const Excerpt &chosen, std::string_view node)
{
    return chosen.pulled && std::ranges::find(chosen.test->pull, node) != chosen.test->pull.end();
}

std::string endAt(const Excerpt &chosen, const std::string &node)
{
    return isPulled(chosen, node) ? std::string(kWireEnd) + node + ")" : node;
}

bool isInside(const Excerpt &chosen, const std::string &node)
{
    return node.find('.') == std::string::npos || chosen.components.contains(ownerOf(node));
}

void addWire(std::vector<Branch> &network, const Excerpt &chosen, const Wire &wire, const Faulty *harness)
{
    if (!isInside(chosen, wire.from) || !isInside(chosen, wire.to))
        return;
    Branch b{endAt(chosen, wire.from), endAt(chosen, wire.to), "wire" + std::to_string(wire.number), kWireMu, kWireSigma, 0, false, false};
    if (harness != nullptr && harness->cell.wire == wire.number && wire.number >= 0) {
        const bool isOpen = std::ranges::any_of(harness->mode->paths, [](const auto &p) { return p.second.what == Shown::What::Open; });
        if (isOpen || harness->cell.state == Cell::State::Open)
            return;
        b.jumps = harness->cell.state == Cell::State::Jumps;
    }
    network.push_back(std::move(b));
}

} // namespace

std::set<std::string, std::less<>> componentsOnLadder(const Machine &machine, const std::vector<Wire> &wires)
{
    std::set<std::string, std::less<>> result;
    for (const Wire &wire : wires)
        for (const std::string &node : {wire.from, wire.to})
            if (node.find('.') != std::string::npos && machine.appliance->component(ownerOf(node)) != nullptr)
                result.emplace(ownerOf(node));
    return result;
}

void keepHealthy(Excerpt &excerpt)
{
    for (const std::string &component : excerpt.components) {
        std::vector<Branch> branches;
        addPart(branches, excerpt, component, {});
        excerpt.healthy[component] = std::move(branches);
    }
}

std::vector<Branch> networkOf(const Excerpt &chosen, const std::vector<Faulty> &faults)
{
    std::vector<Branch> network;
    for (const std::string &component : chosen.components)
        addPart(network, chosen, component, faults);
    const Faulty *harness = faultIn(faults, kHarness);
    for (const Wire &wire : chosen.wires)
        addWire(network, chosen, wire, harness);
    return network;
}

std::string nodeOf(std::string_view probe, std::string_view component, const Excerpt &chosen)
{
    const bool end = probe.starts_with(kWireEnd) && probe.ends_with(')');
    std::string_view inner = end ? probe.substr(kWireEnd.size(), probe.size() - kWireEnd.size() - 1) : probe;
    const std::string node = component.empty() ? std::string(inner) : std::string(component) + "." + std::string(inner);
    return end && isPulled(chosen, node) ? std::string(kWireEnd) + node + ")" : node;
}

} // namespace core
