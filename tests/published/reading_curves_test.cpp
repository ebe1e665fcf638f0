// Resistance and temperature against published tables.
#include "core/reading/curves.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

using namespace core;

namespace {

struct Row
{
    double celsius, ohm;
};

// IEC 60751, table of Pt100 values as makers' manuals reprint it; three decimals below, two or three above 0 C.
TEST(Platinum, TableOfIec60751)
{
    for (const Row &row : std::initializer_list<Row>{
             {-200, 18.520}, {-190, 22.825}, {-180, 27.096}, {-170, 31.335}, {-160, 35.543}, {-150, 39.723}, {-140, 43.876},
             {-130, 48.005}, {-120, 52.110}, {-110, 56.193}, {-100, 60.256}, {-90, 64.300},  {-80, 68.325},  {-40, 84.271},
             {-20, 92.160},  {0, 100},       {20, 107.794},  {25, 109.735},  {50, 119.397},  {80, 130.897},  {100, 138.506},
             {130, 149.832}, {200, 175.856}, {300, 212.052}, {400, 247.092}, {500, 280.978}, {800, 375.704}, {850, 390.481}}) {
        EXPECT_NEAR(platinumOhm(100, row.celsius), row.ohm, .0011) << row.celsius;
        const auto back = platinumCelsius(100, row.ohm);
        ASSERT_TRUE(back) << row.celsius;
        EXPECT_NEAR(*back, row.celsius, .004) << row.celsius; // 0.0011 ohm is 0.003 to 0.004 K
    }
}

// The same standard for Pt1000, one decimal, as a published table of tenfold elements prints it.
TEST(Platinum, Pt1000Table)
{
    for (const Row &row : std::initializer_list<Row>{
             {-79, 687.3}, {-50, 803.1}, {-40, 842.7}, {-30, 882.2}, {-20, 921.6}, {-10, 960.9}, {1, 1003.9}})
        EXPECT_NEAR(platinumOhm(1000, row.celsius), row.ohm, .051) << row.celsius;
}

// IEC 60751 defines alpha = (R100 - R0) / (100 R0) = 0.003851 1/K.
TEST(Platinum, Alpha)
{
    EXPECT_NEAR((platinumOhm(100, 100) - platinumOhm(100, 0)) / 100 / 100, .003851, 1e-6);
}

TEST(Platinum, InverseOverTheWholeRange)
{
    for (double t = -200; t <= 850; t += 3.7) {
        const auto back = platinumCelsius(1000, platinumOhm(1000, t));
        ASSERT_TRUE(back);
        EXPECT_NEAR(*back, t, 1e-8);
    }
    EXPECT_FALSE(platinumCelsius(1000, 100));
    EXPECT_FALSE(platinumCelsius(1000, 4000));
    EXPECT_FALSE(platinumCelsius(1000, std::nan("")));
}

TEST(Platinum, SlopeIsTheDerivative)
{
    const Curve curve{Curve::Family::Platinum, 1000, 0};
    for (const double t : {-150.0, -30.0, 20.0, 177.0, 600.0})
        EXPECT_NEAR(curveSlope(curve, t), (platinumOhm(1000, t + .01) - platinumOhm(1000, t - .01)) / .02, 1e-4) << t;
}

// IEC 60539-1: B25/85 = ln(R25/R85) / (1/T25 - 1/T85) = 1779.7 K ln(R25/R85).
TEST(Ntc, DefinitionOfB)
{
    EXPECT_NEAR(1779.707 * std::log(ntcOhm(10e3, 3950, 25) / ntcOhm(10e3, 3950, 85)), 3950, .01);
    EXPECT_DOUBLE_EQ(ntcOhm(10e3, 3950, 25), 10e3);
}

// A bead's own table by the widely published three-constant equation (A 1.129148e-3, B 2.34125e-4, C 8.76741e-8; the
// constants print 10 k at 25 C and B25/85 3977). One B follows it within 2 % from 10 to 100 C, 4 % at 0 and 11 % at -20 C.
TEST(Ntc, OneBFollowsABeadsTable)
{
    for (const Row &row : std::initializer_list<Row>{
             {25, 9999.85}, {37, 6014.2}, {10, 19902.9}, {50, 3601.0}, {75, 1480.1}, {85, 1070.5}, {100, 678.4}})
        EXPECT_NEAR(ntcOhm(10e3, 3976.7, row.celsius) / row.ohm, 1, .02) << row.celsius;
    EXPECT_NEAR(ntcOhm(10e3, 3976.7, 0) / 32650.4, 1, .04);
    EXPECT_NEAR(ntcOhm(10e3, 3976.7, -20) / 97005, 1, .11);
}

TEST(Ntc, InverseAndSlope)
{
    const Curve curve{Curve::Family::Ntc, 10e3, 3950};
    for (double t = -40; t <= 150; t += 7) {
        EXPECT_NEAR(curveCelsius(curve, curveOhm(curve, t)).value(), t, 1e-9);
        EXPECT_NEAR(curveSlope(curve, t) / ((curveOhm(curve, t + .001) - curveOhm(curve, t - .001)) / .002), 1, 1e-6);
    }
    // -B/T^2 at 25 C: -3950 / 298.15^2 = -4.44 % per kelvin
    EXPECT_NEAR(curveSlope(curve, 25) / 10e3, -.044435, 1e-6);
    EXPECT_FALSE(ntcCelsius(10e3, 3950, 0));
    EXPECT_FALSE(ntcCelsius(10e3, 3950, -5));
    EXPECT_FALSE(ntcCelsius(10e3, 3950, 1e-3)); // beyond any temperature
}

TEST(Ntc, AnotherFamilyFits)
{
    const Curve assumed{Curve::Family::Ntc, 10e3, 3950};
    // 0 C tells the two 10 k families apart: 33.6 against 28.7 kohm (B equation)
    const std::array points{CurvePoint{0, 28.7e3}, CurvePoint{25, 10.0e3}};
    const auto other = anotherFamily(assumed, points, .1, .5);
    ASSERT_TRUE(other);
    EXPECT_EQ(other->beta, 3435);
    EXPECT_EQ(other->r0, 10e3);
    const std::array own{CurvePoint{0, 33.6e3}, CurvePoint{25, 10.1e3}};
    EXPECT_FALSE(anotherFamily(assumed, own, .1, .5)); // the assumed one fits: nothing to say
    const std::array broken{CurvePoint{0, 2e3}, CurvePoint{25, 10e3}};
    EXPECT_FALSE(anotherFamily(assumed, broken, .1, .5));
    const std::array one{CurvePoint{25, 10.0e3}};
    EXPECT_FALSE(anotherFamily(assumed, one, .1, .5)); // one temperature does not tell them apart
    EXPECT_FALSE(anotherFamily(assumed, {}, .1, .5));
    // doubt of the temperature widens: 3 K are some 15 % at 0 C
    EXPECT_TRUE(fits(assumed, points, .1, 3));
}

// IEC 60335-1 resistance method, UL clauses on motors: 80 ohm at 20 C that became 100 ohm is at 83.6 C, a rise of 63.6 K
// (a worked textbook exercise).
TEST(Copper, ResistanceMethod)
{
    EXPECT_NEAR(copperCelsius(80, 20, 100), 83.625, 1e-9);
    EXPECT_NEAR(copperOhm(80, 20, 83.625), 100, 1e-9);
    EXPECT_NEAR(copperOhm(1, 20, 75), 1.2161, 5e-5);  // handbooks' factor from 20 to 75 C
    EXPECT_NEAR(copperOhm(1, 20, 100), 1.3143, 5e-5); // and to 100 C
    const Curve winding{Curve::Family::Copper, 2.3, 0};
    EXPECT_NEAR(curveCelsius(winding, copperOhm(2.3, 20, 97)).value(), 97, 1e-9);
    EXPECT_NEAR(curveSlope(winding, 20) / 2.3, .00393, 1e-5); // alpha20 of IEC 60028 annealed copper
}

// Ohm's law; +5/-10 % of rated input is IEC 60335-1 clause 10 for heating appliances over 200 W (clause from memory).
TEST(Heater, FromItsPlate)
{
    EXPECT_NEAR(heaterHotOhm(240, 5400), 10.667, 5e-4);
    EXPECT_NEAR(heaterHotOhm(230, 2200), 24.045, 5e-4);
    EXPECT_NEAR(heaterHotOhm(240, 4500), 12.8, 1e-12);
    EXPECT_NEAR(heaterHotOhm(230, 2200 * 1.05), 22.900, 5e-4);
    EXPECT_NEAR(heaterHotOhm(230, 2200 * .9), 26.717, 5e-4);
    // a wire maker's worked example: 750 W at 240 V, factor 1.071: 71.7 ohm cold
    EXPECT_NEAR(heaterColdOhm(240, 750, 1.071), 71.7, .05);
}

} // namespace
