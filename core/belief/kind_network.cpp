#include "core/belief/kind_network.h"

#include "core/belief/bands.h"
#include "core/belief/loop_network.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

bool isOhms(Measure m) { return m == Measure::Resistance || m == Measure::Continuity; }

bool convictsNobody(const Test &test) { return std::ranges::find(test.convicts, "none") != test.convicts.end(); }

// a dead reading of which nothing can be said
Prediction anyOhms() { return mixed(.3, openPrediction(), vaguePrediction(.05, 40e3)); }

std::string_view componentIn(std::string_view probe)
{
    if (probe.starts_with("wire("))
        probe.remove_prefix(5);
    return probe.substr(0, probe.find('.'));
}

struct Prepared // of one placement
{
    Library::Found found;
    Probes probes;
    Excerpt pulled, wired;
    std::string red, black;
    bool resolves = true; // a loop: its probes are joined through the network while all is well, or are meant to be open
};

class KindNetwork
{
public:
    KindNetwork(const Machine &machine, const Suspects &suspects) : m_machine(machine), m_suspects(suspects.list), m_wires(wiresOf(machine))
    {
        for (const Wire &lug : lugsOf(machine))
            m_wires.push_back(lug);
        m_onLadder = componentsOnLadder(m_machine, m_wires);
    }

    bool matters(const Placement &placement, int suspect)
    {
        const Prepared &at = prepared(placement);
        const Suspect &s = m_suspects[static_cast<std::size_t>(suspect)];
        if (at.found.test == nullptr || convictsNobody(*at.found.test) || modeOf(s) == nullptr)
            return false;
        if (at.found.kind != nullptr)
            return s.component == at.found.component;
        const auto &covers = at.found.test->covers;
        return s.component == kHarness || at.pulled.components.contains(s.component)
            || std::ranges::find(covers, s.component) != covers.end();
    }

    Predicted predict(const Placement &placement, std::span<const Fault> faults)
    {
        const Prepared &at = prepared(placement);
        if (at.found.test == nullptr || (isOhms(at.found.test->measure) && convictsNobody(*at.found.test)))
            return {anyOhms(), anyOhms()};
        std::vector<Faulty> faulty;
        for (const Fault &f : faults) {
            const Suspect &s = m_suspects[static_cast<std::size_t>(f.suspect)];
            faulty.push_back({s.component, modeOf(s), s.cells[static_cast<std::size_t>(f.cell)]});
        }
        if (!isOhms(at.found.test->measure)) {
            const Prediction shows = band(placement, at, faulty);
            return {shows, shows};
        }
        const Prediction shows = at.resolves ? series(at, faulty) : covered(placement, at, faulty);
        if (at.found.test->pull.empty())
            return {shows, shows};
        const Prediction along = seriesBetween(networkOf(at.wired, faulty), nodeOf(at.probes.red, at.found.component, at.wired),
                                               nodeOf(at.probes.black, at.found.component, at.wired));
        return {shows, mixed(.5, along, anyOhms())};
    }

private:
    const FailureMode *modeOf(const Suspect &s) const
    {
        const Kind *kind = m_machine.library->kindOf(*m_machine.appliance, s.component);
        return kind == nullptr ? nullptr : kind->mode(s.mode);
    }

    const Prepared &prepared(const Placement &placement)
    {
        const auto known = m_prepared.find(placement);
        return known != m_prepared.end() ? known->second : m_prepared.emplace(placement, prepare(placement)).first->second;
    }

    Prepared prepare(const Placement &placement) const
    {
        Prepared at;
        at.found = m_machine.library->test(*m_machine.appliance, placement.test);
        if (at.found.test == nullptr || !isOhms(at.found.test->measure))
            return at;
        const Test &test = *at.found.test;
        if (placement.index < test.placements.size())
            at.probes = test.placements[placement.index];
        Excerpt all{&m_machine, m_onLadder, &test, at.found.kind != nullptr, false, placement.with, m_wires, {}};
        at.wired = all;
        at.pulled = std::move(all);
        at.pulled.pulled = true;
        if (at.found.kind != nullptr) {
            at.pulled.components = {at.found.component};
            at.pulled.wires.clear();
            at.wired.components.insert(at.found.component);
        } else if (!test.pull.empty()) {
            at.pulled.components.clear();
            for (const std::string &c : test.covers)
                at.pulled.components.insert(c);
            for (const std::string_view probe : {std::string_view(at.probes.red), std::string_view(at.probes.black)})
                at.pulled.components.emplace(componentIn(probe));
        }
        keepHealthy(at.pulled);
        keepHealthy(at.wired);
        at.red = nodeOf(at.probes.red, at.found.component, at.pulled);
        at.black = nodeOf(at.probes.black, at.found.component, at.pulled);
        if (at.found.kind == nullptr)
            at.resolves = connected(networkOf(at.pulled, {}), at.red, at.black) || goodIsOpen(at, placement);
        return at;
    }

    bool goodIsOpen(const Prepared &at, const Placement &placement) const
    {
        const auto limits = limitsFor(m_machine, placement.test, placement.index, placement.with);
        return at.found.test != nullptr && limits && limits->openIsGood;
    }

    Prediction series(const Prepared &at, const std::vector<Faulty> &faults) const
    {
        const Prediction shows = seriesBetween(networkOf(at.pulled, faults), at.red, at.black);
        const bool unnamedWire = at.found.component == kHarness && std::ranges::any_of(faults, [](const Faulty &f) { return f.cell.wire >= 0; });
        // nobody said which wire was measured: most likely the one that is suspected
        return unnamedWire ? mixed(.6, shows, seriesBetween(networkOf(at.pulled, {}), at.red, at.black)) : shows;
    }

    // A loop whose way through the ladder is not written down: good as its limits say, and what a covered part shows
    // across the path that its mode names.
    Prediction covered(const Placement &placement, const Prepared &at, const std::vector<Faulty> &faults) const
    {
        const auto &covers = at.found.test->covers;
        Prediction shows = band(placement, at, {});
        for (const Faulty &f : faults)
            if (std::ranges::find(covers, f.component) != covers.end())
                shows = acrossFault(f, placement, shows);
        return shows;
    }

    Prediction acrossFault(const Faulty &fault, const Placement &placement, const Prediction &good) const
    {
        PartState part;
        part.component = fault.component;
        part.kind = m_machine.library->kindOf(*m_machine.appliance, fault.component);
        part.facts = factsOf(m_machine, fault.component, placement.with);
        part.mode = fault.mode;
        part.cell = fault.cell;
        for (const Path &path : part.kind->paths) {
            part.closed[path.id] = true;
            if (!fault.mode->paths.contains(path.id) || !path.along.empty())
                continue;
            const std::string from = fault.component + "." + path.from, to = fault.component + "." + path.to;
            const Prediction shows = seriesBetween(branchesOf(part), from, to);
            const bool closes = shows.terms.size() == 1 && shows.terms.front().what == Term::What::Finite && shows.terms.front().mu < 1;
            return closes ? good : shows;
        }
        return good;
    }

    Prediction band(const Placement &placement, const Prepared &at, const std::vector<Faulty> &faults) const
    {
        const std::string_view component = at.found.kind != nullptr ? std::string_view(at.found.component)
                                         : at.found.test->covers.empty() ? std::string_view{} : std::string_view(at.found.test->covers.front());
        BandTest test{at.found.kind, at.found.test, placement.index, factsOf(m_machine, component, placement.with), 240};
        test.supply = test.facts.volts > 0 ? test.facts.volts : 240;
        for (const Faulty &f : faults)
            if (f.component == at.found.component)
                return bandPrediction(test, f.mode, f.cell);
        return bandPrediction(test, nullptr, {});
    }

    Machine m_machine;
    std::vector<Suspect> m_suspects;
    std::vector<Wire> m_wires;
    std::set<std::string, std::less<>> m_onLadder;
    std::map<Placement, Prepared> m_prepared;
};

} // namespace

Predictor kindNetwork(const Machine &machine, const Suspects &suspects)
{
    const auto network = std::make_shared<KindNetwork>(machine, suspects);
    return {[network](const Placement &at, int suspect) { return network->matters(at, suspect); },
            [network](const Placement &at, std::span<const Fault> faults) { return network->predict(at, faults); },
            true};
}

Dictionary dictionaryOf(const Machine &machine)
{
    Suspects suspects = suspectsOf(machine);
    std::vector<Hypothesis> hypotheses = hypothesesOf(suspects);
    Predictor predictor = kindNetwork(machine, suspects);
    return {std::move(suspects), std::move(hypotheses), std::move(predictor), machine.meter};
}

} // namespace core
