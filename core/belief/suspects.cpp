#include "core/belief/suspects.h"

#include "core/belief/cells.h"
#include "core/belief/ladder.h"

#include <algorithm>

namespace core {
namespace {

std::string_view baseOf(std::string_view name) { return name.substr(0, name.find('.')); }

bool isListed(const Appliance &appliance, std::string_view component)
{
    const auto names = [component](const ConditionUse &c) { return baseOf(c.id) == component; };
    return appliance.component(component) != nullptr || std::ranges::any_of(appliance.conditions, names);
}

class Listing
{
public:
    explicit Listing(const Machine &machine) : m_machine(machine) {}

    // the suspects that a name of the content stands for, entered if they are on this machine
    std::vector<int> enter(const std::string &name)
    {
        const std::string component(baseOf(name)), mode = name.size() > component.size() ? name.substr(component.size() + 1) : "";
        const Kind *kind = kindOf(component);
        if (kind == nullptr)
            return {};
        std::vector<int> result;
        for (const FailureMode &m : kind->fails)
            if (mode.empty() || m.id == mode)
                result.push_back(enterMode(component, *kind, &m));
        if (kind->fails.empty() && mode.empty())
            result.push_back(enterMode(component, *kind, nullptr));
        return result;
    }

    // what a kind's file calls another: a component's id, or the kind of a component that has another id
    std::vector<int> enterByKind(const std::string &name)
    {
        std::vector<int> result = enter(name);
        const std::string kind(baseOf(name)), mode = name.substr(kind.size());
        for (const Component &c : m_machine.appliance->components)
            if (c.kind == kind && c.id != kind)
                for (const int s : enter(c.id + mode))
                    result.push_back(s);
        return result;
    }

    double shareOf(int s) const
    {
        const Suspect &suspect = m_result.list[static_cast<std::size_t>(s)];
        const FailureMode *mode = kindOf(suspect.component)->mode(suspect.mode);
        return mode == nullptr ? 1 : mode->share;
    }

    const Kind *kindOf(std::string_view component) const
    {
        const bool there = isListed(*m_machine.appliance, component) && isOn(m_machine, component);
        return there ? m_machine.library->kindOf(*m_machine.appliance, component) : nullptr;
    }

    void addWeight(int s, double weight) { m_result.list[static_cast<std::size_t>(s)].share += weight; }

    // `chance` falls on the suspects as their shares are
    void addLink(int suspect, const std::vector<int> &causes, double chance)
    {
        double sum = 0;
        for (const int c : causes)
            sum += shareOf(c);
        for (const int c : causes)
            if (m_result.list[static_cast<std::size_t>(c)].component != m_result.list[static_cast<std::size_t>(suspect)].component)
                m_result.links.push_back({suspect, c, sum > 0 ? chance * shareOf(c) / sum : chance / static_cast<double>(causes.size())});
    }

    Suspects &result() { return m_result; }

private:
    int enterMode(const std::string &component, const Kind &kind, const FailureMode *mode)
    {
        const bool oneWay = !kind.isPart && kind.fails.size() <= 1;
        const std::string id = oneWay || mode == nullptr || mode->id.empty() ? component : component + "." + mode->id;
        if (const int known = m_result.find(id); known >= 0)
            return known;
        Suspect suspect{id, component, mode == nullptr ? "" : mode->id, 0, {Cell{}}};
        if (mode != nullptr)
            suspect.cells = cellsOf(kind, *mode);
        if (component == kHarness && mode != nullptr && opens(*mode))
            suspect.cells = onEachWire(suspect.cells, wiresBehind(m_machine));
        m_result.list.push_back(std::move(suspect));
        return static_cast<int>(m_result.list.size()) - 1;
    }

    static bool opens(const FailureMode &mode)
    {
        return std::ranges::any_of(mode.paths, [](const auto &p) { return p.second.what != Shown::What::Value; });
    }

    const Machine &m_machine;
    Suspects m_result;
};

using Weights = std::vector<std::pair<std::string, double>>;

Weights weightsOf(const Machine &machine)
{
    if (machine.tree != nullptr)
        return machine.tree->weights;
    Weights all;
    for (const Component &c : machine.appliance->components)
        all.emplace_back(c.id, 1);
    return all;
}

void addWeights(Listing &listing, const Weights &weights)
{
    for (const auto &[name, weight] : weights) {
        std::vector<int> modes = listing.enter(name);
        if (name.find('.') == std::string::npos) // modes with a weight of their own have no part in their component's
            std::erase_if(modes, [&](int s) {
                const std::string &id = listing.result().list[static_cast<std::size_t>(s)].id;
                return id != name && std::ranges::any_of(weights, [&](const auto &w) { return w.first == id; });
            });
        double sum = 0;
        for (const int s : modes)
            sum += listing.shareOf(s);
        for (const int s : modes)
            listing.addWeight(s, sum > 0 ? weight * listing.shareOf(s) / sum : weight / static_cast<double>(modes.size()));
    }
    double total = 0;
    for (const Suspect &s : listing.result().list)
        total += s.share;
    for (Suspect &s : listing.result().list)
        s.share /= total > 0 ? total : 1;
}

// a protector opened: what may have opened it
void addLinks(Listing &listing)
{
    const std::size_t count = listing.result().list.size(); // causes entered here open nothing themselves
    for (std::size_t s = 0; s < count; ++s) {
        const Suspect suspect = listing.result().list[s];
        const Kind *kind = listing.kindOf(suspect.component);
        const FailureMode *mode = kind->mode(suspect.mode);
        const auto isOpen = [](const auto &p) { return p.second.what == Shown::What::Open; };
        if (mode == nullptr || std::ranges::none_of(mode->paths, isOpen))
            continue;
        for (const auto &[cause, chance] : kind->lookBehind)
            listing.addLink(static_cast<int>(s), listing.enterByKind(cause), chance);
    }
}

void keepATenth(std::vector<Link> &links) // of each protector alone
{
    for (Link &link : links) {
        double sum = 0;
        for (const Link &other : links)
            sum += other.suspect == link.suspect ? other.chance : 0;
        if (sum <= .9)
            continue;
        for (Link &other : links)
            if (other.suspect == link.suspect)
                other.chance *= .9 / sum;
    }
}

void addBesides(Listing &listing, const Machine &machine)
{
    for (const ConditionUse &use : machine.appliance->conditions) {
        const Kind *kind = machine.library->kindOf(*machine.appliance, use.id);
        if (kind == nullptr || kind->beside <= 0 || !isOn(machine, use.id))
            continue;
        for (const int s : listing.enter(use.id))
            listing.result().beside.push_back({s, kind->beside});
    }
}

} // namespace

int Suspects::find(std::string_view id) const
{
    const auto at = std::ranges::find(list, id, &Suspect::id);
    return at == list.end() ? -1 : static_cast<int>(at - list.begin());
}

std::vector<int> Suspects::named(std::string_view name) const
{
    std::vector<int> result;
    for (std::size_t s = 0; s < list.size(); ++s)
        if (list[s].id == name || list[s].component == name || list[s].component + "." + list[s].mode == name)
            result.push_back(static_cast<int>(s));
    return result;
}

Suspects suspectsOf(const Machine &machine)
{
    Listing listing(machine);
    addWeights(listing, weightsOf(machine));
    addLinks(listing);
    keepATenth(listing.result().links);
    addBesides(listing, machine);
    return std::move(listing.result());
}

} // namespace core
