// SplitMix64's output for the seed 1234567 as its public-domain reference prints it (widely copied, from memory).
#include "core/base/random.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

using namespace core;

namespace {

TEST(Random, EqualsTheReference)
{
    Random random(1234567);
    for (const std::uint64_t expected : {6457827717110365317ULL, 3203168211198807973ULL, 9817491932198370423ULL,
                                         4593380528125082431ULL, 16408922859458223821ULL})
        EXPECT_EQ(random.next(), expected);
}

TEST(Random, SameSeedSameNumbers)
{
    Random one(42), other(42), third(43);
    EXPECT_EQ(one.next(), other.next());
    EXPECT_NE(one.next(), third.next());
}

// Bounds of five standard deviations: the seed is fixed, so they hold or do not hold for ever.
TEST(Random, UniformFillsItsRange)
{
    Random random(7);
    constexpr int kDraws = 100000;
    double sum = 0, least = 1, most = 0;
    for (int i = 0; i < kDraws; ++i) {
        const double x = random.uniform();
        ASSERT_GE(x, 0);
        ASSERT_LT(x, 1);
        sum += x;
        least = std::min(least, x);
        most = std::max(most, x);
    }
    EXPECT_NEAR(sum / kDraws, .5, 5 / std::sqrt(12.0 * kDraws)); // variance of U(0,1): 1/12
    EXPECT_LT(least, 1e-3);
    EXPECT_GT(most, 1 - 1e-3);
}

TEST(Random, NormalHasItsMoments)
{
    Random random(8);
    constexpr int kDraws = 100000;
    double sum = 0, squares = 0, cubes = 0;
    int inside = 0;
    for (int i = 0; i < kDraws; ++i) {
        const double x = random.normal(10, 2);
        const double z = (x - 10) / 2;
        sum += z;
        squares += z * z;
        cubes += z * z * z;
        inside += std::abs(z) < 1 ? 1 : 0;
    }
    EXPECT_NEAR(sum / kDraws, 0, 5 / std::sqrt(kDraws));
    EXPECT_NEAR(squares / kDraws, 1, 5 * std::sqrt(2.0 / kDraws));
    EXPECT_NEAR(cubes / kDraws, 0, 5 * std::sqrt(15.0 / kDraws));
    EXPECT_NEAR(static_cast<double>(inside) / kDraws, .682689,
                5 * std::sqrt(.6827 * .3173 / kDraws)); // the 68 % of the handbooks
}

TEST(Random, BelowIsEven)
{
    Random random(9);
    std::array<int, 6> counts{};
    for (int i = 0; i < 60000; ++i)
        ++counts.at(static_cast<std::size_t>(random.below(6)));
    double chiSquared = 0;
    for (const int c : counts)
        chiSquared += (c - 10000) * (c - 10000) / 10000.0;
    EXPECT_LT(chiSquared, 20.515); // chi-squared, 5 degrees of freedom, .999 (Abramowitz and Stegun, table 26.8)
    EXPECT_EQ(random.below(1), 0);
}

TEST(Random, ChanceOfNothingAndOfAll)
{
    Random random(10);
    for (int i = 0; i < 1000; ++i) {
        EXPECT_FALSE(random.chance(0));
        EXPECT_TRUE(random.chance(1));
    }
}

} // namespace
