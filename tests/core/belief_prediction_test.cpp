// Probability of a displayed reading. The figures were computed apart from this code, in double precision with
// numpy and scipy's normal distribution; G and F follow from integrating the normal distribution function.
#include "core/belief/prediction.h"

#include "core/base/normal.h"
#include "core/base/random.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace core;

namespace {

Reading value(double v, double step, Unit unit = Unit::Ohm)
{
    Reading r;
    r.amount = {v, unit};
    r.step = step;
    return r;
}

Reading word(Reading::What what)
{
    Reading r;
    r.what = what;
    return r;
}

Meter meter(std::optional<double> zero = 0.)
{
    Meter m;
    if (zero)
        m.probeZero = Amount{*zero, Unit::Ohm};
    return m;
}

double ohms(const Prediction &p, const Reading &r, const Meter &m = meter()) { return probability(p, r, Measure::Resistance, m); }

const Prediction kElement = finitePrediction(10, .7);
const Prediction kContact = finitePrediction(.08, .05);
const Reading kOver = word(Reading::What::OverLimit);

} // namespace

TEST(Prediction, IntegralOfTheNormalDistributionFunction)
{
    EXPECT_NEAR(integralOfNormalCdf(0), .398942280, 1e-9);
    EXPECT_NEAR(integralOfNormalCdf(1), 1.083315471, 1e-9);
    EXPECT_NEAR(integralOfNormalCdf(-1), .083315471, 1e-9);
    EXPECT_DOUBLE_EQ(integralOfNormalCdf(9), 9);
    EXPECT_DOUBLE_EQ(integralOfNormalCdf(-9), 0);
}

TEST(Prediction, NormalPlusUniform)
{
    EXPECT_NEAR(normalPlusUniformCdf(10.65, 10, std::sqrt(.7 * .7 + .07 * .07), .2954), .815310473, 1e-9);
    EXPECT_DOUBLE_EQ(normalPlusUniformCdf(1, 1, 0, 0), 1);
    EXPECT_DOUBLE_EQ(normalPlusUniformCdf(1.5, 1, 0, 1), .75); // a rectangle alone
    EXPECT_NEAR(normalPlusUniformCdf(2, 1, 1, 0), normalCdf(1), 1e-15);
}

// against the definition, integrated numerically: the mean of Phi((x - mu - t)/s) over -A < t < A
TEST(Prediction, NormalPlusUniformIsTheConvolution)
{
    Random random(7);
    for (int i = 0; i < 300; ++i) {
        const double mu = random.uniform(-5, 50), s = random.uniform(.05, 5), a = random.uniform(.01, 20);
        const double x = mu + random.uniform(-3, 3) * (s + a);
        double sum = 0;
        constexpr int kSteps = 4000;
        for (int k = 0; k < kSteps; ++k)
            sum += normalCdf((x - mu - a * (2 * (k + .5) / kSteps - 1)) / s);
        EXPECT_NEAR(normalPlusUniformCdf(x, mu, s, a), sum / kSteps, 1e-5) << mu << ' ' << s << ' ' << a << ' ' << x;
    }
}

TEST(Prediction, Element)
{
    EXPECT_NEAR(ohms(kElement, value(10.6, .1)), .039084327, 1e-9);
    EXPECT_NEAR(ohms(kElement, value(10.6, .1), meter(std::nullopt)), .049840242, 1e-9);
    EXPECT_NEAR(ohms(kElement, value(10.3, .1)), .050549168, 1e-9);
    EXPECT_EQ(ohms(kElement, kOver), 0);
    EXPECT_EQ(ohms(kElement, word(Reading::What::Jumps)), .005);
}

TEST(Prediction, Contact)
{
    EXPECT_NEAR(ohms(kContact, value(0, .1)), .426697338, 1e-9);
    EXPECT_NEAR(ohms(kContact, value(.1, .1)), .241312355, 1e-9);
    EXPECT_NEAR(ohms(kContact, value(.3, .1)), .104716282, 1e-9);
    EXPECT_NEAR(ohms(kContact, value(.3, .1), meter(std::nullopt)), .182057538, 1e-9);
}

TEST(Prediction, ProbesZeroIsAdded) // tips together showed 0.3: a contact of .08 shows what one of .38 would
{
    EXPECT_NEAR(ohms(kContact, value(.4, .1), meter(.3)), ohms(finitePrediction(.38, .05), value(.4, .1)), 1e-12);
}

TEST(Prediction, Open)
{
    EXPECT_EQ(ohms(openPrediction(), kOver), .97);
    EXPECT_NEAR(ohms(openPrediction(), value(2.3e6, 1e3)), 2.177010e-6, 1e-12);
    EXPECT_EQ(ohms(openPrediction(), value(99e3, 100)), 0);
    EXPECT_EQ(ohms(openPrediction(), word(Reading::What::Jumps)), .005);
}

TEST(Prediction, OpenAddsUpToOne) // over the whole display from 100 kohm to 40 Mohm in steps of 1 kohm, and OL
{
    double sum = ohms(openPrediction(), kOver);
    for (int k = 100; k < 40000; ++k)
        sum += ohms(openPrediction(), value((k + .5) * 1e3, 1e3));
    EXPECT_NEAR(sum, 1, 1e-6);
}

TEST(Prediction, FiniteAddsUpToOne) // every value a display of 0.1 ohm steps can show
{
    for (const Prediction &p : {kContact, kElement, finitePrediction(19.5, 0, 14.5)}) {
        double sum = 0;
        for (int k = 0; k < 1000; ++k)
            sum += ohms(p, value(k * .1, .1));
        EXPECT_NEAR(sum, 1, .02); // the meter's error grows with the value shown, so it is no exact partition
    }
}

TEST(Prediction, CellShowsItsSpanEvenly)
{
    EXPECT_NEAR(ohms(finitePrediction(19.5, 0, 14.5), value(12.4, .1)), .003448276, 1e-9);
}

TEST(Prediction, JumpingContact)
{
    const Prediction jumping = jumpingPrediction(openPrediction(), kContact);
    EXPECT_NEAR(ohms(jumping, word(Reading::What::Jumps)), .602, 1e-12);
    EXPECT_NEAR(ohms(jumping, kOver), .2425, 1e-12);
    EXPECT_NEAR(ohms(jumping, value(.1, .1)), .036196853, 1e-9);
}

TEST(Prediction, Tone) // a threshold anywhere in 20 to 50 ohm: 35 +- 15
{
    Meter m = meter();
    const double s = std::sqrt(2. * 2 - .07 * .07); // with the probes' .07 it makes 2
    EXPECT_NEAR(probability(finitePrediction(30, s), word(Reading::What::Tone), Measure::Continuity, m), .666666663, 1e-9);
    EXPECT_NEAR(probability(finitePrediction(30, s), word(Reading::What::NoTone), Measure::Continuity, m), .333333337, 1e-9);
    EXPECT_EQ(probability(openPrediction(), word(Reading::What::NoTone), Measure::Continuity, m), 1);
    EXPECT_EQ(probability(openPrediction(), word(Reading::What::Tone), Measure::Continuity, m), 0);
}

TEST(Prediction, ManualRangeRunsOver)
{
    Meter m = meter();
    m.autoRange = false;
    m.top = 200;
    m.displayCounts = 2000;
    const double s = std::sqrt(5. * 5 - .07 * .07); // with the probes' .07 it makes 5
    EXPECT_NEAR(ohms(finitePrediction(190, s), kOver, m), .025651905, 1e-9);
    EXPECT_EQ(ohms(finitePrediction(190, 5), kOver), 0);
}

TEST(Prediction, FarUpMayPassTheTop) // 1 - Phi((ln T - ln mu) / .5)
{
    EXPECT_NEAR(ohms(finitePrediction(40e6, 1), kOver), .5, 1e-12);
    EXPECT_LT(ohms(finitePrediction(2e6, 1), kOver), 1e-8);
}

TEST(Slip, Ohms)
{
    EXPECT_EQ(slipDensity(kOver, Measure::Resistance), .40);
    EXPECT_EQ(slipDensity(word(Reading::What::Jumps), Measure::Resistance), .10);
    EXPECT_NEAR(slipDensity(value(0, .1), Measure::Resistance), .014285714, 1e-9);
    EXPECT_NEAR(slipDensity(value(10.6, .1), Measure::Resistance), 1.886333e-4, 1e-10);
    EXPECT_NEAR(slipDensity(value(2.3e6, 1e3), Measure::Resistance), 8.693471e-6, 1e-12);
}

TEST(Slip, Volts)
{
    EXPECT_NEAR(slipDensity(value(0, .1, Unit::Volt), Measure::VoltageAc), .006230769, 1e-9);
    EXPECT_NEAR(slipDensity(value(120, .1, Unit::Volt), Measure::VoltageAc), 2.307692e-4, 1e-10);
    EXPECT_EQ(slipDensity(word(Reading::What::Jumps), Measure::VoltageAc), .10);
}

TEST(Slip, AddsUpToOne)
{
    double ohm = .50;
    for (int k = 0; k < 20; ++k)
        ohm += slipDensity(value(k * .1, .1), Measure::Resistance);
    ohm += .35 * std::log(40e6 / 1.95) / std::log(4e7);
    EXPECT_NEAR(ohm, 1, .02);
    double volt = .10;
    for (int k = 0; k <= 2600; ++k)
        volt += slipDensity(value(k * .1, .1, Unit::Volt), Measure::VoltageAc);
    EXPECT_NEAR(volt, 1, .01);
    EXPECT_NEAR(slipDensity(word(Reading::What::Tone), Measure::Continuity)
                    + slipDensity(word(Reading::What::NoTone), Measure::Continuity) + .10, 1, 1e-12);
}

TEST(Slip, NothingIsImpossible)
{
    for (const Measure m : {Measure::Resistance, Measure::Continuity, Measure::Capacitance, Measure::Diode, Measure::VoltageAc,
                            Measure::CurrentClamp, Measure::Frequency, Measure::Duty, Measure::Temperature, Measure::OpensAt})
        for (const double v : {-17., 0., .1, 90., 5e3, 1e9})
            EXPECT_GT(slipDensity(value(v, .1), m), 0);
}

TEST(Different, TwiceErrorAndStep)
{
    const auto differ = [](double a, double b) { return different(value(a, .1), value(b, .1), Measure::Resistance); };
    EXPECT_FALSE(differ(10.3, 10.8)); // 2 (.9 % of 10.8 + .2 + .1) = .79
    EXPECT_TRUE(differ(10.3, 11.2));
    EXPECT_TRUE(different(value(.1, .1), kOver, Measure::Resistance));
    EXPECT_FALSE(different(kOver, kOver, Measure::Resistance));
}

TEST(Probability, IsAProbabilityWhateverIsAsked)
{
    Random random(3);
    for (int i = 0; i < 20000; ++i) {
        const double mu = std::exp(random.uniform(-5, 20)), h = random.chance(.5) ? mu * random.uniform(0, 1) : 0;
        const Prediction p = mixed(random.uniform(), finitePrediction(mu, mu * random.uniform(0, .2), h), openPrediction());
        const double shown = std::exp(random.uniform(-4, 19));
        const double step = std::pow(10, std::floor(std::log10(shown)) - 2);
        const double chance = ohms(p, value(shown, step));
        ASSERT_TRUE(chance >= 0 && chance <= 1) << mu << ' ' << h << ' ' << shown << ' ' << chance;
    }
}
