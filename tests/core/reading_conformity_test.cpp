// What a reading says of a part. Worked numbers: computed outside this program in double precision (numpy); the rules of
// the tone (20 to 50 ohm), of probes that were not zeroed and of a manual range are common practice, no source.
#include "core/reading/conformity.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace core;

namespace {

constexpr double kInf = Limits::kNone;

Reading ohm(double value, double step)
{
    Reading r;
    r.amount = {value, Unit::Ohm};
    r.step = step;
    return r;
}

Reading of(double value, Unit unit, double step)
{
    Reading r = ohm(value, step);
    r.amount.unit = unit;
    return r;
}

Reading said(Reading::What what)
{
    Reading r;
    r.what = what;
    return r;
}

Meter zeroed()
{
    Meter meter;
    meter.probeZero = Amount{0, Unit::Ohm};
    return meter;
}

Meter manual(double top)
{
    Meter meter = zeroed();
    meter.autoRange = false;
    meter.top = top;
    return meter;
}

Limits contact()
{
    Limits l;
    l.lo = 0;
    l.hi = .5;
    l.badAbove = 1;
    return l;
}

Limits element() // 240 V 5400 W, plate read
{
    Limits l;
    l.lo = 9.39;
    l.hi = 12.27;
    l.badBelow = 8;
    l.badAbove = 13.87;
    l.basis = Basis::Plate;
    return l;
}

Limits open(double badBelow)
{
    Limits l;
    l.openIsGood = true;
    l.openIsBad = false;
    l.badBelow = badBelow;
    return l;
}

Judgement judged(const Reading &r, const Limits &l, const Meter &meter = zeroed(), Measure measure = Measure::Resistance)
{
    return judge(r, l, measure, meter);
}

TEST(Conformity, WorkedNumbers)
{
    Limits half = contact();
    const Judgement zero = judged(ohm(.7, .1), half);
    EXPECT_NEAR(zero.u, .141137864, 1e-9);
    EXPECT_NEAR(zero.pGood, .078233544, 1e-9);
    EXPECT_EQ(zero.conformity, Conformity::OutNear);
    const Judgement raw = judged(ohm(.7, .1), half, {});
    EXPECT_NEAR(raw.u, .193700533, 1e-9);
    EXPECT_NEAR(raw.pGood, .697163878, 1e-9);
    EXPECT_EQ(raw.conformity, Conformity::GoodNear);
    Limits band;
    band.lo = 8.8;
    band.hi = 11.5;
    const Judgement near = judged(ohm(11.6, .1), band);
    EXPECT_NEAR(near.u, .191362971, 1e-9);
    EXPECT_NEAR(near.pGood, .300637757, 1e-9);
    EXPECT_TRUE(near.near);
    EXPECT_NEAR(judged(ohm(13.4, .1), band).pGood / 1.04e-21, 1, .01);
}

TEST(Conformity, TheFourSteps)
{
    Limits l;
    l.lo = -kInf;
    l.hi = 100;
    l.badAbove = 100;
    const auto at = [&](double value) { return judged(ohm(value, .1), l); }; // u about 0.57
    EXPECT_EQ(at(97).conformity, Conformity::Good);
    EXPECT_TRUE(at(97).clears);
    EXPECT_FALSE(at(97).near);
    EXPECT_EQ(at(99.6).conformity, Conformity::GoodNear);
    EXPECT_FALSE(at(99.6).clears);
    EXPECT_TRUE(at(99.6).near);
    EXPECT_EQ(at(100.4).conformity, Conformity::OutNear);
    EXPECT_FALSE(at(100.4).convicts);
    EXPECT_EQ(at(103).conformity, Conformity::Out);
    EXPECT_TRUE(at(103).convicts);
    EXPECT_FALSE(at(103).near);
}

TEST(Conformity, ProbesAreTakenOff)
{
    Meter meter;
    meter.probeZero = Amount{.2, Unit::Ohm};
    EXPECT_NEAR(judged(ohm(13.3, .1), element(), meter).value, 13.1, 1e-12);
    EXPECT_NEAR(judged(ohm(13.3, .1), element(), {}).value, 13.0, 1e-12);
    EXPECT_EQ(judged(of(120, Unit::Volt, .1), {}, meter, Measure::VoltageAc).value, 120); // volts have none
}

TEST(Conformity, BetweenGoodAndBadNothingIsProven)
{
    const Judgement j = judged(ohm(13.0, .1), element());
    EXPECT_EQ(j.conformity, Conformity::Out);
    EXPECT_EQ(j.name, ReadingName::High);
    EXPECT_EQ(j.side, Side::Above);
    EXPECT_FALSE(j.convicts);
    EXPECT_TRUE(j.near);
    EXPECT_TRUE(judged(ohm(14.5, .1), element()).convicts);
    EXPECT_FALSE(judged(ohm(14.0, .1), element()).convicts); // 13.87 is within its uncertainty
    const Judgement low = judged(ohm(5.0, .1), element());
    EXPECT_EQ(low.name, ReadingName::Low);
    EXPECT_EQ(low.side, Side::Below);
    EXPECT_TRUE(low.convicts);
}

TEST(Conformity, OpenPart)
{
    const Judgement j = judged(said(Reading::What::OverLimit), element());
    EXPECT_EQ(j.name, ReadingName::Open);
    EXPECT_TRUE(j.convicts);
    EXPECT_EQ(j.pGood, 0);
    const Judgement can = judged(said(Reading::What::OverLimit), open(100e3));
    EXPECT_EQ(can.name, ReadingName::Good);
    EXPECT_TRUE(can.clears);
    EXPECT_EQ(can.pGood, 1);
}

TEST(Conformity, OpenOnAManualRange)
{
    const Reading over = said(Reading::What::OverLimit);
    Limits valve;
    valve.lo = 500;
    valve.hi = 1600;
    valve.badAbove = 3200;
    EXPECT_EQ(judged(over, valve, manual(200)).conformity, Conformity::NoConclusion); // a healthy valve reads OL there
    EXPECT_FALSE(judged(over, valve, manual(200)).convicts);
    EXPECT_TRUE(judged(over, valve, manual(200)).near);
    EXPECT_EQ(judged(over, valve, manual(2e3)).conformity, Conformity::Out); // over good, not over bad
    EXPECT_FALSE(judged(over, valve, manual(2e3)).convicts);
    EXPECT_TRUE(judged(over, valve, manual(20e3)).convicts);
    EXPECT_TRUE(judged(over, element(), manual(200)).convicts);
    EXPECT_EQ(judged(over, open(100e3), manual(200)).conformity, Conformity::NoConclusion); // 20 kohm to metal reads OL too
    EXPECT_TRUE(judged(over, open(100e3), manual(2e6)).clears);
}

TEST(Conformity, TouchingMetal)
{
    EXPECT_TRUE(judged(ohm(12, .1), open(100e3)).convicts);
    EXPECT_EQ(judged(ohm(12, .1), open(100e3)).name, ReadingName::Low);
    const Judgement damp = judged(ohm(3.2e6, 1e4), open(100e3)); // damp, or fingers on the tips
    EXPECT_EQ(damp.conformity, Conformity::NoConclusion);
    EXPECT_TRUE(damp.near);
    EXPECT_FALSE(damp.convicts || damp.clears);
    EXPECT_FALSE(judged(ohm(100e3, 100), open(100e3)).convicts);
    EXPECT_TRUE(judged(ohm(.1, .1), open(100e3), {}).convicts); // no probe zero is needed for that
}

TEST(Conformity, Jumps)
{
    const Judgement j = judged(said(Reading::What::Jumps), contact());
    EXPECT_EQ(j.name, ReadingName::Jumps);
    EXPECT_EQ(j.pGood, 0);
    EXPECT_TRUE(j.convicts);
}

TEST(Conformity, AToneSaysNoMoreThanNotOpen)
{
    const Reading tone = said(Reading::What::Tone);
    for (const Limits &limits : {contact(), element()}) {
        const Judgement j = judged(tone, limits, zeroed(), Measure::Continuity);
        EXPECT_FALSE(j.clears || j.convicts);
        EXPECT_TRUE(j.clearsOpen);
        EXPECT_EQ(j.conformity, Conformity::NoConclusion);
        EXPECT_EQ(j.name, ReadingName::Tone);
    }
    EXPECT_EQ(judged(tone, element()).name, ReadingName::Tone); // never good of an element
    EXPECT_EQ(judged(tone, contact()).name, ReadingName::Good);
    EXPECT_TRUE(judged(tone, open(100e3)).convicts); // it touches
    EXPECT_TRUE(judged(tone, open(kClosedContactOhm)).convicts);
    Limits valve;
    valve.lo = 500;
    valve.hi = 1600;
    valve.badBelow = 250;
    EXPECT_TRUE(judged(tone, valve).convicts); // under 50 ohm is no valve
}

TEST(Conformity, NoTone)
{
    const Reading silent = said(Reading::What::NoTone);
    const Judgement j = judged(silent, contact(), zeroed(), Measure::Continuity);
    EXPECT_TRUE(j.convicts);
    EXPECT_EQ(j.pGood, 0);
    EXPECT_EQ(j.name, ReadingName::NoTone);
    EXPECT_EQ(judged(silent, contact()).name, ReadingName::Open);
    EXPECT_FALSE(judged(silent, element()).convicts); // some meters keep silent from 20 ohm on, some from less
    EXPECT_FALSE(judged(silent, element()).clears);
    EXPECT_FALSE(judged(silent, open(100e3)).clears); // a ground of 5 kohm is silent too
    EXPECT_TRUE(judged(silent, open(kClosedContactOhm)).clears);
    Limits valve;
    valve.lo = 500;
    valve.hi = 1600;
    EXPECT_EQ(judged(silent, valve).conformity, Conformity::NoConclusion);
}

TEST(Conformity, ContinuityReadInOhms)
{
    EXPECT_EQ(judged(ohm(.2, .1), contact(), zeroed(), Measure::Continuity).name, ReadingName::Tone);
    EXPECT_TRUE(judged(ohm(.2, .1), contact(), zeroed(), Measure::Continuity).clears);
    EXPECT_EQ(judged(said(Reading::What::OverLimit), contact(), zeroed(), Measure::Continuity).name, ReadingName::NoTone);
    EXPECT_EQ(judged(ohm(2.6e3, 1), contact(), zeroed(), Measure::Continuity).name, ReadingName::NoTone);
}

TEST(Conformity, BelowTwoOhmWithoutProbeZero)
{
    Limits winding; // a motor's main winding
    winding.lo = 1.2;
    winding.hi = 5;
    winding.badBelow = .6;
    winding.badAbove = 10;
    EXPECT_EQ(judged(ohm(1.9, .1), winding, {}).conformity, Conformity::NoConclusion);
    EXPECT_FALSE(judged(ohm(1.9, .1), winding, {}).clears);
    EXPECT_TRUE(judged(ohm(1.9, .1), winding).clears); // zeroed it does
    EXPECT_TRUE(judged(ohm(2.4, .1), winding, {}).clears);
    EXPECT_TRUE(judged(ohm(.1, .1), winding, {}).convicts); // probes only add: low stays low
    // a contact: the probes may be what is over the limit, never what keeps it under
    EXPECT_TRUE(judged(ohm(.3, .1), contact(), {}).clears);
    EXPECT_FALSE(judged(ohm(1.9, .1), contact(), {}).convicts);
    EXPECT_TRUE(judged(ohm(1.9, .1), contact(), {}).near);
    EXPECT_TRUE(judged(ohm(1.9, .1), contact()).convicts);
    EXPECT_TRUE(judged(ohm(3.0, .1), contact(), {}).convicts);
}

TEST(Conformity, ASmallNegativeReadingCountsAsRead)
{
    const Judgement j = judged(ohm(-.1, .1), contact());
    EXPECT_TRUE(j.clears);
    EXPECT_EQ(j.value, -.1);
}

TEST(Conformity, NothingAtAll)
{
    Limits leg;
    leg.unit = Unit::Volt;
    leg.lo = 228;
    leg.hi = 252;
    leg.badBelow = 198;
    leg.badAbove = 264;
    const auto volts = [&](double v, double step) { return judged(of(v, Unit::Volt, step), leg, zeroed(), Measure::VoltageAc); };
    EXPECT_EQ(volts(0, .1).name, ReadingName::None);
    EXPECT_EQ(volts(.4, .1).name, ReadingName::None);
    EXPECT_TRUE(volts(.4, .1).convicts);
    EXPECT_EQ(volts(60, .1).name, ReadingName::Low); // a ghost is no nothing
    EXPECT_EQ(volts(120, .1).name, ReadingName::Low);
    EXPECT_TRUE(volts(120, .1).convicts);
    EXPECT_EQ(volts(241, 1).name, ReadingName::Good);
    EXPECT_TRUE(volts(241, 1).clears);
    EXPECT_EQ(volts(208, 1).name, ReadingName::Low); // no conclusion: a 208 V building
    EXPECT_FALSE(volts(208, 1).convicts);
    EXPECT_EQ(volts(280, 1).name, ReadingName::High);
    Limits amps;
    amps.unit = Unit::Ampere;
    amps.lo = 18;
    amps.hi = 26;
    EXPECT_EQ(judged(of(0, Unit::Ampere, .1), amps, zeroed(), Measure::CurrentClamp).name, ReadingName::None);
    Limits closed; // volts across a closed contact: nothing is good
    closed.unit = Unit::Volt;
    closed.lo = 0;
    closed.hi = 3;
    EXPECT_EQ(judged(of(0, Unit::Volt, .1), closed, zeroed(), Measure::VoltageAc).name, ReadingName::Good);
    EXPECT_TRUE(judged(
                    of(-5, Unit::Volt, .01),
                    [] {
                        Limits l;
                        l.unit = Unit::Volt;
                        l.lo = 4.5;
                        l.hi = 5.5;
                        return l;
                    }(),
                    zeroed(), Measure::VoltageDc)
                    .clears); // leads changed over
}

Limits printed63()
{
    Limits l;
    l.unit = Unit::Celsius;
    l.openIsBad = false;
    l.lo = 58;
    l.hi = 68;
    l.badBelow = 53;
    l.badAbove = 73;
    l.stuckAbove = 78;
    return l;
}

TEST(Conformity, WhereAThermostatOpened)
{
    const auto at = [](double celsius) { return judged(of(celsius, Unit::Celsius, 1), printed63(), zeroed(), Measure::OpensAt); };
    EXPECT_TRUE(at(64).clears);
    EXPECT_EQ(at(64).name, ReadingName::Good);
    EXPECT_FALSE(at(70).convicts);
    EXPECT_EQ(at(72).name, ReadingName::High);
    EXPECT_TRUE(at(76).convicts);
    EXPECT_TRUE(at(49).convicts);
    EXPECT_EQ(at(49).name, ReadingName::Low);
}

TEST(Conformity, AThermostatThatNeverOpened)
{
    const auto reached = [](double celsius) {
        Reading r = said(Reading::What::StaysClosed);
        r.amount = {celsius, Unit::Celsius};
        return judged(r, printed63(), zeroed(), Measure::OpensAt);
    };
    EXPECT_TRUE(reached(85).convicts);
    EXPECT_EQ(reached(85).name, ReadingName::StaysClosed);
    EXPECT_TRUE(reached(78).convicts);
    EXPECT_FALSE(reached(75).convicts); // warm it further
    EXPECT_TRUE(reached(75).near);
    EXPECT_EQ(reached(60).conformity, Conformity::NoConclusion);
    EXPECT_EQ(judged(said(Reading::What::StaysClosed), printed63(), zeroed(), Measure::OpensAt).conformity,
              Conformity::NoConclusion);
}

TEST(Conformity, WithoutARatingOnlyOpenIsJudged)
{
    Limits unknown; // both sides infinite
    EXPECT_FALSE(unknown.judgesValues());
    EXPECT_TRUE(judged(said(Reading::What::OverLimit), unknown).convicts);
    EXPECT_FALSE(judged(said(Reading::What::OverLimit), unknown, manual(200)).convicts);
    const Judgement j = judged(ohm(10.8, .1), unknown);
    EXPECT_EQ(j.conformity, Conformity::NoConclusion);
    EXPECT_FALSE(j.near || j.clears || j.convicts);
    EXPECT_TRUE(j.clearsOpen);
    EXPECT_EQ(j.name, ReadingName::Good);
}

TEST(Conformity, FingersDoNotClearOpen)
{
    EXPECT_FALSE(judged(ohm(800e3, 1e3), element()).clearsOpen);
    EXPECT_TRUE(judged(ohm(30, .1), element()).clearsOpen);
}

TEST(Conformity, AnAnswerIsNotJudged)
{
    Reading r = said(Reading::What::Answer);
    r.answer = "barely lifts";
    const Judgement j = judge(r, {}, Measure::Look, {});
    EXPECT_EQ(j.conformity, Conformity::NoConclusion);
    EXPECT_EQ(word(j.name), "");
}

TEST(ReadingNames, Words)
{
    EXPECT_EQ(word(ReadingName::Open), "open");
    EXPECT_EQ(word(ReadingName::NoTone), "no tone");
    EXPECT_EQ(word(ReadingName::None), "none");
    EXPECT_EQ(word(ReadingName::StaysClosed), "stays closed");
}

} // namespace
