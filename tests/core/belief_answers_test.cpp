// What a try puts right, and how answers add up.
#include "core/belief/belief.h"

#include <gtest/gtest.h>

#include <algorithm>

using namespace core;

namespace {

Suspects resetAndPart()
{
    Suspects s;
    s.list = {{"breaker", "breaker", "", .5, {Cell{}}}, {"P.open", "P", "open", .5, {Cell{}}}};
    return s;
}

Answered resetBreaker(const char *answer)
{
    Answered a;
    a.id = "reset";
    a.answers = {"warm now", "still cold"};
    a.speaksFor = {{0}, {}};
    a.gone = 0;
    a.putsRight = {0};
    a.again = .2;
    a.given = {answer};
    return a;
}

Placed lampAt(std::size_t index, bool works)
{
    Placed p;
    p.placement = {"supply", index, {}};
    p.measure = Measure::VoltageAc;
    Reading r;
    r.amount = {works ? 240. : 0., Unit::Volt};
    r.step = 1;
    p.seatings = {{r}};
    return p;
}

} // namespace

// "Gone" is expected only where nothing else explains the complaint; afterwards the breaker is set, whatever was answered.
TEST(Try, WhatItPutsRightIsRightAfterwards)
{
    const Suspects s = resetAndPart();
    Predictor predictor;
    predictor.predict = [](const Placement &, std::span<const Fault> faults) {
        const bool tripped = std::ranges::any_of(faults, [](const Fault &f) { return f.suspect == 0; });
        const Prediction p = finitePrediction(tripped ? 0 : 240, 5);
        return Predicted{p, p};
    };
    Dictionary d(s, hypothesesOf(s), predictor, Meter{});
    const Belief warm = update(d, std::vector<Evidence>{resetBreaker("warm now")});
    const Belief cold = update(d, std::vector<Evidence>{resetBreaker("still cold")});
    EXPECT_GT(warm.now.suspects[0], .9);
    EXPECT_LT(cold.now.suspects[0], .25);
    EXPECT_EQ(cold.putRight, std::vector<int>{0});
    // "warm now" speaks against both at once: with the part open as well it would have stayed cold
    const double both = warm.now.suspects[0] + warm.now.suspects[1] + warm.now.quiet + warm.now.loud - 1;
    EXPECT_LT(both, .01);
    // before the reset no supply speaks for the breaker; after it, it cannot
    const Belief before = update(d, std::vector<Evidence>{lampAt(0, false), resetBreaker("still cold")});
    const Belief after = update(d, std::vector<Evidence>{resetBreaker("still cold"), lampAt(0, false)});
    EXPECT_GT(before.now.suspects[0], .9);
    EXPECT_LE(after.now.suspects[0], cold.now.suspects[0]);
    EXPECT_EQ(update(d, std::vector<Evidence>{resetBreaker("cannot do")}).putRight, std::vector<int>{});
}

TEST(Answers, AddUpToOneWhateverIsThere)
{
    Answered a;
    a.answers = {"free", "stiff", "rumbles"};
    a.speaksFor = {{}, {0}, {1}};
    for (const Hits hits : {Hits{}, Hits{2, 1}, Hits{4, 1}, Hits{6, 2}, Hits{2, 2}, Hits{0, 1}}) {
        double sum = 0;
        for (std::size_t i = 0; i < 3; ++i)
            sum += answerChance(a, i, hits);
        EXPECT_NEAR(sum, 1, 1e-12);
    }
    EXPECT_NEAR(answerChance(a, 1, Hits{2, 1}), .85, 1e-12);
    EXPECT_NEAR(answerChance(a, 0, Hits{}), .94, 1e-12);
    a.speaksFor = {{}, {}, {}}; // speaks for nobody: says nothing
    EXPECT_NEAR(answerChance(a, 0, Hits{}), 1. / 3, 1e-12);
}

TEST(Answers, ARepeatedAnswerSaysLess)
{
    Answered once;
    once.answers = {"yes", "no"};
    once.speaksFor = {{0}, {}};
    once.given = {"yes"};
    Answered twice = once;
    twice.given = {"yes", "yes"};
    const auto factor = [](const Answered &a) { return likelihood(a, {1, 1}) / likelihood(a, {}); };
    EXPECT_NEAR(factor(once), .85 / .06, 1e-12);
    EXPECT_GT(factor(twice), factor(once));
    EXPECT_LT(factor(twice), factor(once) * 1.4); // .7 + .3 x .85 against .7 + .3 x .06
}
