// Uncertainty and conformity against JCGM 100:2008 (GUM) and JCGM 106:2012. The worked examples are from memory of the
// printed guides; their results follow from their inputs.
#include "core/reading/conformity.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>
#include <cmath>

using namespace core;

namespace {

constexpr double kInf = Limits::kNone;

// JCGM 106:2012, 7.4 example 1 (Zener diode, upper limit): printed 0.92
TEST(Conformance, UpperLimit)
{
    EXPECT_NEAR(conformance(-5.47, .05, -kInf, -5.40), .92, .005);
    EXPECT_NEAR(conformance(-5.47, .05, -kInf, -5.40), .919243, 1e-6);
}

// JCGM 106:2012, 7.4 example 2 (container strength, lower limit): printed 0.99
TEST(Conformance, LowerLimit)
{
    EXPECT_NEAR(conformance(509.7, 8.6, 490, kInf), .99, .005);
}

// JCGM 106:2012, 7.5 (kinematic viscosity, two-sided): printed 0.66
TEST(Conformance, TwoSided)
{
    EXPECT_NEAR(conformance(13.6, 1.8, 12.5, 16.3), .66, .005);
    EXPECT_NEAR(conformance(13.6, 1.8, 12.5, 16.3), .662630, 1e-6);
}

// JCGM 106:2012, table 1: z = (T_U - y) / u and the probability of conformity that belongs to it
TEST(Conformance, TableOne)
{
    EXPECT_NEAR(conformance(-.84, 1, -kInf, 0), .80, .001);
    EXPECT_NEAR(conformance(-1.28, 1, -kInf, 0), .90, .001);
    EXPECT_NEAR(conformance(-1.64, 1, -kInf, 0), .95, .001);
    EXPECT_NEAR(conformance(-2.33, 1, -kInf, 0), .99, .001);
    EXPECT_NEAR(conformance(-3.09, 1, -kInf, 0), .999, .0001);
}

// A guard band of one expanded uncertainty leaves less than 2.5 % of false acceptance (ILAC-G8:09/2019), 1.65 u 5 %
// (ISO 14253-1:2017).
TEST(Conformance, GuardBands)
{
    EXPECT_LT(1 - conformance(-2, 1, -kInf, 0), .025);
    EXPECT_NEAR(1 - conformance(-1.645, 1, -kInf, 0), .05, 5e-5);
}

TEST(Conformance, EqualsBoost)
{
    const boost::math::normal_distribution<double> reference;
    for (double y = -6; y <= 6; y += .31)
        for (const double u : {.3, 1.0, 4.0}) {
            const double expected = boost::math::cdf(reference, (1.5 - y) / u) - boost::math::cdf(reference, (-1 - y) / u);
            EXPECT_NEAR(conformance(y, u, -1, 1.5), expected, 1e-14);
        }
}

TEST(Conformance, MoreUncertaintyPullsTowardsDoubt)
{
    for (double u = .1; u < 3; u += .1) {
        EXPECT_GT(conformance(1, u, -kInf, 2), conformance(1, u + .1, -kInf, 2)); // inside: less sure
        EXPECT_LT(conformance(3, u, -kInf, 2), conformance(3, u + .1, -kInf, 2)); // outside: less sure
    }
    EXPECT_EQ(conformance(1, 0, 0, 2), 1);
    EXPECT_EQ(conformance(3, 0, 0, 2), 0);
}

Judgement volts(double amount, double step, const Accuracy &sheet)
{
    Meter meter;
    meter.accuracy["voltage_dc"] = sheet;
    Reading reading;
    reading.amount = {amount, Unit::Volt};
    reading.step = step;
    Limits limits;
    limits.unit = Unit::Volt;
    limits.lo = 0;
    limits.hi = 1000;
    return judge(reading, limits, Measure::VoltageDc, meter);
}

// JCGM 100:2008, 4.3.7 example 2: 14e-6 of the reading plus 2e-6 of the 1 V range at 0.928571 V: a = 15 uV, u = 8.7 uV
TEST(MeterUncertainty, SheetIsARectangularDistribution)
{
    EXPECT_NEAR(halfWidth({.0014, 2}, .928571, 1e-6), 15e-6, .01e-6);
    EXPECT_NEAR(volts(.928571, 1e-6, {.0014, 2}).u, 8.7e-6, .05e-6);
}

// Handbook examples of +-(percent of reading + counts): 32.00 V at 2.5 % + 3 is +-0.83 V; 0.09 V is +-0.03225 V;
// 100.0 V at 0.8 % + 2 is +-1.0 V; 120.0 V at 0.7 % + 2 is 118.96 to 121.04 V.
TEST(MeterUncertainty, PercentAndCounts)
{
    EXPECT_NEAR(halfWidth({2.5, 3}, 32, .01), .83, 1e-12);
    EXPECT_NEAR(halfWidth({2.5, 3}, .09, .01), .03225, 1e-12);
    EXPECT_NEAR(halfWidth({.8, 2}, 100, .1), 1, 1e-12);
    EXPECT_NEAR(120 - halfWidth({.7, 2}, 120, .1), 118.96, 1e-9);
    EXPECT_NEAR(halfWidth({.7, 2}, -120, .1), 1.04, 1e-12);
}

// JCGM 100:2008, F.2.2.1: a display step alone is 0.29 of the step
TEST(MeterUncertainty, ResolutionAlone)
{
    EXPECT_NEAR(volts(5, .1, {0, 0}).u, .029, .0005);
}

// EA-4/02, example S9 (hand-held multimeter at 100 V): limits 0.05 and 0.011 as rectangles: combined 0.030 V
TEST(MeterUncertainty, RectanglesAddInSquares)
{
    const double step = .05 * 2; // resolution +-0.05 V
    EXPECT_NEAR(volts(100, step, {.011, 0}).u, .0297, .0005);
}

} // namespace
