// A reading said back to a person, and stored without loss.
#include "core/base/random.h"
#include "core/reading/reading.h"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>

using namespace core;

namespace {

Reading value(double amount, Unit unit, double step)
{
    Reading r;
    r.amount = {amount, unit};
    r.step = step;
    return r;
}

Reading word(Reading::What what)
{
    Reading r;
    r.what = what;
    return r;
}

TEST(SaidBack, EveryDigitThatWasWritten)
{
    EXPECT_EQ(saidBack(value(10.8, Unit::Ohm, .1)), "10.8 \u03a9");
    EXPECT_EQ(saidBack(value(10.8, Unit::Ohm, .01)), "10.80 \u03a9");
    EXPECT_EQ(saidBack(value(10300, Unit::Ohm, 100)), "10.3 k\u03a9");
    EXPECT_EQ(saidBack(value(10e3, Unit::Ohm, 1e3)), "10 k\u03a9");
    EXPECT_EQ(saidBack(value(2.2e6, Unit::Ohm, 1e5)), "2.2 M\u03a9");
    EXPECT_EQ(saidBack(value(0, Unit::Ohm, .1)), "0.0 \u03a9");
    EXPECT_EQ(saidBack(value(-.1, Unit::Ohm, .1)), "-0.1 \u03a9");
    EXPECT_EQ(saidBack(value(.4, Unit::Ohm, .001)), "0.400 \u03a9");
    EXPECT_EQ(saidBack(value(68, Unit::Celsius, 1)), "68 \u00b0C");
    EXPECT_EQ(saidBack(value(120, Unit::Volt, 1)), "120 V");
    EXPECT_EQ(saidBack(value(12e-6, Unit::Farad, 1e-6)), "12 \u00b5F");
    EXPECT_EQ(saidBack(value(22.7, Unit::Ampere, .1)), "22.7 A");
}

TEST(SaidBack, NeverThreeDigitsBehindASeparator)
{
    EXPECT_EQ(saidBack(value(1500, Unit::Ohm, 1)), "1500 \u03a9");
    EXPECT_EQ(saidBack(value(1.523e6, Unit::Ohm, 1e3)), "1523 k\u03a9");
    EXPECT_EQ(saidBack(value(1.523, Unit::Volt, .001)), "1523 mV");
    EXPECT_EQ(saidBack(value(1.523, Unit::Ohm, .001)), "1.5230 \u03a9");
}

TEST(SaidBack, Words)
{
    EXPECT_EQ(saidBack(word(Reading::What::OverLimit)), "OL");
    EXPECT_EQ(saidBack(word(Reading::What::Tone)), "tone");
    EXPECT_EQ(saidBack(word(Reading::What::NoTone)), "no tone");
    EXPECT_EQ(saidBack(word(Reading::What::Jumps)), "jumps");
    Reading closed = word(Reading::What::StaysClosed);
    EXPECT_EQ(saidBack(closed), "stays closed");
    closed.amount = {85, Unit::Celsius};
    EXPECT_EQ(saidBack(closed), "stays closed at 85 \u00b0C");
    Reading answer = word(Reading::What::Answer);
    answer.answer = "barely lifts";
    EXPECT_EQ(saidBack(answer), "barely lifts");
}

TEST(StoredText, Examples)
{
    Reading r = value(10.8, Unit::Ohm, .1);
    r.with = {{"part_temperature", {22, Unit::Celsius}}};
    EXPECT_EQ(storedText(r), "value 10.8 ohm step 0.1; part_temperature 22 Cel");
    EXPECT_EQ(storedText(word(Reading::What::NoTone)), "no_tone");
    Reading answer = word(Reading::What::Answer);
    answer.answer = "a = b; c";
    EXPECT_EQ(storedText(answer), "answer = a = b; c");
    EXPECT_EQ(readStored(storedText(answer)), answer);
}

TEST(StoredText, ReadsBackEveryBit)
{
    Random random(5);
    for (int i = 0; i < 20000; ++i) {
        Reading r;
        r.what = static_cast<Reading::What>(random.below(7));
        if (r.what == Reading::What::Value || r.what == Reading::What::StaysClosed)
            r.amount = {random.uniform(-1, 1) * std::pow(10, random.below(20) - 10), static_cast<Unit>(random.below(10))};
        if (r.what == Reading::What::Value)
            r.step = random.uniform() * std::pow(10, random.below(8) - 4);
        if (r.what == Reading::What::Answer)
            for (int n = random.below(8); n > 0; --n)
                r.answer += static_cast<char>(1 + random.below(127));
        if (random.chance(.3))
            r.with["part_temperature"] = {random.uniform(-40, 200), Unit::Celsius};
        if (random.chance(.2))
            r.with["printed_temperature"] = {63, Unit::Celsius};
        const auto back = readStored(storedText(r));
        ASSERT_EQ(back, r) << storedText(r);
        ASSERT_EQ(std::bit_cast<std::uint64_t>(back->amount.value), std::bit_cast<std::uint64_t>(r.amount.value));
    }
}

TEST(ReadStored, NothingElseIsRead)
{
    for (const char *text : {"",
                             "value",
                             "value 10.8",
                             "value 10.8 ohm",
                             "value 10.8 ohm step",
                             "value 10.8 ohm step x",
                             "value nan ohm step 1",
                             "value inf ohm step 1",
                             "value 10.8 Ohm step 0.1",
                             "value 10.8 ohm step 0.1 ",
                             "value 10.8 ohm step 0.1;",
                             "value 10.8 ohm step 0.1; Part 1 Cel",
                             "tone 1 ohm",
                             "tone;",
                             "tone = x",
                             "answer",
                             "stays_closed",
                             "over_limit; a 1 Cel; a 2 Cel",
                             "jumps; a 1",
                             "OL",
                             " tone"})
        EXPECT_FALSE(readStored(text)) << text;
}

} // namespace
