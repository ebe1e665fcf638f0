// Laws that hold for every machine and every evidence, on random small models, and exact inference by going through
// every combination with formulas written out anew.
#include "core/belief/why.h"

#include "tests/core/belief_random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <numeric>

using namespace core;

namespace {

// ---- brute force: the formulas once more, one variant at a time ---------------------------------------------------
// within a wide cell the part shows again what it showed: at least one half
double anew(const Prediction &p, const std::vector<Reading> &before, const Reading &r, Measure measure, const Meter &meter)
{
    const double drawn = probability(p, r, measure, meter);
    const Term *heaviest = nullptr;
    for (const Term &t : p.terms)
        if (heaviest == nullptr || t.weight > heaviest->weight)
            heaviest = &t;
    const bool wide = heaviest != nullptr && heaviest->what == Term::What::Finite && heaviest->h > heaviest->sigma;
    const bool again = r.what == Reading::What::Value && std::ranges::any_of(before, [&](const Reading &o) { return !different(o, r, measure); });
    return drawn > 0 && wide && again ? std::max(drawn, .5) : drawn;
}

double likelihoodAnew(const Placed &p, const Predicted &shows, const Meter &meter)
{
    std::vector<Reading> before;
    double pulled = 1, wired = 1, wrong = 1;
    std::vector<Reading> seen;
    for (const Seating &seating : p.seatings) {
        const Reading &r = seating.front();
        const double q = slipDensity(r, p.measure);
        pulled *= .985 * anew(p.wireLeftOn ? shows.wired : shows.pulled, before, r, p.measure, meter) + .015 * q;
        wired *= .985 * anew(shows.wired, before, r, p.measure, meter) + .015 * q;
        before.push_back(r);
        if (std::ranges::none_of(seen, [&](const Reading &o) { return !different(o, r, p.measure); })) {
            wrong *= q;
            seen.push_back(r);
        }
    }
    const double scale = p.confirmed ? .3 : 1;
    const double iota = p.pullsAny && !p.wireLeftOn ? .03 * scale : 0, pi = .005 * scale;
    return (1 - iota - pi) * pulled + iota * wired + pi * wrong;
}

double likelihoodAnew(const Answered &a, const std::vector<int> &there)
{
    const double yes = std::ranges::find(there, a.speaksFor[0][0]) != there.end() ? a.sensitivity : a.falseAlarm;
    double all = 1;
    for (std::size_t k = 0; k < a.given.size(); ++k) {
        const double anew = a.given[k] == "yes" ? yes : 1 - yes;
        all *= k == 0 ? anew : a.again * (a.given[k] == a.given[k - 1] ? 1 : 0) + (1 - a.again) * anew;
    }
    return all;
}

struct Exact
{
    std::vector<double> suspects;
    double evidence = 0;
};

void addExactly(Exact &exact, const Dictionary &d, const Suspects &s, const Hypothesis &h, const std::vector<Evidence> &evidence)
{
    std::size_t combinations = 1;
    for (const int k : h.suspects)
        combinations *= s.list[static_cast<std::size_t>(k)].cells.size();
    for (std::size_t c = 0; c < combinations; ++c) {
        std::vector<Fault> faults;
        double weight = h.prior;
        std::size_t rest = c;
        for (const int k : h.suspects) {
            const auto &cells = s.list[static_cast<std::size_t>(k)].cells;
            faults.push_back({k, static_cast<int>(rest % cells.size())});
            weight *= cells[rest % cells.size()].weight;
            rest /= cells.size();
        }
        for (const Evidence &e : evidence) {
            const auto *placed = std::get_if<Placed>(&e);
            if (placed == nullptr)
                weight *= likelihoodAnew(std::get<Answered>(e), h.suspects);
            else if (h.what == Hypothesis::What::Loud)
                weight *= loudLikelihood(weighed(*placed, d.noise()));
            else
                weight *= likelihoodAnew(*placed, randomPredicted(placed->placement, faults), d.meter());
        }
        exact.evidence += weight;
        for (const int k : h.suspects)
            exact.suspects[static_cast<std::size_t>(k)] += weight;
    }
}

Exact exactly(const Dictionary &d, const Suspects &s, const std::vector<Evidence> &evidence)
{
    Exact exact{std::vector<double>(s.list.size(), 0), 0};
    for (const Hypothesis &h : d.hypotheses())
        addExactly(exact, d, s, h, evidence);
    for (double &p : exact.suspects)
        p /= exact.evidence;
    return exact;
}

} // namespace

TEST(Properties, ExhaustiveInferenceIsTheUpdate)
{
    Random random(11);
    for (int i = 0; i < 200; ++i) {
        const Suspects s = randomSuspects(random);
        Dictionary d = dictionary(s);
        const std::vector<Evidence> evidence = randomEvidence(random, s);
        const Exact exact = exactly(d, s, evidence);
        const Belief b = update(d, evidence);
        for (std::size_t k = 0; k < s.list.size(); ++k)
            ASSERT_NEAR(b.now.suspects[k], exact.suspects[k], 1e-9) << i << ' ' << s.list[k].id;
        ASSERT_NEAR(b.now.logEvidence, std::log(exact.evidence), 1e-9);
    }
}

// the priors once more, from the sentence that defines them
TEST(Properties, PriorsAreAsDefined)
{
    Random random(5);
    for (int i = 0; i < 100; ++i) {
        const Suspects s = randomSuspects(random);
        std::map<std::vector<int>, double> expected;
        const auto add = [&](std::vector<int> key, double p) {
            std::ranges::sort(key);
            expected[key] += p;
        };
        const auto links = [&](int k) {
            double sum = 0;
            for (const Link &l : s.links)
                sum += l.suspect == k ? l.chance : 0;
            return sum;
        };
        const int n = static_cast<int>(s.list.size());
        const auto at = [&](int k) -> const Suspect & { return s.list[static_cast<std::size_t>(k)]; };
        const Beside film = s.beside.front();
        double z = 0;
        for (int a = 0; a < n; ++a) {
            add({a}, .93 * at(a).share * (1 - links(a)) * (1 - film.chance));
            add({a, film.condition}, .93 * at(a).share * (1 - links(a)) * film.chance);
            for (int b = a + 1; b < n; ++b)
                z += at(a).component != at(b).component ? at(a).share * at(b).share : 0;
        }
        for (const Link &l : s.links)
            add({l.suspect, l.cause}, .93 * at(l.suspect).share * l.chance);
        for (int a = 0; a < n; ++a)
            for (int b = a + 1; b < n; ++b) {
                const double pair = at(a).component != at(b).component ? .05 * at(a).share * at(b).share / z : 0;
                double left = 1;
                for (const Link &l : s.links)
                    if (l.suspect == a && at(l.cause).component != at(b).component) {
                        add({a, b, l.cause}, pair * l.chance);
                        left -= l.chance;
                    }
                add({a, b}, pair * left);
            }
        double sum = 0;
        for (const Hypothesis &h : hypothesesOf(s)) {
            sum += h.prior;
            if (h.what == Hypothesis::What::Listed) {
                ASSERT_NEAR(h.prior, expected[h.suspects], 1e-12) << i;
                expected.erase(h.suspects);
            }
        }
        EXPECT_NEAR(sum, 1, 1e-12);
        for (const auto &[key, p] : expected)
            EXPECT_EQ(p, 0);
    }
}

TEST(Properties, OrderDoesNotMatterAndSumsAreOne)
{
    Random random(21);
    for (int i = 0; i < 100; ++i) {
        const Suspects s = randomSuspects(random);
        Dictionary d = dictionary(s);
        std::vector<Evidence> evidence = randomEvidence(random, s);
        const Belief one = update(d, evidence);
        std::ranges::reverse(evidence);
        const Belief other = update(d, evidence);
        EXPECT_NEAR(std::accumulate(one.now.variants.begin(), one.now.variants.end(), 0.), 1, 1e-12);
        EXPECT_NEAR(std::accumulate(one.now.hypotheses.begin(), one.now.hypotheses.end(), 0.), 1, 1e-12);
        EXPECT_NEAR(one.now.logEvidence, other.now.logEvidence, 1e-10);
        for (std::size_t k = 0; k < s.list.size(); ++k)
            EXPECT_NEAR(one.now.suspects[k], other.now.suspects[k], 1e-12);
    }
}

TEST(Properties, SkippedIsNoEvidence)
{
    Random random(22);
    const Suspects s = randomSuspects(random);
    Dictionary d = dictionary(s);
    std::vector<Evidence> evidence = randomEvidence(random, s);
    const Belief before = update(d, evidence);
    Placed skipped = randomPlaced(random, 7);
    skipped.seatings.clear();
    Answered unsure = randomAnswered(random, s);
    unsure.given = {"cannot see"};
    evidence.emplace_back(skipped);
    evidence.emplace_back(unsure);
    EXPECT_EQ(update(d, evidence).now.suspects, before.now.suspects);
}

TEST(Properties, TheSameAgainInOneSeatingAddsNothing)
{
    Random random(23);
    const Suspects s = randomSuspects(random);
    Dictionary d = dictionary(s);
    Reading r;
    r.amount = {9.8, Unit::Ohm};
    r.step = .1;
    Placed once, twice, reseated;
    once.seatings = {{r}};
    twice.seatings = {{r, r}};
    reseated.seatings = {{r}, {r}};
    const auto of = [&](const Placed &p) { return update(d, std::vector<Evidence>{p}).now.suspects; };
    EXPECT_EQ(of(once), of(twice));
    EXPECT_NE(of(once), of(reseated));
}

TEST(Properties, DifferentInOneSeatingIsJumps)
{
    Reading low, high, jumps;
    low.amount = {.1, Unit::Ohm}, low.step = .1;
    high.what = Reading::What::OverLimit;
    jumps.what = Reading::What::Jumps;
    EXPECT_EQ(settled({low, high}, Measure::Resistance).what, Reading::What::Jumps);
    Reading near = low;
    near.amount.value = .3; // within 2 (a + d): the last counts
    EXPECT_EQ(settled({low, near}, Measure::Resistance).amount.value, .3);
    EXPECT_EQ(settled({jumps}, Measure::Resistance).what, Reading::What::Jumps);
}

TEST(Properties, DecibansAddUpAndEveryAnswerIsExpected)
{
    Random random(24);
    for (int i = 0; i < 50; ++i) {
        const Suspects s = randomSuspects(random);
        Dictionary d = dictionary(s);
        const std::vector<Evidence> evidence = randomEvidence(random, s);
        const Belief b = update(d, evidence);
        const std::vector<int> first = d.ofComponent("c0");
        const std::vector<double> w = weights(d, b, first);
        const double change = decibansOf(d, b.now, first) - decibansOf(d, update(d, {}).now, first);
        EXPECT_NEAR(std::accumulate(w.begin(), w.end(), 0.), change, 1e-9);
        Answered look = randomAnswered(random, s);
        double all = 0, expected = 0;
        for (const char *answer : {"yes", "no"}) {
            look.given = {answer};
            const Posterior then = whatIf(d, b, look);
            const double p = std::exp(then.logEvidence - b.now.logEvidence);
            all += p;
            expected += p * then.suspects[0];
        }
        EXPECT_NEAR(all, 1, 1e-12);
        EXPECT_NEAR(expected, b.now.suspects[0], 1e-12); // what is expected of the belief is the belief
    }
}

TEST(Properties, UnionCountsOnce)
{
    Random random(25);
    const Suspects s = randomSuspects(random);
    Dictionary d = dictionary(s);
    const Belief b = update(d, randomEvidence(random, s));
    std::vector<int> all(s.list.size());
    std::iota(all.begin(), all.end(), 0);
    EXPECT_NEAR(probabilityOf(d, b.now, all) + b.now.quiet + b.now.loud, 1, 1e-12);
    EXPECT_EQ(probabilityOf(d, b.now, std::vector<int>{}), 0);
    EXPECT_LE(probabilityOf(d, b.now, std::vector<int>{0, 1}), b.now.suspects[0] + b.now.suspects[1] + 1e-15);
}

// whatever is read, also nonsense and far beyond the meter, gives probabilities
TEST(Properties, NeverWithoutANumber)
{
    Random random(26);
    for (int i = 0; i < 300; ++i) {
        const Suspects s = randomSuspects(random);
        Dictionary d = dictionary(s);
        std::vector<Evidence> evidence;
        for (std::size_t k = 0; k < 30; ++k) {
            Placed p = randomPlaced(random, k);
            p.measure = random.chance(.3) ? Measure::VoltageAc : random.chance(.2) ? Measure::Continuity : Measure::Resistance;
            if (random.chance(.3)) {
                Reading r;
                r.amount.value = std::pow(10, random.uniform(-3, 15));
                r.step = random.chance(.2) ? 0 : .1;
                p.seatings.push_back({r});
            }
            evidence.emplace_back(p);
        }
        const Belief b = update(d, evidence);
        for (const double p : b.now.suspects)
            ASSERT_TRUE(p >= 0 && p <= 1 + 1e-12);
        ASSERT_TRUE(std::isfinite(b.now.logEvidence));
        for (const SlipShare &share : slipShares(d, b))
            ASSERT_TRUE(share.share >= 0 && share.share <= 1);
    }
}

TEST(Properties, ReusedFactorsGiveTheSame)
{
    Random random(27);
    const Suspects s = randomSuspects(random);
    Dictionary d = dictionary(s);
    std::vector<Evidence> evidence = randomEvidence(random, s);
    const Belief first = update(d, evidence);
    evidence.emplace_back(randomPlaced(random, 9));
    EXPECT_EQ(update(d, evidence, &first).now.variants, update(d, evidence).now.variants);
}

// Printed, never asserted: a new reading on some 4000 variants.
TEST(Speed, OneReadingMore)
{
    Suspects s;
    for (int i = 0; i < 40; ++i) {
        Suspect suspect{"p" + std::to_string(i), "p" + std::to_string(i), "", 1. / 40, {}};
        for (int c = 0; c < (i < 4 ? 6 : 2); ++c)
            suspect.cells.push_back(Cell{c == 0 ? 1 - (i < 4 ? .5 : .1) : (i < 4 ? .1 : .1)});
        s.list.push_back(suspect);
    }
    Dictionary d = dictionary(s);
    Random random(1);
    std::vector<Evidence> evidence;
    for (std::size_t i = 0; i < 14; ++i)
        evidence.emplace_back(randomPlaced(random, i));
    const Belief before = update(d, evidence);
    const Placed next = randomPlaced(random, 20);
    d.column(next.placement);
    evidence.emplace_back(next);
    const auto start = std::chrono::steady_clock::now();
    const Belief after = update(d, evidence, &before);
    const double us = std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count();
    std::printf("[ measured ] %zu variants, 15th reading: %.0f us\n", d.variants().size(), us);
    EXPECT_NEAR(std::accumulate(after.now.variants.begin(), after.now.variants.end(), 0.), 1, 1e-9);
}
