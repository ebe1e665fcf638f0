#include "core/session/usefulness.h"

#include "core/session/cursor.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

// Variants that name a fault which explains the complaint and is not proven yet: their mass is what a test can move.
std::vector<char> stillOpen(const Deduction &d)
{
    std::set<std::string> settled;
    for (const Proven &p : d.ruling.proven) {
        settled.insert(p.component);
        for (const std::string &cause : p.behind)
            settled.insert(componentOf(cause));
    }
    const Variants &variants = d.dictionary->variants();
    std::vector<char> open(variants.size(), 0);
    for (std::size_t v = 0; v < variants.size(); ++v) {
        if (d.dictionary->hypotheses()[variants.hypothesis[v]].what != Hypothesis::What::Listed)
            continue;
        for (const Fault &fault : variants.of(v)) {
            const Suspect &s = d.dictionary->suspects()[static_cast<std::size_t>(fault.suspect)];
            open[v] = open[v] != 0 || (s.explains() && !settled.contains(componentOf(s.id)));
        }
    }
    return open;
}

// Readings that lead to the same branch count as one: OL, jumps, or a value against the limits of good.
int category(const Prediction &prediction, const std::optional<Limits> &limits, Measure measure)
{
    if (prediction.terms.empty())
        return -1;
    const Term &heaviest = *std::ranges::max_element(prediction.terms, {}, &Term::weight);
    if (heaviest.what != Term::What::Finite)
        return heaviest.what == Term::What::Open ? 100 : 101;
    if (limits)
        return limits->openIsGood ? 3 : heaviest.mu < limits->lo ? 1 : heaviest.mu > limits->hi ? 2 : 0;
    if (unitOf(measure) == Unit::Ohm)
        return 10 + std::clamp(static_cast<int>(std::lround(2 * std::log10(std::max(heaviest.mu, 0.) + .2))) + 2, 0, 7);
    return 10 + static_cast<int>(heaviest.mu / 60);
}

double spread(std::map<int, double> &masses)
{
    double sum = 0, most = 0;
    for (const auto &[key, mass] : masses) {
        sum += mass;
        most = std::max(most, mass);
    }
    return sum - most;
}

double gainOfMeter(const Facts &facts, const Deduction &d, const std::vector<char> &open, const Library::Found &found, const std::string &id)
{
    double best = 0;
    const std::size_t count = std::max<std::size_t>(1, found.test->placements.size());
    for (std::size_t n = 0; n < count; ++n) {
        if (measuredAt(facts, id, n) != nullptr)
            continue;
        Placement placement{id, n, {}};
        if (facts.machine.ambient)
            placement.with.try_emplace("ambient", *facts.machine.ambient);
        const auto limits = limitsFor(facts.machine, id, n, placement.with);
        const auto singles = d.dictionary->singles(placement);
        const int healthy = category(singles->healthy.pulled, limits, found.test->measure);
        const auto shows = [&](const Fault &f) {
            const auto &cells = singles->of[static_cast<std::size_t>(f.suspect)];
            const bool putRight = std::ranges::binary_search(d.belief.putRight, f.suspect);
            return cells.empty() || putRight ? healthy : category(cells[static_cast<std::size_t>(f.cell)].pulled, limits, found.test->measure);
        };
        std::map<int, double> masses;
        for (std::size_t v = 0; v < open.size(); ++v) {
            int seen = healthy; // of several faults the first that shows; what is settled or unlisted counts as healthy
            if (open[v] != 0)
                for (const Fault &f : d.dictionary->variants().of(v))
                    if (seen == healthy)
                        seen = shows(f);
            masses[seen] += d.belief.now.variants[v];
        }
        best = std::max(best, spread(masses));
    }
    return best;
}

double gainOfLook(const Facts &facts, const Deduction &d, const std::vector<char> &open, const std::string &id)
{
    const auto a = answeredOf(facts, d.dictionary->known(), id);
    if (!a)
        return 0;
    std::map<int, double> masses;
    const Variants &variants = d.dictionary->variants();
    for (std::size_t v = 0; v < open.size(); ++v) {
        int spoken = -1;
        if (open[v] != 0)
            for (const Fault &fault : variants.of(v))
                for (std::size_t n = 0; n < a->speaksFor.size(); ++n)
                    if (std::ranges::find(a->speaksFor[n], fault.suspect) != a->speaksFor[n].end() && spoken < 0)
                        spoken = static_cast<int>(n);
        masses[spoken] += d.belief.now.variants[v];
    }
    return spread(masses);
}

struct Candidate
{
    std::string id;
    Library::Found found; // test == nullptr: a step of the tree
};

std::vector<Candidate> candidates(const Facts &facts, const Abilities &abilities, const Deduction &d)
{
    const Machine &machine = facts.machine;
    std::vector<Candidate> all;
    const auto consider = [&](const std::string &id, const Library::Found &found) {
        if (canDo(facts, abilities, found) && !testState(facts, id).done && lookedAt(facts, id) == nullptr)
            all.push_back({id, found});
    };
    std::set<std::string> owners;
    for (const Suspect &s : d.dictionary->suspects())
        owners.insert(componentOf(s.id));
    for (const std::string &owner : owners)
        if (const Kind *kind = machine.library->kindOf(*machine.appliance, owner); kind != nullptr && isOn(machine, owner))
            for (const Test &test : kind->tests)
                consider(owner + "." + test.id, {&test, kind, owner});
    for (const Test &loop : machine.appliance->loops)
        consider(loop.id, {&loop, nullptr, {}});
    if (machine.tree != nullptr)
        for (const Step &step : machine.tree->steps)
            if (step.what != Step::What::Test && step.what != Step::What::Ask && holds(step.only, machine.answers) &&
                canDoStep(facts, abilities, step) && lookedAt(facts, step.id) == nullptr)
                all.push_back({step.id, {}});
    return all;
}

} // namespace

std::vector<Useful> usefulTests(const Facts &facts, const Abilities &abilities, const std::set<std::string> &openPlaces, const Deduction &d)
{
    const std::vector<char> open = stillOpen(d);
    std::vector<Useful> useful;
    for (const Candidate &c : candidates(facts, abilities, d)) {
        Useful u;
        u.id = c.id;
        u.energized = c.found.test != nullptr && isEnergized(c.found.test->measure);
        u.gain = c.found.test == nullptr || c.found.test->byEye() ? gainOfLook(facts, d, open, c.id) : gainOfMeter(facts, d, open, c.found, c.id);
        u.minutes = minutesOf(facts, openPlaces, c.id);
        u.refused = facts.notDone.contains(c.id);
        useful.push_back(std::move(u));
    }
    std::ranges::stable_sort(useful, [](const Useful &a, const Useful &b) {
        const auto worth = [](const Useful &u) { return u.gain / std::max(u.minutes, .5); };
        return std::tuple(a.energized, -worth(a), a.id) < std::tuple(b.energized, -worth(b), b.id);
    });
    return useful;
}

} // namespace core
