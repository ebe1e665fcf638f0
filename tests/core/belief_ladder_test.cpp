// The belief on a small ladder, worked outside this code in double precision (numpy): a thermal cut-off P and a control
// contact K in series with a 10 ohm element E, a load of 2600 ohm from the live rail to neutral, the element's can
// joined to neutral; a blocked vent may stand behind the cut-off.
#include "core/belief/why.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace core;

namespace {

Reading ohm(double v, double step)
{
    Reading r;
    r.amount = {v, Unit::Ohm};
    r.step = step;
    return r;
}

Reading over()
{
    Reading r;
    r.what = Reading::What::OverLimit;
    return r;
}

enum { P, E, K, Vent };

Suspects suspects()
{
    Suspects s;
    s.list = {{"P.open", "P", "open", .5, {Cell{}}},
              {"E.open", "E", "open", .3, {Cell{}}},
              {"K.open", "K", "open", .2, {Cell{}}},
              {"vent", "vent", "", 0, {Cell{}}}};
    s.links = {{P, Vent, .4}};
    return s;
}

bool has(std::span<const Fault> faults, int suspect)
{
    return std::ranges::any_of(faults, [suspect](const Fault &f) { return f.suspect == suspect; });
}

Predicted same(const Prediction &p) { return {p, p}; }
Predicted openIf(bool open, const Prediction &else_) { return same(open ? openPrediction() : else_); }

// solved by hand from the ladder; with wires on, the can is reached from the element through K, P and the 2600 ohm load
Predicted predict(const Placement &at, std::span<const Fault> faults)
{
    const bool p = has(faults, P), e = has(faults, E), k = has(faults, K);
    if (at.test == "chain")
        return openIf(p || e, finitePrediction(10.1, .701855));
    if (at.test == "P.ohm")
        return openIf(p, finitePrediction(.08, .05));
    if (at.test == "E.ohm")
        return openIf(e, finitePrediction(10, .7));
    return {openPrediction(), p || k ? openPrediction() : finitePrediction(2600.27, 260.000012)}; // E.g1
}

Meter zeroed()
{
    Meter m;
    m.probeZero = Amount{0, Unit::Ohm};
    return m;
}

Dictionary ladder() { return {suspects(), hypothesesOf(suspects()), {{}, predict}, zeroed()}; }

Placed placed(const std::string &test, std::vector<Seating> seatings, bool confirmed = false)
{
    Placed p;
    p.placement.test = test;
    p.seatings = std::move(seatings);
    p.pullsAny = true;
    p.confirmed = confirmed;
    return p;
}

Answered flap(std::vector<std::string> given = {"yes"})
{
    Answered a;
    a.id = "flap";
    a.answers = {"yes", "no"};
    a.speaksFor = {{Vent}, {}};
    a.given = std::move(given);
    return a;
}

struct Row
{
    double p, e, k, vent, other, evidence, decibans;
};

void expectRow(Dictionary &d, const std::vector<Evidence> &evidence, const Row &row)
{
    const Belief b = update(d, evidence);
    EXPECT_NEAR(b.now.suspects[P], row.p, 5.1e-9);
    EXPECT_NEAR(b.now.suspects[E], row.e, 5.1e-9);
    EXPECT_NEAR(b.now.suspects[K], row.k, 5.1e-9);
    EXPECT_NEAR(b.now.suspects[Vent], row.vent, 5.1e-9);
    EXPECT_NEAR(b.now.quiet + b.now.loud, row.other, 5.1e-9);
    EXPECT_NEAR(std::exp(b.now.logEvidence) / row.evidence, 1, 5e-7);
    EXPECT_NEAR(decibansOf(d, b.now, std::vector{int{P}}), row.decibans, 5.1e-6);
}

const Evidence kChain = placed("chain", {{over()}});
const Evidence kOnce = placed("P.ohm", {{over()}});
const Evidence kConfirmed = placed("P.ohm", {{over()}, {over()}}, true);
const Evidence kCan = placed("E.g1", {{over()}});
const Evidence kElement = placed("E.ohm", {{ohm(10.3, .1)}});

double likelihoodOf(Dictionary &d, const Placed &placed, std::size_t hypothesisClass)
{
    const auto column = d.column(placed.placement);
    return likelihood(weighed(placed, d.noise()), column->classes[hypothesisClass], d.meter());
}

} // namespace

TEST(Ladder, Priors)
{
    const std::vector<Hypothesis> all = hypothesesOf(suspects());
    const auto prior = [&](std::vector<int> key) {
        const auto at = std::ranges::find_if(all, [&](const Hypothesis &h) { return h.suspects == key && !key.empty(); });
        return at == all.end() ? -1 : at->prior;
    };
    EXPECT_EQ(all.size(), 11U);
    EXPECT_NEAR(prior({P}), .279, 1e-12);
    EXPECT_NEAR(prior({P, Vent}), .186, 1e-12);
    EXPECT_NEAR(prior({E}), .279, 1e-12);
    EXPECT_NEAR(prior({K}), .186, 1e-12);
    EXPECT_NEAR(prior({P, E}), .01451613, 5e-9);
    EXPECT_NEAR(prior({P, E, Vent}), .00967742, 5e-9);
    EXPECT_NEAR(prior({P, K}), .00967742, 5e-9);
    EXPECT_NEAR(prior({P, K, Vent}), .00645161, 5e-9);
    EXPECT_NEAR(prior({E, K}), .00967742, 5e-9);
    EXPECT_NEAR(all[9].prior, .012, 1e-12);
    EXPECT_NEAR(all[10].prior, .008, 1e-12);
}

TEST(Ladder, WorkedRows)
{
    Dictionary d = ladder();
    expectRow(d, {}, {.50532258, .31287097, .21180645, .20212903, .02, 1, .09247});
    expectRow(d, {kChain}, {.63245629, .39158593, .03423450, .25298252, .00430274, .7659404, 2.35722});
    expectRow(d, {kChain, kOnce}, {.99252345, .05223344, .03186293, .39700938, .00273733, .46788757, 21.23040});
    expectRow(d, {kChain, kConfirmed}, {.99845985, .04819644, .03188440, .39938394, .00114530, .44810376, 28.11768});
    expectRow(d, {kChain, kConfirmed, kCan}, {.99913796, .04821782, .03190605, .39965518, .00047828, .42927988, 30.64096});
    expectRow(d, {kChain, kConfirmed, kCan, kElement},
              {.99999565, .00000396, .03352524, .39999826, .00000211, .020233437, 53.61289});
    expectRow(d, {kChain, kConfirmed, kCan, kElement, flap()},
              {.99999931, .00000393, .03352350, .90425469, .00000034, .0076077447, 61.58326});
}

TEST(Ladder, OtherWays)
{
    Dictionary d = ladder();
    expectRow(d, {kChain, placed("P.ohm", {{over()}, {ohm(.1, .1)}}, true)},
              {.19918168, .77092648, .03596043, .07967267, .03534957, 5.2116198e-4, -6.04285});
    expectRow(d, {kChain, placed("P.ohm", {{over()}, {over()}})},
              {.99758171, .04902032, .03189004, .39903268, .00115287, .44760697, 26.15441});
    expectRow(d, {placed("chain", {{ohm(10.2, .1)}})}, {.00018678, .00011565, .93898837, .00007471, .06072769, .0105671, -37.28583});
}

TEST(Ladder, Likelihoods)
{
    Dictionary d = ladder();
    const Placed chain = placed("chain", {{over()}}), once = placed("P.ohm", {{over()}});
    const Placed confirmed = placed("P.ohm", {{over()}, {over()}}, true);
    EXPECT_NEAR(likelihoodOf(d, chain, 1), .95864275, 1e-8); // class 0 is the healthy chain, 1 the open one
    EXPECT_NEAR(likelihoodOf(d, chain, 0), .00797, 1e-8);
    EXPECT_NEAR(loudLikelihood(weighed(chain, d.noise())), .4, 1e-12);
    EXPECT_NEAR(likelihoodOf(d, confirmed, 1), .923599523, 1e-9);
    EXPECT_NEAR(likelihoodOf(d, confirmed, 0), .000635946, 1e-9);
    EXPECT_NEAR(likelihoodOf(d, placed("P.ohm", {{over()}, {over()}}), 0), .00203582, 1e-8);
}

TEST(Ladder, BackFeedThroughAWireLeftOn)
{
    Dictionary d = ladder();
    const Reading back = ohm(2600, 1);
    const Placed once = placed("E.g1", {{back}});
    EXPECT_NEAR(likelihoodOf(d, once, 1), 1.532308e-7, 1e-12);  // P open: no way back
    EXPECT_NEAR(likelihoodOf(d, once, 0), 4.542248e-5, 1e-10);
    EXPECT_NEAR(likelihoodOf(d, placed("E.g1", {{back}, {back}}), 0), 1.067725e-7, 1e-12);
    EXPECT_NEAR(likelihoodOf(d, placed("E.g1", {{back}, {back}}, true), 0), 3.203176e-8, 1e-13);
    EXPECT_NEAR(likelihoodOf(d, placed("E.g1", {{ohm(12.4, .1)}}), 0), 3.212921e-6, 1e-11);
}

TEST(Ladder, DecibansOfEachPieceAddUp)
{
    Dictionary d = ladder();
    const std::vector<Evidence> all{kChain, kConfirmed, kCan, kElement, flap()};
    const Belief b = update(d, all);
    const std::vector<double> w = weights(d, b, std::vector{int{P}});
    ASSERT_EQ(w.size(), 5U);
    EXPECT_NEAR(w[0], 2.26475, 1e-5);
    EXPECT_NEAR(w[1], 18.87318 + 6.88728, 1e-5);
    EXPECT_NEAR(w[2], 2.52328, 1e-5);
    EXPECT_NEAR(w[3], 22.97193, 1e-5);
    EXPECT_NEAR(w[4], 7.97037, 1e-5);
    double sum = 0;
    for (const double x : w)
        sum += x;
    EXPECT_NEAR(sum, 61.58326 - .09247, 1e-5);
}

TEST(Ladder, WhatIfIsTheUpdate)
{
    Dictionary d = ladder();
    const std::vector<Evidence> before{kChain, kOnce};
    const Belief b = update(d, before);
    for (const Evidence &next : {kElement, Evidence(flap({"yes"})), Evidence(flap({"no"}))}) {
        const Posterior then = whatIf(d, b, next);
        const Belief after = update(d, std::vector<Evidence>{kChain, kOnce, next}, &b);
        for (std::size_t s = 0; s < then.suspects.size(); ++s)
            EXPECT_NEAR(then.suspects[s], after.now.suspects[s], 1e-14);
        EXPECT_NEAR(then.logEvidence, after.now.logEvidence, 1e-12);
    }
    const double yes = std::exp(whatIf(d, b, flap({"yes"})).logEvidence - b.now.logEvidence);
    const double no = std::exp(whatIf(d, b, flap({"no"})).logEvidence - b.now.logEvidence);
    EXPECT_NEAR(yes + no, 1, 1e-12);
}

TEST(Ladder, SlipAndContradiction)
{
    Dictionary d = ladder();
    // the cut-off OL, then closed when read again: one of the two was a slip
    const Belief torn = update(d, std::vector<Evidence>{kChain, placed("P.ohm", {{over()}, {ohm(.1, .1)}}, true)});
    const std::vector<SlipShare> shares = slipShares(d, torn);
    ASSERT_EQ(shares.size(), 3U);
    const auto retake = worthRetaking(shares);
    ASSERT_TRUE(retake.has_value());
    EXPECT_EQ(retake->entry, 1U);
    EXPECT_GT(retake->share, .9);
    EXPECT_FALSE(contradicts(shares));
    // everything in the chain reads whole, yet the chain reads OL twice: nothing listed explains it
    const Belief nonsense = update(d, std::vector<Evidence>{placed("chain", {{over()}, {over()}}, true),
                                                            placed("P.ohm", {{ohm(.1, .1)}, {ohm(.1, .1)}}, true),
                                                            placed("E.ohm", {{ohm(10.1, .1)}, {ohm(10.1, .1)}}, true)});
    EXPECT_TRUE(contradicts(slipShares(d, nonsense)));
    EXPECT_FALSE(contradicts(slipShares(d, update(d, std::vector<Evidence>{kChain, kConfirmed, kCan, kElement}))));
}

TEST(Ladder, EverythingMeasuredIsGood)
{
    Dictionary d = ladder();
    EXPECT_EQ(probabilityAllGood(d, update(d, {})), 0); // nothing measured
    EXPECT_LT(probabilityAllGood(d, update(d, std::vector<Evidence>{kChain})), .1);
    const Evidence whole = placed("chain", {{ohm(10.2, .1)}});
    EXPECT_GT(probabilityAllGood(d, update(d, std::vector<Evidence>{whole})), kAllGood);
}
