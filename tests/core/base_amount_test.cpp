// Numbers with units: prefixes of the SI brochure (9th ed., table 7), unit codes of UCUM ("Cel", "Hz", "ohm").
#include "core/base/amount.h"
#include "core/base/random.h"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>

using namespace core;

namespace {

TEST(UnitNamed, PrefixesArePowersOfTen)
{
    const auto is = [](std::string_view text, Unit unit, double factor) {
        const auto found = unitNamed(text);
        return found && found->unit == unit && found->factor == factor;
    };
    EXPECT_TRUE(is("kohm", Unit::Ohm, 1e3));
    EXPECT_TRUE(is("Mohm", Unit::Ohm, 1e6));
    EXPECT_TRUE(is("k\u03a9", Unit::Ohm, 1e3));
    EXPECT_TRUE(is("\u2126", Unit::Ohm, 1));
    EXPECT_TRUE(is("mV", Unit::Volt, 1e-3));
    EXPECT_TRUE(is("uF", Unit::Farad, 1e-6));
    EXPECT_TRUE(is("\u00b5F", Unit::Farad, 1e-6));
    EXPECT_TRUE(is("\u03bcF", Unit::Farad, 1e-6));
    EXPECT_TRUE(is("Cel", Unit::Celsius, 1));
}

TEST(UnitNamed, LetterSizeIsNotGuessed)
{
    EXPECT_FALSE(unitNamed("mohm")); // milli or mega
    EXPECT_FALSE(unitNamed("KV"));
    EXPECT_FALSE(unitNamed("F\u00b0"));
    EXPECT_FALSE(unitNamed(""));
}

TEST(UnitCode, EveryUnitReadsBack)
{
    for (const Unit unit : {Unit::Ohm, Unit::Volt, Unit::Ampere, Unit::Farad, Unit::Hertz, Unit::Celsius, Unit::Watt,
                            Unit::Second, Unit::Percent}) {
        const auto found = unitNamed(unitCode(unit));
        ASSERT_TRUE(found) << unitCode(unit);
        EXPECT_EQ(found->unit, unit);
    }
}

TEST(NumberIn, TakesAPlainDecimalAlone)
{
    EXPECT_EQ(numberIn("10.8"), 10.8);
    EXPECT_EQ(numberIn("-17"), -17);
    EXPECT_EQ(numberIn("+5"), 5);
    EXPECT_EQ(numberIn(".5"), .5);
    for (const char *text : {"", "-", "+", ".", "+-5", "--5", "1e3", "0x10", "inf", "nan", "1,5", "1.2.3", " 1", "1 ", "1-"})
        EXPECT_FALSE(numberIn(text)) << text;
    EXPECT_FALSE(numberIn(std::string(400, '9'))); // beyond the largest double
}

TEST(PlainNumber, ReadsBackAsTheSameDouble)
{
    Random random(1);
    for (int i = 0; i < 20000; ++i) {
        const double value = random.uniform(-1, 1) * std::pow(10, random.below(13) - 6);
        const std::string text = plainNumber(value);
        double back = 0; // from_chars knows no locale
        std::from_chars(text.data(), text.data() + text.size(), back);
        EXPECT_EQ(back, value);
    }
}

TEST(Shown, HasThreeDigitsAndAPrefix)
{
    EXPECT_EQ(shown({10.667, Unit::Ohm}), "10.7 \u03a9");
    EXPECT_EQ(shown({2600, Unit::Ohm}), "2.6 k\u03a9");
    EXPECT_EQ(shown({33620.6, Unit::Ohm}), "33.6 k\u03a9");
    EXPECT_EQ(shown({999.6, Unit::Ohm}), "1 k\u03a9"); // rounds up into the next prefix
    EXPECT_EQ(shown({999600, Unit::Ohm}), "1 M\u03a9");
    EXPECT_EQ(shown({.2, Unit::Ohm}), "0.2 \u03a9");
    EXPECT_EQ(shown({-17, Unit::Celsius}), "-17 \u00b0C");
    EXPECT_EQ(shown({-.0001, Unit::Ohm}), "0 \u03a9");
    EXPECT_EQ(shown({5e-6, Unit::Farad}), "5 \u00b5F");
    EXPECT_EQ(shown({240, Unit::Volt}), "240 V");
}

TEST(Written, LosesNothing)
{
    EXPECT_EQ(written({10.8, Unit::Ohm}), "10.8 ohm");
    EXPECT_EQ(written({-17, Unit::Celsius}), "-17 Cel");
    EXPECT_EQ(written({12e-6, Unit::Farad}), "12 uF");
    EXPECT_EQ(written({4000, Unit::None}), "4000");
}

} // namespace
