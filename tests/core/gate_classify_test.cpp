// The class of a step. Categories: IEC 61010-2-030 / -033 (secondary). That low voltages are no exception: no public field
// says "isolated extra-low voltage" of a rail (common practice, no source).
#include "core/gate/classify.h"

#include <gtest/gtest.h>

using namespace core;

namespace {

StepFacts measuring(std::string measure, PlaceSort place = PlaceSort::BehindCover)
{
    StepFacts facts;
    facts.kind = "any";
    facts.test = "any";
    facts.measure = std::move(measure);
    facts.place = place;
    return facts;
}

TEST(GateClassify, WhatIsMeasuredDecides)
{
    for (const char *measure : {"resistance", "continuity", "capacitance", "diode", "opens_at"}) {
        StepFacts facts = measuring(measure);
        facts.appliance = Declared::InUse; // whatever a tree says
        EXPECT_EQ(classify(facts).stepClass, StepClass::D) << measure;
        facts.store = Store::Motor;
        EXPECT_EQ(classify(facts).stepClass, StepClass::DS) << measure;
    }
    for (const char *measure : {"voltage_ac", "voltage_dc", "voltage_low_impedance", "frequency", "duty"}) {
        StepFacts facts = measuring(measure);
        facts.appliance = Declared::NoPower;
        EXPECT_EQ(classify(facts).stepClass, StepClass::E1) << measure;
        facts.place = PlaceSort::NoCover;
        EXPECT_EQ(classify(facts).stepClass, StepClass::E1) << measure;
        facts.place = PlaceSort::OutletFace;
        EXPECT_EQ(classify(facts).stepClass, StepClass::E2) << measure;
    }
    for (const PlaceSort place : {PlaceSort::NoCover, PlaceSort::OutletFace, PlaceSort::BehindCover}) {
        EXPECT_EQ(classify(measuring("current_clamp", place)).stepClass, StepClass::E3);
    }
    EXPECT_FALSE(classify(measuring("weight")).fault.empty());
}

TEST(GateClassify, LooksAndDosDeclareTheAppliance)
{
    struct { Declared appliance; PlaceSort place; StepClass stepClass; bool fault; } rows[] = {
        {Declared::AsIs, PlaceSort::NoCover, StepClass::A, false},     {Declared::AsIs, PlaceSort::OutletFace, StepClass::A, false},
        {Declared::AsIs, PlaceSort::BehindCover, StepClass::X, true},  {Declared::NoPower, PlaceSort::NoCover, StepClass::D, false},
        {Declared::NoPower, PlaceSort::BehindCover, StepClass::D, false}, {Declared::InUse, PlaceSort::NoCover, StepClass::R, false},
        {Declared::InUse, PlaceSort::BehindCover, StepClass::EO, false}, {Declared::Unsaid, PlaceSort::NoCover, StepClass::X, true},
    };
    for (const auto &row : rows)
        for (const char *measure : {"look", "hand", "ear", "do", "temperature"}) {
            StepFacts facts = measuring(measure, row.place);
            facts.appliance = row.appliance;
            const Classified out = classify(facts);
            EXPECT_EQ(!out.fault.empty(), row.fault) << measure;
            if (!row.fault) {
                EXPECT_EQ(word(out.stepClass), word(row.stepClass)) << measure;
            }
        }
    EXPECT_EQ(classify(StepFacts{}).stepClass, StepClass::A); // an ask
}

TEST(GateClassify, TouchingIsAp)
{
    for (const char *touches : {"breaker", "plug", "outlet", "gfci", "switch"}) {
        StepFacts facts = measuring("do", PlaceSort::NoCover);
        facts.touches = touches;
        facts.appliance = Declared::AsIs;
        EXPECT_EQ(classify(facts).stepClass, StepClass::AP);
        EXPECT_FALSE(classify(facts).inUse);
        facts.appliance = Declared::InUse;
        EXPECT_TRUE(classify(facts).inUse);
        facts.place = PlaceSort::BehindCover;
        EXPECT_FALSE(classify(facts).fault.empty());
    }
    StepFacts odd = measuring("do", PlaceSort::NoCover);
    odd.touches = "fuse box";
    EXPECT_FALSE(classify(odd).fault.empty());
}

TEST(GateClassify, VoltsMadeByHandAreAClosedList)
{
    StepFacts facts = measuring("voltage_ac");
    facts.turnedByHand = true;
    EXPECT_EQ(classify(facts).stepClass, StepClass::E1); // a tree alone cannot say so
    facts.kind = "drive_motor_bldc";
    facts.test = "gen";
    EXPECT_EQ(classify(facts).stepClass, StepClass::D);
    facts.turnedByHand = false;
    EXPECT_EQ(classify(facts).stepClass, StepClass::E1);
}

TEST(GateClassify, ZonesAreNeverShown)
{
    struct { const char *kind, *test, *zone; } rows[] = {{"mw_hv", "none", "microwave"}, {"mw_fuse", "ohm", "microwave"},
        {"mw_interlocks", "ohm", "microwave"}, {"thermocouple", "open", "gas"}, {"compressor_inverter", "in", "inverter"}};
    for (const auto &row : rows) {
        StepFacts facts = measuring("resistance");
        facts.kind = row.kind;
        facts.test = row.test;
        EXPECT_EQ(classify(facts).stepClass, StepClass::X) << row.kind;
        EXPECT_EQ(classify(facts).zone, row.zone);
    }
    StepFacts ohm = measuring("resistance");
    ohm.kind = "compressor_inverter";
    ohm.test = "ohm";
    EXPECT_EQ(classify(ohm).stepClass, StepClass::D);
    StepFacts zone = measuring("look");
    zone.appliance = Declared::NoPower;
    zone.zone = "panel";
    EXPECT_EQ(classify(zone).stepClass, StepClass::X);
    zone.appliance = Declared::AsIs; // looking from outside opens nothing
    zone.place = PlaceSort::NoCover;
    EXPECT_EQ(classify(zone).stepClass, StepClass::A);
    zone.zone = "attic";
    EXPECT_FALSE(classify(zone).fault.empty());
}

TEST(GateClassify, ATreeOnlyMakesStricter)
{
    constexpr StepClass kAll[] = {StepClass::A, StepClass::AP, StepClass::D, StepClass::DS, StepClass::R, StepClass::E1,
                                  StepClass::E2, StepClass::E3, StepClass::EO, StepClass::P, StepClass::X};
    for (const StepClass program : kAll) {
        EXPECT_EQ(stricterOf(program, StepClass::A), program);
        EXPECT_EQ(stricterOf(program, program), program);
        EXPECT_EQ(stricterOf(program, StepClass::X), StepClass::X);
        for (const StepClass named : kAll) // one that needs a hold point keeps one
            if (isLive(program)) {
                EXPECT_TRUE(isLive(stricterOf(program, named)) || stricterOf(program, named) >= StepClass::P);
            }
    }
    EXPECT_EQ(stricterOf(StepClass::DS, StepClass::D), StepClass::DS);
    EXPECT_EQ(stricterOf(StepClass::D, StepClass::DS), StepClass::DS);
}

TEST(GateClassify, WordsAgainstTheClass)
{
    EXPECT_TRUE(wordAgainst(StepClass::D, "Plug it in and read the ohms"));
    EXPECT_TRUE(wordAgainst(StepClass::DS, "Measure while it runs."));
    EXPECT_FALSE(wordAgainst(StepClass::D, "Read across the motor start switch; then restart the count"));
    EXPECT_FALSE(wordAgainst(StepClass::D, "Measure the starter winding"));
    EXPECT_TRUE(wordAgainst(StepClass::A, "Remove the panel and look"));
    EXPECT_TRUE(wordAgainst(StepClass::R, "Take off the cover and watch"));
    EXPECT_FALSE(wordAgainst(StepClass::R, "Start a heated cycle and feel the air"));
    EXPECT_FALSE(wordAgainst(StepClass::E1, "Start the cycle"));
}

TEST(GateMeter, MarksAreReadAsTheyArePrinted)
{
    EXPECT_EQ(markIn("CAT III 600 V"), (MeterMark{3, 600}));
    EXPECT_EQ(markIn("cat iv 300V"), (MeterMark{4, 300}));
    EXPECT_EQ(markIn(" CAT  II 300 V "), (MeterMark{2, 300}));
    for (const char *text : {"", "CAT", "CAT 600", "CAT V 600 V", "CAT III", "III 600 V", "CAT III 600 V 10 A", "CAT III -600 V", "CAT III 1e3 V", "CAT III 99999999999 V"}) {
        EXPECT_EQ(markIn(text), MeterMark{}) << text;
    }
    EXPECT_EQ(shown(markIn("CAT III 600 V")), "CAT III 600 V");
    EXPECT_EQ(shown(MeterMark{}), "no mark");
}

TEST(GateMeter, TheLowestMarkCounts)
{
    MeterFit meter{"m", {{3, 600}, {2, 1000}}, true, false, false, false};
    EXPECT_EQ(lowest(meter), (MeterMark{2, 600}));
    EXPECT_FALSE(whyUnfit(meter, kInsideMark));
    EXPECT_TRUE(whyUnfit(meter, kWallMark)); // leads of CAT II at a wall outlet
    meter.marks = {{3, 300}};
    EXPECT_FALSE(whyUnfit(meter, kWallMark));
    meter.marks = {{3, 150}};
    EXPECT_TRUE(whyUnfit(meter, kWallMark));
    meter.marks = {{4, 600}, {}};
    EXPECT_TRUE(whyUnfit(meter, kInsideMark)); // one piece without a mark
    meter.marks.clear();
    EXPECT_TRUE(whyUnfit(meter, kInsideMark));
}

TEST(GateMeter, EachDefectIsEnough)
{
    const MeterFit good{"m", {{3, 600}}, true, false, false, false};
    EXPECT_FALSE(whyUnfit(good, kWallMark));
    for (int i = 0; i < 4; ++i) {
        MeterFit meter = good;
        meter.voltsAc = i != 0;
        meter.lowBattery = i == 1;
        meter.leadsInAmpJack = i == 2;
        meter.unfitForMains = i == 3;
        EXPECT_TRUE(whyUnfit(meter, kInsideMark)) << i;
    }
}

TEST(GateMeter, PlacesThatNeedCategoryThree)
{
    EXPECT_EQ(markFor(StepClass::E1, false, false), kInsideMark);
    EXPECT_EQ(markFor(StepClass::E1, true, false), kWallMark);
    EXPECT_EQ(markFor(StepClass::E1, false, true), kWallMark);
    EXPECT_EQ(markFor(StepClass::E2, false, false), kWallMark);
    EXPECT_EQ(markFor(StepClass::P, false, false), kWallMark);
}

} // namespace
