// Exact inference against worked examples from the literature. Each network is written out as hypotheses (every
// combination of what may be the case, with its joint prior) and evidence with its sensitivity and false alarm.
#include "core/belief/why.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace core;

namespace {

// All 2^n combinations of n things, with the joint prior that `prior` gives for a bit mask.
template<class F>
Dictionary joint(int n, F &&prior, Predictor predictor = {}, Noise noise = {})
{
    Suspects s;
    for (int i = 0; i < n; ++i) {
        const std::string id(1, static_cast<char>('a' + i));
        s.list.push_back({id, id, "", 1. / n, {Cell{}}});
    }
    std::vector<Hypothesis> all;
    for (int mask = 0; mask < 1 << n; ++mask) {
        Hypothesis h;
        for (int i = 0; i < n; ++i)
            if ((mask >> i & 1) != 0)
                h.suspects.push_back(i);
        h.prior = prior(mask);
        all.push_back(h);
    }
    Meter meter;
    meter.probeZero = Amount{0, Unit::Ohm};
    return {std::move(s), std::move(all), std::move(predictor), meter, noise};
}

Answered sign(int of, double sensitivity, double falseAlarm, bool yes = true)
{
    Answered a;
    a.answers = {"yes", "no"};
    a.speaksFor = {{of}, {}};
    a.given = {yes ? "yes" : "no"};
    a.sensitivity = sensitivity;
    a.falseAlarm = falseAlarm;
    return a;
}

Answered known(int of, bool yes = true) { return sign(of, 1, 0, yes); }

std::vector<double> after(Dictionary &d, const std::vector<Evidence> &evidence) { return update(d, evidence).now.suspects; }

bool bit(int mask, int i) { return (mask >> i & 1) != 0; }
double chance(bool happens, double p) { return happens ? p : 1 - p; }

} // namespace

// Good, I. J. (1985), Weight of Evidence: A Brief Survey, Bayesian Statistics 2, 249-270: Turing's vicar and bell
// example, prior 1/5, P(B|H) 2/3, P(B|not H) 1/4: factor 8/3, odds 2/3, 4.26 decibans.
TEST(Published, TuringsExample)
{
    Dictionary d = joint(1, [](int m) { return m == 1 ? .2 : .8; });
    const std::vector<Evidence> bell{sign(0, 2. / 3, 1. / 4)};
    const Belief b = update(d, bell);
    EXPECT_NEAR(b.now.suspects[0], .4, 1e-12);
    EXPECT_NEAR(weights(d, b, std::vector{0})[0], 4.259687, 1e-6);
    EXPECT_NEAR(std::pow(10, weights(d, b, std::vector{0})[0] / 10), 8. / 3, 1e-12);
}

// 10 log10 of p / (1 - p), by hand.
TEST(Published, DecibansOfProbabilities)
{
    for (const auto &[p, decibans] : {std::pair{.5, 0.}, {.9, 9.5424}, {.95, 12.7875}, {.99, 19.9564}, {.999, 29.9957}, {.1, -9.5424}}) {
        Dictionary d = joint(1, [p = p](int m) { return m == 1 ? p : 1 - p; });
        EXPECT_NEAR(decibansOf(d, update(d, {}).now, std::vector{0}), decibans, 5e-5);
    }
}

// Kass, R. E. and Raftery, A. E. (1995), Bayes Factors, JASA 90, 773-795, section 3.2: 1 to 3, 3 to 20, 20 to 150, over
// 150; both sides of each edge.
TEST(Published, KassAndRafterySteps)
{
    const auto of = [](double factor) { return strengthOf(10 * std::log10(factor)); };
    EXPECT_EQ(of(1), Strength::Bare);
    EXPECT_EQ(of(2.99), Strength::Bare);
    EXPECT_EQ(of(3.01), Strength::Positive);
    EXPECT_EQ(of(19.9), Strength::Positive);
    EXPECT_EQ(of(20.1), Strength::Strong);
    EXPECT_EQ(of(149), Strength::Strong);
    EXPECT_EQ(of(151), Strength::VeryStrong);
    EXPECT_EQ(of(1 / 25.), Strength::Strong);
    EXPECT_EQ(inWords(25), "speaks very strongly for it");
    EXPECT_EQ(inWords(-15), "speaks strongly against it");
    EXPECT_EQ(inWords(.5), inWords(-.5));
}

// Eddy, D. M. (1982), Probabilistic reasoning in clinical medicine: prior 1 %, sensitivity 80 %, false positives 9.6 %
// give the well-known 7.8 %.
TEST(Published, RareDisease)
{
    Dictionary d = joint(1, [](int m) { return m == 1 ? .01 : .99; });
    EXPECT_NEAR(after(d, {sign(0, .80, .096)})[0], .0776, 5e-5);
}

// Russell and Norvig, Artificial Intelligence: A Modern Approach, 14.4: burglary, earthquake, alarm; John and Mary call.
// The book prints .284 for both calling; the rest are the printed expectations of bayesjs' tests (MIT).
TEST(Published, Burglary)
{
    Dictionary d = joint(3, [](int m) {
        const bool b = bit(m, 0), e = bit(m, 1);
        const double alarm = b && e ? .95 : b ? .94 : e ? .29 : .001;
        return chance(b, .001) * chance(e, .002) * chance(bit(m, 2), alarm);
    });
    const Evidence john = sign(2, .90, .05), mary = sign(2, .70, .01);
    EXPECT_NEAR(after(d, {john, mary})[0], .284172, 5e-7);
    EXPECT_NEAR(after(d, {john})[0], .0163, 5e-5);
    EXPECT_NEAR(after(d, {john})[1], .0114, 5e-5);
    EXPECT_NEAR(after(d, {john})[2], .0434, 5e-5);
    EXPECT_NEAR(after(d, {mary})[0], .0561, 5e-5);
    EXPECT_NEAR(after(d, {mary})[1], .0359, 5e-5);
    EXPECT_NEAR(after(d, {mary})[2], .1501, 5e-5);
    EXPECT_NEAR(after(d, {known(2)})[0], .3736, 5e-5);
    EXPECT_NEAR(after(d, {known(2)})[1], .2310, 5e-5);
    const Belief b = update(d, std::vector<Evidence>{john});
    EXPECT_NEAR(std::exp(whatIf(d, b, mary).logEvidence - b.now.logEvidence), .0400, 5e-5); // P(mary | john)
}

// The lawn sprinkler as printed in bayesjs' tests (MIT): rain .2; sprinkler .01 / .4; wet .99, .8, .9, 0.
TEST(Published, Sprinkler)
{
    Dictionary d = joint(3, [](int m) {
        const bool rain = bit(m, 0), sprinkler = bit(m, 1);
        const double wet = rain && sprinkler ? .99 : rain ? .8 : sprinkler ? .9 : 0;
        return chance(rain, .2) * chance(sprinkler, rain ? .01 : .4) * chance(bit(m, 2), wet);
    });
    EXPECT_NEAR(after(d, {known(2)})[0], .3577, 5e-5);
    EXPECT_NEAR(after(d, {known(2)})[1], .6467, 5e-5);
    EXPECT_NEAR(after(d, {known(2, false)})[0], .0718, 5e-5);
    EXPECT_NEAR(after(d, {known(0)})[2], .8019, 5e-5);
    EXPECT_NEAR(after(d, {known(0, false)})[2], .3600, 5e-5);
}

// Russell and Norvig, 14.3: fever by noisy-or, inhibitions .6 cold, .2 flu, .1 malaria. Priors .1, .05, .01 are ours; the
// posteriors follow exactly from the book's table.
TEST(Published, NoisyOr)
{
    const auto fever = [](int m) { return 1 - (bit(m, 0) ? .6 : 1) * (bit(m, 1) ? .2 : 1) * (bit(m, 2) ? .1 : 1); };
    EXPECT_NEAR(fever(3), .88, 1e-12); // the book's rows
    EXPECT_NEAR(fever(7), .988, 1e-12);
    Dictionary d = joint(4, [&](int m) {
        return chance(bit(m, 0), .1) * chance(bit(m, 1), .05) * chance(bit(m, 2), .01) * chance(bit(m, 3), fever(m));
    });
    const std::vector<Evidence> hot{known(3)};
    const Belief b = update(d, hot);
    EXPECT_NEAR(std::exp(b.now.logEvidence), .0866944, 5e-8);
    EXPECT_NEAR(b.now.suspects[0], .495054, 5e-7);
    EXPECT_NEAR(b.now.suspects[1], .467001, 5e-7);
    EXPECT_NEAR(b.now.suspects[2], .104717, 5e-7);
    EXPECT_NEAR(after(d, {known(3, false)})[0], .0625, 5e-5);
}

// Lauritzen and Spiegelhalter (1988), Local Computations with Probabilities on Graphical Structures, J. R. Stat. Soc. B
// 50, 157-224: the chest clinic ("Asia"). Posteriors as computed alike by dlib's junction tree and by bayesjs.
TEST(Published, ChestClinic)
{
    enum { Asia, Tub, Smoke, Lung, Bronc, Either, Xray, Dysp };
    Dictionary d = joint(8, [](int m) {
        const bool either = bit(m, Tub) || bit(m, Lung);
        const double breath = bit(m, Bronc) ? (either ? .9 : .8) : either ? .7 : .1;
        return (bit(m, Either) == either ? 1 : 0) * chance(bit(m, Asia), .01) * chance(bit(m, Tub), bit(m, Asia) ? .05 : .01)
             * chance(bit(m, Smoke), .5) * chance(bit(m, Lung), bit(m, Smoke) ? .1 : .01)
             * chance(bit(m, Bronc), bit(m, Smoke) ? .6 : .3) * chance(bit(m, Xray), either ? .98 : .05) * chance(bit(m, Dysp), breath);
    });
    const std::vector<double> prior = after(d, {});
    EXPECT_NEAR(prior[Tub], .0104, 1e-10);
    EXPECT_NEAR(prior[Lung], .055, 1e-10);
    EXPECT_NEAR(prior[Either], .064828, 1e-8);
    EXPECT_NEAR(prior[Xray], .11029004, 1e-8);
    EXPECT_NEAR(prior[Dysp], .4359706, 1e-7);
    const std::vector<Evidence> visit{known(Asia), known(Dysp)};
    const Belief b = update(d, visit);
    EXPECT_NEAR(b.now.suspects[Tub], .08775096, 5e-9);
    EXPECT_NEAR(b.now.suspects[Lung], .09952515, 5e-9);
    EXPECT_NEAR(b.now.suspects[Bronc], .81140207, 5e-9);
    EXPECT_NEAR(b.now.suspects[Smoke], .62591986, 5e-9);
    EXPECT_NEAR(b.now.suspects[Xray], .21953886, 5e-9);
    EXPECT_NEAR(std::exp(b.now.logEvidence), .004501375, 5e-10);
    const Posterior white = whatIf(d, b, known(Xray)), dark = whatIf(d, b, known(Xray, false));
    EXPECT_NEAR(white.suspects[Tub], .39171172, 5e-9);
    EXPECT_NEAR(white.suspects[Lung], .44427051, 5e-9);
    EXPECT_NEAR(white.suspects[Bronc], .62882178, 5e-9);
    EXPECT_NEAR(dark.suspects[Tub], .0022487, 5e-8);
    EXPECT_NEAR(dark.suspects[Lung], .00255042, 5e-9);
    EXPECT_NEAR(dark.suspects[Bronc], .86276077, 5e-9);
    EXPECT_NEAR(after(d, {known(Asia), known(Smoke, false), known(Dysp), known(Xray)})[Tub], .63232946, 5e-9);
}

// de Kleer and Williams (1987), Diagnosing Multiple Faults, Artificial Intelligence 32, 97-130: three multipliers and two
// adders, A=3 B=2 C=2 D=3 E=3, F read 10 where 12 is right, G read 12. Every component fails with .01.
TEST(Published, AdderMultiplier)
{
    enum { M1, M2, M3, A1, A2 };
    const auto consistent = [](auto isFaulty) {
        for (int x = 0; x < 16; ++x)
            for (int y = 0; y < 16; ++y)
                for (int z = 0; z < 16; ++z)
                    if ((isFaulty(M1) || x == 6) && (isFaulty(M2) || y == 6) && (isFaulty(M3) || z == 6)
                        && (isFaulty(A1) || x + y == 10) && (isFaulty(A2) || y + z == 12))
                        return true;
        return false;
    };
    Predictor predictor; // "1" where the set of faults can show what was read, OL where it cannot
    predictor.predict = [&](const Placement &, std::span<const Fault> faults) {
        const auto isFaulty = [&](int s) { return std::ranges::find(faults, s, &Fault::suspect) != faults.end(); };
        const Prediction p = consistent(isFaulty) ? finitePrediction(1, .1) : openPrediction();
        return Predicted{p, p};
    };
    Dictionary d = joint(5, [](int m) { return std::pow(.01 / .99, std::popcount(static_cast<unsigned>(m))); }, predictor, {0, 0, 0, 0});
    Placed read;
    Reading one;
    one.amount = {1, Unit::Ohm};
    one.step = .1;
    read.seatings = {{one}};
    const Belief b = update(d, std::vector<Evidence>{read});
    const auto possible = std::ranges::count_if(b.now.hypotheses, [](double p) { return p > 0; });
    EXPECT_EQ(possible, 27);
    EXPECT_NEAR(b.now.hypotheses[1 << A1], .478026, 5e-7);
    EXPECT_NEAR(b.now.hypotheses[1 << M1], .478026, 5e-7);
    EXPECT_NEAR(b.now.hypotheses[1 << A2 | 1 << M2], .004829, 5e-7);
    EXPECT_NEAR(b.now.hypotheses[1 << M2 | 1 << M3], .004829, 5e-7);
    EXPECT_EQ(b.now.hypotheses[0], 0);
    EXPECT_NEAR(b.now.suspects[A1], .497635, 5e-7);
    EXPECT_NEAR(b.now.suspects[M1], .497635, 5e-7);
    EXPECT_NEAR(b.now.suspects[M2], .019609, 5e-7);
    EXPECT_NEAR(b.now.suspects[M3], .014780, 5e-7);
    EXPECT_NEAR(b.now.suspects[A2], .014780, 5e-7);
}
