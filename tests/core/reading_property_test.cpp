// What must hold of any reading and any bytes: what is said back is understood as the same, what is stored is read as the
// same, every suggestion has one meaning, nothing is taken that no meter shows.
#include "core/base/random.h"
#include "core/reading/conformity.h"
#include "core/reading/understand.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

using namespace core;

namespace {

constexpr std::array kMeasures{Measure::Resistance, Measure::Continuity, Measure::Capacitance,         Measure::Diode,
                               Measure::VoltageAc,  Measure::VoltageDc,  Measure::VoltageLowImpedance, Measure::CurrentClamp,
                               Measure::Frequency,  Measure::Duty,       Measure::Temperature,         Measure::OpensAt};

Meter anyMeter(Random &random)
{
    Meter meter;
    meter.autoRange = random.chance(.5);
    if (!meter.autoRange)
        meter.top = 200 * std::pow(10, random.below(5));
    if (random.chance(.5))
        meter.probeZero = Amount{random.uniform(0, .6), Unit::Ohm};
    return meter;
}

void expectSound(std::string_view typed, Measure measure, const Meter &meter)
{
    const auto result = understand(typed, measure, meter);
    if (!result) {
        EXPECT_FALSE(result.error().text.empty());
        for (const std::string &text : result.error().suggestions)
            EXPECT_TRUE(understand(text, measure, meter)) << "[" << typed << "] offers " << text;
        return;
    }
    const Reading &reading = result->reading;
    EXPECT_EQ(readStored(storedText(reading)), reading) << storedText(reading);
    const auto again = understand(saidBack(reading), measure, {});
    ASSERT_TRUE(again) << "[" << typed << "] is said back as " << saidBack(reading);
    EXPECT_EQ(again->reading.what, reading.what) << typed;
    if (reading.what == Reading::What::Value) {
        EXPECT_GT(reading.step, 0);
        EXPECT_EQ(reading.amount.unit, unitOf(measure));
        EXPECT_NEAR(again->reading.amount.value, reading.amount.value, reading.step / 2 * (1 + 1e-9)) << typed;
    }
}

TEST(Readings, WhatIsSaidBackIsUnderstoodAsTheSame)
{
    Random random(2026);
    for (int i = 0; i < 10000; ++i) {
        const int decimals = random.below(4);
        const auto digits = static_cast<long long>(random.uniform(0, std::pow(10, 1 + random.below(6))));
        const double scale = std::pow(10, decimals);
        const std::array prefixes{"", "k", "M"};
        std::string text = plainNumber(static_cast<double>(digits) / scale);
        if (text.find_first_of("e") != std::string::npos)
            continue;
        text += prefixes.at(static_cast<std::size_t>(random.below(3)));
        Meter meter;
        const auto first = understand(text, Measure::Resistance, meter);
        if (!first)
            continue;
        const auto second = understand(saidBack(first->reading), Measure::Resistance, meter);
        ASSERT_TRUE(second) << text << " -> " << saidBack(first->reading);
        EXPECT_EQ(second->reading, first->reading) << text << " -> " << saidBack(first->reading);
    }
}

TEST(Readings, RandomBytesNeverHarm)
{
    Random random(1);
    for (int i = 0; i < 10000; ++i) {
        std::string bytes;
        for (int n = random.below(12); n > 0; --n)
            bytes += static_cast<char>(random.below(256));
        expectSound(bytes, kMeasures.at(static_cast<std::size_t>(random.below(12))), anyMeter(random));
    }
}

TEST(Readings, RandomPiecesOfReadingsNeverHarm)
{
    const std::array pieces{"1",       "0",     "7",      "500",    "000", "12",   ".",    ",",     "'",      " ",
                            "-",       "+",     "k",      "K",      "M",   "m",    "R",    "u",     "\u03a9", "\u2126",
                            "ohm",     "mohm",  "V",      "~",      "ac",  "dc",   "A",    "C",     "F",      "\u00b0",
                            "\u00b5F", "mF",    "%",      "Hz",     "OL",  "open", "tone", "no",    "jumps",  "stays closed",
                            "at",      "about", "\u00a0", "\u2212", "=",   "inf",  "e",    "\u2019"};
    Random random(3);
    for (int i = 0; i < 15000; ++i) {
        std::string text;
        for (int n = 1 + random.below(6); n > 0; --n)
            text += pieces.at(static_cast<std::size_t>(random.below(static_cast<int>(pieces.size()))));
        expectSound(text, kMeasures.at(static_cast<std::size_t>(random.below(12))), anyMeter(random));
    }
}

Limits anyLimits(Random &random)
{
    Limits limits;
    if (random.chance(.2)) {
        limits.openIsGood = true;
        limits.openIsBad = false;
        if (random.chance(.8))
            limits.badBelow = random.chance(.5) ? kClosedContactOhm : kTouchesMetalOhm;
        return limits;
    }
    const double middle = std::exp(random.uniform(std::log(.1), std::log(1e6)));
    if (random.chance(.7))
        limits.lo = middle * random.uniform(.3, 1);
    if (random.chance(.8))
        limits.hi = middle * random.uniform(1, 2);
    if (random.chance(.6))
        limits.badBelow = limits.lo * random.uniform(.2, 1);
    if (random.chance(.6))
        limits.badAbove = limits.hi * random.uniform(1, 3);
    return limits;
}

TEST(Judgements, NoneBothConvictsAndClears)
{
    Random random(4);
    for (int i = 0; i < 30000; ++i) {
        const Limits limits = anyLimits(random);
        Reading reading;
        reading.what = static_cast<Reading::What>(random.below(7));
        reading.amount = {std::exp(random.uniform(std::log(.01), std::log(4e7))), random.chance(.9) ? Unit::Ohm : Unit::Celsius};
        reading.step = std::pow(10, random.below(5) - 2);
        const Measure measure = kMeasures.at(static_cast<std::size_t>(random.below(12)));
        const Judgement j = judge(reading, limits, measure, anyMeter(random));
        ASSERT_FALSE(j.convicts && j.clears);
        const bool concluded = j.conformity != Conformity::NoConclusion;
        ASSERT_EQ(std::isnan(j.pGood), !concluded);
        ASSERT_EQ(std::isnan(j.pNotBad), !concluded);
        if (!concluded) {
            ASSERT_FALSE(j.convicts || j.clears);
            continue;
        }
        ASSERT_TRUE(j.pGood >= 0 && j.pGood <= 1 && j.pNotBad >= 0 && j.pNotBad <= 1);
        ASSERT_EQ(j.clears, j.pGood >= .95);
        if (j.convicts) {
            ASSERT_TRUE(j.pGood <= .05 && j.pNotBad <= .05);
        }
    }
}

} // namespace
