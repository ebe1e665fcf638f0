// The standard normal distribution against Abramowitz and Stegun, Handbook of Mathematical Functions, tables 26.1 and
// 26.5, and against Boost.Math in the tails.
#include "core/base/normal.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>

using namespace core;

namespace {

TEST(NormalCdf, TableOfTheHandbook)
{
    EXPECT_NEAR(normalCdf(0), .5, 1e-15);
    EXPECT_NEAR(normalCdf(1), .841344746068543, 1e-14);
    EXPECT_NEAR(normalCdf(1.96), .975002104851780, 1e-14);
    EXPECT_NEAR(normalCdf(2), .977249868051821, 1e-14);
    EXPECT_NEAR(normalCdf(3), .998650101968370, 1e-14);
    EXPECT_NEAR(normalDensity(0), .398942280401433, 1e-15);
    EXPECT_NEAR(normalDensity(1), .241970724519143, 1e-15);
}

TEST(NormalCdf, EqualsBoostInBothTails)
{
    const boost::math::normal_distribution<double> reference;
    for (double z = -37; z <= 8; z += .37) {
        const double expected = boost::math::cdf(reference, z);
        EXPECT_NEAR(normalCdf(z) / expected, 1, 1e-12) << z;
    }
}

TEST(NormalBetween, NoCancellationInTheUpperTail)
{
    const boost::math::normal_distribution<double> reference;
    for (const double z : {5.0, 8.0, 12.0, 20.0}) {
        const double expected = boost::math::cdf(complement(reference, z)) - boost::math::cdf(complement(reference, z + .5));
        EXPECT_NEAR(normalBetween(z, z + .5) / expected, 1, 1e-10) << z;
        EXPECT_NEAR(normalBetween(-z - .5, -z) / expected, 1, 1e-10) << z;
    }
    EXPECT_NEAR(normalBetween(-1, 1), .682689492137086, 1e-14); // erf(1/sqrt 2)
    EXPECT_EQ(normalBetween(1, 1), 0);
    EXPECT_EQ(normalBetween(2, 1), 0);
}

} // namespace
