// What people type. The letter in place of the separator (4k7) is IEC 60062's; thousands written as 1,500 are asked back
// because the decimal sign may be a comma or a point (SI brochure, 9th ed., 5.4.4); the words and the lone 1 of 3 1/2
// digit displays are common practice, no source.
#include "core/reading/understand.h"

#include <gmock/gmock.h>

using namespace core;
using testing::ElementsAre;
using testing::IsEmpty;

namespace {

Meter manual(double top)
{
    Meter meter;
    meter.autoRange = false;
    meter.top = top;
    return meter;
}

Reading taken(std::string_view typed, Measure measure = Measure::Resistance, const Meter &meter = {})
{
    const auto understood = understand(typed, measure, meter);
    EXPECT_TRUE(understood) << typed << ": " << (understood ? "" : understood.error().text);
    return understood ? understood->reading : Reading{};
}

Misread refused(std::string_view typed, Measure measure = Measure::Resistance, const Meter &meter = {})
{
    const auto understood = understand(typed, measure, meter);
    EXPECT_FALSE(understood) << typed << " was taken as " << (understood ? understood->shownAs : "");
    return understood ? Misread{Misread::Code::Nothing, "", {}} : understood.error();
}

struct Typed
{
    const char *text;
    double value, step;
};

TEST(Understand, OhmsInEveryWriting)
{
    for (const Typed &t : std::initializer_list<Typed>{{"11", 11, 1},
                                                       {"11.2", 11.2, .1},
                                                       {"0,4", .4, .1},
                                                       {".4", .4, .1},
                                                       {",4", .4, .1},
                                                       {"10.80", 10.8, .01},
                                                       {"00.4", .4, .1},
                                                       {"10k", 10e3, 1e3},
                                                       {"10K", 10e3, 1e3},
                                                       {"10.3 k\u03a9", 10300, 100},
                                                       {"10,3k", 10300, 100},
                                                       {"10.3k\u2126", 10300, 100},
                                                       {"4k7", 4700, 100},
                                                       {"4K7", 4700, 100},
                                                       {"2M2", 2.2e6, 1e5},
                                                       {"4R7", 4.7, .1},
                                                       {"R47", .47, .01},
                                                       {"4k7 ohm", 4700, 100},
                                                       {"2.2M", 2.2e6, 1e5},
                                                       {"2.2 Mohm", 2.2e6, 1e5},
                                                       {"10 megohms", 10e6, 1e6},
                                                       {"10.8 ohm", 10.8, .1},
                                                       {"10.8Ohms", 10.8, .1},
                                                       {"10.8 OHM", 10.8, .1},
                                                       {"3.02 kohm", 3020, 10},
                                                       {"10\u00a0k\u03a9", 10e3, 1e3},
                                                       {"10\u202fk\u03a9", 10e3, 1e3},
                                                       {"  11.2\t", 11.2, .1},
                                                       {"\u22120.1", -.1, .1},
                                                       {"-0.1 ohm", -.1, .1},
                                                       {"- 0.2", -.2, .1},
                                                       {"+5", 5, 1},
                                                       {"0.400", .4, .001},
                                                       {"0,523k", 523, 1},
                                                       {"2600", 2600, 1},
                                                       {"1234.5", 1234.5, .1},
                                                       {"0", 0, 1},
                                                       {"0.0", 0, .1},
                                                       {"11.", 11, 1},
                                                       {"10.8 ohm.", 10.8, .1}}) {
        const Reading reading = taken(t.text);
        EXPECT_EQ(reading.what, Reading::What::Value) << t.text;
        EXPECT_EQ(reading.amount, (Amount{t.value, Unit::Ohm})) << t.text;
        EXPECT_DOUBLE_EQ(reading.step, t.step) << t.text;
    }
}

TEST(Understand, WordsAroundANumberThatChangeNothing)
{
    for (const char *text : {"about 11 ohm", "approx. 11", "it reads 11 ohms.", "The meter shows 11", "= 11", "reads: 11",
                             "roughly 11 \u03a9", "\u2248 11"})
        EXPECT_EQ(taken(text).amount.value, 11) << text;
    for (const char *text : {"11 or 12", "10-11", "10 to 11", "less than 11", "not 11", "11 ohm or so", "11 11", "over 11",
                             "more than 5", "11 and jumping"})
        EXPECT_EQ(refused(text).code, Misread::Code::NotUnderstood) << text;
}

TEST(Understand, OverLimitInEveryWriting)
{
    for (const char *text : {"OL", "0L", "O.L", "0.L", "ol", ".OL", "O.L.", "open", "Open", "over", "over limit", "infinite",
                             "infinity", "inf", "\u221e", "it is open.", " OL "})
        EXPECT_EQ(taken(text).what, Reading::What::OverLimit) << text;
    EXPECT_EQ(taken("OL", Measure::Continuity).what, Reading::What::OverLimit);
    EXPECT_EQ(taken("OL", Measure::Diode).what, Reading::What::OverLimit);
    EXPECT_EQ(refused("OL", Measure::VoltageAc).code, Misread::Code::AskBack); // a range too low says nothing of the volts
    EXPECT_EQ(refused("OL", Measure::Temperature).code, Misread::Code::AskBack);
}

TEST(Understand, TonesAndUnrest)
{
    for (const char *text : {"tone", "beep", "beeps", "it beeps", "Beeped"})
        EXPECT_EQ(taken(text, Measure::Continuity).what, Reading::What::Tone) << text;
    for (const char *text : {"no tone", "silent", "no beep", "doesn't beep", "doesn\u2019t beep", "quiet"})
        EXPECT_EQ(taken(text, Measure::Continuity).what, Reading::What::NoTone) << text;
    for (const char *text : {"jumps", "unstable", "wanders", "flickers", "comes and goes"})
        EXPECT_EQ(taken(text).what, Reading::What::Jumps) << text;
    EXPECT_EQ(taken("tone").what, Reading::What::Tone);
    EXPECT_EQ(taken("0.2", Measure::Continuity).amount.value, .2);
    EXPECT_EQ(refused("beeps", Measure::VoltageAc).code, Misread::Code::WrongUnit);
    EXPECT_EQ(taken("jumps", Measure::VoltageAc).what, Reading::What::Jumps);
}

TEST(Understand, OneSeparatorBeforeThreeDigitsIsAskedBack)
{
    for (const char *text : {"1,500", "1.500", "1,500 ohm", "12.345", "999,999", "1.500k", "-1.234"})
        EXPECT_EQ(refused(text).code, Misread::Code::AskBack) << text;
    EXPECT_THAT(refused("1,500").suggestions, ElementsAre("1.5 \u03a9", "1500 \u03a9"));
    EXPECT_THAT(refused("1.500 k").suggestions, ElementsAre("1.5 k\u03a9", "1500 k\u03a9"));
    EXPECT_THAT(refused("1.000").suggestions, ElementsAre("1.0 \u03a9", "1000 \u03a9"));
    EXPECT_THAT(refused("1,500 M").suggestions, ElementsAre("1.5 M\u03a9")); // the other is over any display
    EXPECT_EQ(refused("1,200 V", Measure::VoltageAc).code, Misread::Code::AskBack);
    // no thousands can be meant here
    EXPECT_EQ(taken("0,500").amount.value, .5);
    EXPECT_EQ(taken(",500").amount.value, .5);
    EXPECT_EQ(taken("1234,500").amount.value, 1234.5);
    EXPECT_EQ(taken("1,50").amount.value, 1.5);
}

TEST(Understand, SeparatorsOfThousandsAreRefused)
{
    for (const char *text : {"1,500,000", "1.500.000", "1'500", "1\u2019500", "1 500", "1\u00a0500", "1,500.5", "1.500,5"})
        EXPECT_EQ(refused(text).code, Misread::Code::NoThousands) << text;
    EXPECT_THAT(refused("1'500").suggestions, ElementsAre("1500 \u03a9"));
    EXPECT_EQ(taken(refused("1,500.5").suggestions.at(0)).amount.value, 1500.5);
    EXPECT_EQ(taken(refused("1,500,000").suggestions.at(0)).amount.value, 1.5e6);
}

TEST(Understand, SmallMWithOhmsIsAskedBack)
{
    for (const char *text : {"10m", "10 m", "10 mohm", "10 m\u03a9", "2m2"})
        EXPECT_EQ(refused(text).code, Misread::Code::AskBack) << text;
    EXPECT_THAT(refused("10 m").suggestions, ElementsAre("10 M\u03a9", "0.010 \u03a9"));
    EXPECT_EQ(taken("10 mV", Measure::VoltageDc).amount, (Amount{.01, Unit::Volt}));
    EXPECT_THAT(refused("10 mF", Measure::Capacitance).suggestions, ElementsAre("10 \u00b5F", "0.010 F"));
}

TEST(Understand, ALoneOneOnAManualRange)
{
    const Meter meter = manual(200);
    for (const char *text : {"1", "1 ohm", "1.", "1,"})
        EXPECT_EQ(refused(text, Measure::Resistance, meter).code, Misread::Code::AskBack) << text;
    EXPECT_THAT(refused("1", Measure::Resistance, meter).suggestions, ElementsAre("OL", "1.0 \u03a9"));
    EXPECT_EQ(taken("1 .", Measure::Resistance, meter).what, Reading::What::OverLimit); // the display as it stands
    EXPECT_EQ(taken("1.0", Measure::Resistance, meter).amount.value, 1);
    EXPECT_EQ(taken("001", Measure::Resistance, meter).amount.value, 1);
    EXPECT_EQ(refused("1", Measure::VoltageAc, meter).code, Misread::Code::AskBack);
    // an auto-range meter shows OL, so a 1 is a 1; what ends in a point was perhaps not ended
    EXPECT_EQ(taken("1").amount.value, 1);
    EXPECT_EQ(refused("1.").code, Misread::Code::AskBack);
    EXPECT_EQ(refused("1 .").code, Misread::Code::AskBack);
}

TEST(Understand, WhatNoMeterCanShow)
{
    EXPECT_EQ(refused("-3").code, Misread::Code::Impossible);
    EXPECT_EQ(taken("-1").amount.value, -1);
    EXPECT_EQ(refused("50M").code, Misread::Code::Impossible);
    EXPECT_THAT(refused("50M").suggestions, ElementsAre("OL"));
    EXPECT_EQ(refused("250", Measure::Resistance, manual(200)).code, Misread::Code::Impossible);
    EXPECT_EQ(refused("-120", Measure::VoltageAc).code, Misread::Code::Impossible);
    EXPECT_EQ(taken("-5.1", Measure::VoltageDc).amount.value, -5.1);
    EXPECT_EQ(refused("4000 V", Measure::VoltageAc).code, Misread::Code::Impossible);
    EXPECT_EQ(refused("-300 C", Measure::Temperature).code, Misread::Code::Impossible);
    EXPECT_EQ(refused("120 %", Measure::Duty).code, Misread::Code::Impossible);
    EXPECT_EQ(refused("-1 A", Measure::CurrentClamp).code, Misread::Code::Impossible);
}

TEST(Understand, AnotherQuantityIsNotTaken)
{
    for (const char *text : {"120V", "120 V~", "12 uF", "22 C", "68F", "3 A", "60 Hz", "5400 W", "stays closed"})
        EXPECT_EQ(refused(text).code, Misread::Code::WrongUnit) << text;
    EXPECT_EQ(refused("10 ohm", Measure::VoltageAc).code, Misread::Code::WrongUnit);
    EXPECT_EQ(refused("240 VDC", Measure::VoltageAc).code, Misread::Code::WrongUnit);
    EXPECT_EQ(refused("240 VAC", Measure::VoltageDc).code, Misread::Code::WrongUnit);
    EXPECT_THAT(refused("120V").suggestions, IsEmpty());
}

TEST(Understand, VoltsAmpsAndTheRest)
{
    for (const char *text : {"120", "120V", "120 V~", "120 VAC", "120 v ac", "about 120 volts", "120 V \u223f"})
        EXPECT_EQ(taken(text, Measure::VoltageAc).amount, (Amount{120, Unit::Volt})) << text;
    EXPECT_EQ(taken("22.7 A", Measure::CurrentClamp).amount, (Amount{22.7, Unit::Ampere}));
    EXPECT_EQ(taken("300mA", Measure::CurrentClamp).amount, (Amount{.3, Unit::Ampere}));
    for (const char *text : {"12 uF", "12 \u00b5F", "12 \u03bcF", "12", "12 mfd", "12 MFD"})
        EXPECT_EQ(taken(text, Measure::Capacitance).amount, (Amount{12e-6, Unit::Farad})) << text;
    EXPECT_EQ(taken("4u7", Measure::Capacitance).amount, (Amount{4.7e-6, Unit::Farad})); // IEC 60062
    EXPECT_EQ(taken("60.01 Hz", Measure::Frequency).amount.value, 60.01);
    EXPECT_EQ(taken("50 %", Measure::Duty).amount, (Amount{50, Unit::Percent}));
}

// Fixed points: 32 F = 0 C, 212 F = 100 C, -40 F = -40 C (NIST SP 811, B.8).
TEST(Understand, FahrenheitExactly)
{
    EXPECT_EQ(taken("32F", Measure::Temperature).amount, (Amount{0, Unit::Celsius}));
    EXPECT_EQ(taken("212 \u00b0F", Measure::Temperature).amount, (Amount{100, Unit::Celsius}));
    EXPECT_EQ(taken("-40 F", Measure::Temperature).amount, (Amount{-40, Unit::Celsius}));
    EXPECT_EQ(taken("68 deg F", Measure::Temperature).amount, (Amount{20, Unit::Celsius}));
    EXPECT_DOUBLE_EQ(taken("350 fahrenheit", Measure::Temperature).amount.value, 1590.0 / 9);
    EXPECT_DOUBLE_EQ(taken("68 F", Measure::Temperature).step, 5.0 / 9);
    EXPECT_EQ(understand("68F", Measure::Temperature, {})->shownAs, "20.0 \u00b0C (68 \u00b0F)");
}

TEST(Understand, Celsius)
{
    for (const char *text :
         {"-17", "-17 C", "-17 \u00b0C", "\u221217\u00b0C", "-17 Cel", "-17 deg c", "-17\u2103", "-17 degrees"})
        EXPECT_EQ(taken(text, Measure::Temperature).amount, (Amount{-17, Unit::Celsius})) << text;
    EXPECT_EQ(refused("290 K", Measure::Temperature).code, Misread::Code::NotUnderstood);
}

TEST(Understand, WhereAThermostatOpened)
{
    EXPECT_EQ(taken("64 Cel", Measure::OpensAt).amount, (Amount{64, Unit::Celsius}));
    EXPECT_EQ(taken("opens at 64 C", Measure::OpensAt).amount, (Amount{64, Unit::Celsius}));
    EXPECT_EQ(taken("opened at 149 F", Measure::OpensAt).amount, (Amount{65, Unit::Celsius}));
    EXPECT_EQ(taken("stays closed", Measure::OpensAt).what, Reading::What::StaysClosed);
    EXPECT_EQ(taken("stays closed", Measure::OpensAt).amount.unit, Unit::None); // the temperature comes by itself
    const Reading reached = taken("never opens, 85 C", Measure::OpensAt);
    EXPECT_EQ(reached.what, Reading::What::StaysClosed);
    EXPECT_EQ(reached.amount, (Amount{85, Unit::Celsius}));
    EXPECT_EQ(taken("Stays closed at 185 F", Measure::OpensAt).amount, (Amount{85, Unit::Celsius}));
    EXPECT_EQ(refused("OL", Measure::OpensAt).code, Misread::Code::AskBack);
    EXPECT_EQ(refused("stays closed at noon", Measure::OpensAt).code, Misread::Code::NotUnderstood);
}

TEST(Understand, AnAnswerIsTakenAsItIs)
{
    const Reading reading = taken("  barely lifts ", Measure::Look);
    EXPECT_EQ(reading.what, Reading::What::Answer);
    EXPECT_EQ(reading.answer, "barely lifts");
}

TEST(Understand, UntrustedText)
{
    EXPECT_EQ(refused("").code, Misread::Code::Nothing);
    EXPECT_EQ(refused(" \t\u00a0").code, Misread::Code::Nothing);
    EXPECT_EQ(refused(std::string(81, '1')).code, Misread::Code::TooLong);
    EXPECT_EQ(refused(std::string(40, '1')).code, Misread::Code::NotUnderstood);
    EXPECT_EQ(refused(std::string("1\0"
                                  "0",
                                  3))
                  .code,
              Misread::Code::NotText);
    EXPECT_EQ(refused("1\x1b[2J").code, Misread::Code::NotText);
    EXPECT_EQ(refused("1\u202e0").code, Misread::Code::NotText); // reads as 01
    EXPECT_EQ(refused("1\u200b0").code, Misread::Code::NotText);
    EXPECT_EQ(refused("\xff").code, Misread::Code::NotText);
    for (const char *text : {"nan", "1e3", "0x10", "1.2.3", "10..3", "--1", "-", ".", ",", "k", "ohm", "4k7k", "\u03a9"})
        EXPECT_EQ(refused(text).code, Misread::Code::NotUnderstood) << text;
}

TEST(Understand, ASlipOfTheKeysOffersTheWord)
{
    EXPECT_THAT(refused("opne").suggestions, ElementsAre("open"));
    EXPECT_THAT(refused("jumsp").suggestions, ElementsAre("jumps"));
    EXPECT_THAT(refused("beesp", Measure::VoltageAc).suggestions, IsEmpty()); // no tone can be meant
    EXPECT_THAT(refused("what?").suggestions, IsEmpty());
}

TEST(Understand, WordsOfTheProtocol)
{
    EXPECT_EQ(word(Misread::Code::AskBack), "ask_back");
    EXPECT_EQ(word(Misread::Code::WrongUnit), "wrong_unit");
    EXPECT_EQ(word(Misread::Code::Impossible), "impossible");
    EXPECT_EQ(word(Misread::Code::NoThousands), "no_thousands");
    EXPECT_EQ(word(Misread::Code::NotUnderstood), "not_understood");
}

} // namespace
