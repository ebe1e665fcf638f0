#include "core/session/usefulness.h"

#include "core/session/cursor.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace core {
namespace {

// A variant that still has a say: its mass, and its faults if it explains the complaint and is not settled yet.
struct OpenVariant
{
    double mass = 0;
    std::span<const Fault> faults; // empty: it shows what a healthy machine shows, or nothing can move it
};

// Below this a variant cannot make a test worth its minutes.
constexpr double kLeastMass = 1e-6;

std::vector<OpenVariant> stillOpen(const Deduction &d)
{
    std::set<std::string> settled;
    for (const Proven &p : d.ruling.proven) {
        settled.insert(p.component);
        for (const std::string &cause : p.behind)
            settled.insert(componentOf(cause));
    }
    std::vector<char> explains;
    for (const Suspect &s : d.dictionary->suspects())
        explains.push_back(s.explains() && !settled.contains(componentOf(s.id)));
    const Variants &variants = d.dictionary->variants();
    std::vector<OpenVariant> open;
    for (std::size_t v = 0; v < variants.size(); ++v) {
        const double mass = d.belief.now.variants[v];
        if (mass < kLeastMass)
            continue;
        const bool listed = d.dictionary->hypotheses()[variants.hypothesis[v]].what == Hypothesis::What::Listed;
        const auto faults = variants.of(v);
        const bool counts = listed && std::ranges::any_of(faults, [&](const Fault &f) {
                                return explains[static_cast<std::size_t>(f.suspect)] != 0;
                            });
        open.push_back({mass, counts ? faults : std::span<const Fault>()});
    }
    return open;
}

// Readings that lead to the same branch count as one: OL, jumps, or a value against the limits of good.
int category(const Prediction &prediction, const std::optional<Limits> &limits, Measure measure)
{
    if (prediction.terms.empty())
        return 0;
    const Term &heaviest = *std::ranges::max_element(prediction.terms, {}, &Term::weight);
    if (heaviest.what != Term::What::Finite)
        return heaviest.what == Term::What::Open ? 100 : 101;
    if (limits)
        return limits->openIsGood ? 3 : heaviest.mu < limits->lo ? 1 : heaviest.mu > limits->hi ? 2 : 0;
    if (unitOf(measure) == Unit::Ohm)
        return 10 + std::clamp(static_cast<int>(std::lround(2 * std::log10(std::max(heaviest.mu, 0.) + .2))) + 2, 0, 7);
    return 20 + std::clamp(static_cast<int>(heaviest.mu / 60), 0, 40);
}

constexpr int kCategories = 128; // category() is below

// What is not in the largest pile.
double spread(const std::array<double, kCategories> &masses)
{
    double sum = 0, most = 0;
    for (const double mass : masses) {
        sum += mass;
        most = std::max(most, mass);
    }
    return sum - most;
}

// Of several faults the first that shows is what is read.
double gainOf(const std::vector<OpenVariant> &open, int healthy, const std::vector<std::vector<int>> &shows)
{
    std::array<double, kCategories> masses{};
    for (const OpenVariant &v : open) {
        int seen = healthy;
        for (const Fault &f : v.faults) {
            const auto &cells = shows[static_cast<std::size_t>(f.suspect)];
            if (seen == healthy && !cells.empty())
                seen = cells[static_cast<std::size_t>(f.cell) % cells.size()];
        }
        masses[static_cast<std::size_t>(seen)] += v.mass;
    }
    return spread(masses);
}

double gainOfMeter(const Facts &facts, const Deduction &d, const std::vector<OpenVariant> &open, const Library::Found &found,
                   const std::string &id)
{
    double best = 0;
    const Measure measure = found.test->measure;
    const std::size_t count = std::max<std::size_t>(1, found.test->placements.size());
    for (std::size_t n = 0; n < count; ++n) {
        if (measuredAt(facts, id, n) != nullptr)
            continue;
        Placement placement{id, n, {}};
        if (facts.machine.ambient)
            placement.with.try_emplace("ambient", *facts.machine.ambient);
        const auto limits = limitsFor(facts.machine, id, n, placement.with);
        const auto singles = d.dictionary->singles(placement);
        std::vector<std::vector<int>> shows(singles->of.size());
        for (std::size_t s = 0; s < shows.size(); ++s)
            if (!std::ranges::binary_search(d.belief.putRight, static_cast<int>(s)))
                for (const Predicted &p : singles->of[s])
                    shows[s].push_back(category(p.pulled, limits, measure));
        best = std::max(best, gainOf(open, category(singles->healthy.pulled, limits, measure), shows));
    }
    return best;
}

double gainOfLook(const Facts &facts, const Deduction &d, const std::vector<OpenVariant> &open, const std::string &id)
{
    const auto a = answeredOf(facts, d.dictionary->known(), id);
    if (!a)
        return 0;
    std::vector<std::vector<int>> shows(d.dictionary->suspects().size());
    for (std::size_t n = 0; n < a->speaksFor.size() && n + 1 < kCategories; ++n)
        for (const int s : a->speaksFor[n])
            if (shows[static_cast<std::size_t>(s)].empty())
                shows[static_cast<std::size_t>(s)] = {static_cast<int>(n) + 1};
    return gainOf(open, 0, shows);
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

std::vector<Useful> usefulTests(const Facts &facts, const Abilities &abilities, const std::set<std::string> &openPlaces,
                                const Deduction &d)
{
    const std::vector<OpenVariant> open = stillOpen(d);
    std::vector<Useful> useful;
    for (const Candidate &c : candidates(facts, abilities, d)) {
        Useful u;
        u.id = c.id;
        u.energized = c.found.test != nullptr && isEnergized(c.found.test->measure);
        u.gain = c.found.test == nullptr || c.found.test->byEye() ? gainOfLook(facts, d, open, c.id)
                                                                  : gainOfMeter(facts, d, open, c.found, c.id);
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
