// What a kind's file becomes. The hard cases are those of the trade that broke simpler formats: an igniter whose current
// alone convicts, a thermistor on its curve, a thermostat that is open when warm, ranges that belong to a voltage.
#include "core/load/load.h"

#include <gtest/gtest.h>

namespace core {
namespace {

Kind kindOf(std::string_view text)
{
    const auto parsed = parseKind(text, "x.yaml");
    for (const Diagnostic &d : parsed.diagnostics)
        ADD_FAILURE() << toText(d);
    return parsed.value.value_or(Kind{});
}

const std::string kElement = R"(format: 1
kind: element
name: Heating element
does: Nickel-chromium coil in a metal can; heats the drum air.
terminals: [t1, t2, can]
paths:
  coil:   {between: [t1, t2], good: 0.88 to 1.15 of rating, bad_below: 0.75 of rating, bad_above: 1.30 of rating, basis: common practice}
  to_can: {between: [t1, can], along: coil, good: OL, bad_below: 100 kohm, basis: common practice}
fails:
  open:         {share: 72, coil: OL}
  ground:       {share: 8, to_can: 0 to 100 kohm, cure: clean, say: "It touches the can."}
  intermittent: {share: 20, coil: jumps}
tests:
  ohm: {name: "Element, end to end", measure: resistance, probes: [t1, t2], pull: [t1, t2]}
  gnd: {measure: resistance, each: [[t1, can], [wire(t2), can]], pull: [t1, t2]}
)";

TEST(LoadKind, AnElement)
{
    const Kind kind = kindOf(kElement + "buy_needs: [ohm, gnd]\n");
    EXPECT_EQ(kind.id, "element");
    EXPECT_TRUE(kind.isPart);
    const Path *coil = kind.path("coil");
    ASSERT_NE(coil, nullptr);
    EXPECT_EQ(coil->limits.good.at(0).span, (Span{0.88, 1.15, Unit::None, Span::Of::Rating}));
    EXPECT_EQ(coil->limits.badBelow.at(0).lo, 0.75);
    EXPECT_EQ(coil->limits.badAbove.at(0).hi, 1.3);
    EXPECT_EQ(kind.path("to_can")->along, "coil");
    EXPECT_EQ(kind.path("to_can")->limits.good.at(0).what, Shown::What::Open);
    EXPECT_EQ(kind.path("to_can")->limits.badBelow.at(0).lo, 1e5);
    EXPECT_EQ(kind.mode("open")->paths.at("coil").what, Shown::What::Open);
    EXPECT_EQ(kind.mode("intermittent")->paths.at("coil").what, Shown::What::Jumps);
    EXPECT_EQ(kind.cureOf("open"), "replace") << "a part is replaced unless its file says otherwise";
    EXPECT_EQ(kind.cureOf("ground"), "clean");
    EXPECT_EQ(kind.needsFor("open"), (std::vector<std::string>{"ohm", "gnd"}));
    EXPECT_EQ(kind.test("ohm")->placements, (std::vector{Probes{"t1", "t2"}}));
    EXPECT_EQ(kind.test("gnd")->placements[1], (Probes{"wire(t2)", "can"}));
    EXPECT_EQ(kind.test("gnd")->name, "Gnd") << "without a name it is called by its id";
    EXPECT_EQ(kind.test("gnd")->minutes, 2);
    EXPECT_EQ(kind.test("gnd")->place, (Place{"x.yaml", 15, 3}));
}

TEST(LoadKind, NeedsCanDependOnTheMode)
{
    const Kind kind = kindOf(kElement + "buy_needs: {ground: [gnd], else: [ohm]}\n");
    EXPECT_EQ(kind.needsFor("ground"), std::vector<std::string>{"gnd"});
    EXPECT_EQ(kind.needsFor("open"), std::vector<std::string>{"ohm"});
}

TEST(LoadKind, APlainListOfWhatToLookBehindSharesSixTenths)
{
    const Kind list = kindOf(kElement + "look_behind: [vent_blocked, limit.open, fan]\n");
    EXPECT_DOUBLE_EQ(list.lookBehind.at("limit.open"), 0.2);
    const Kind map = kindOf(kElement + "look_behind: {vent_blocked: 0.4}\n");
    EXPECT_DOUBLE_EQ(map.lookBehind.at("vent_blocked"), 0.4);
}

TEST(LoadKind, AnIgniterWhoseCurrentAloneConvicts)
{
    const Kind kind = kindOf(R"(format: 1
kind: igniter
name: Flat igniter
terminals: [t1, t2]
paths: {strip: {between: [t1, t2], good: 40 to 400 ohm, working: 31 to 37 ohm, settles: 90 s, basis: common practice}}
fails: {open: {share: 33, strip: OL}, drift: {share: 65}}
tests:
  amp: {measure: current_clamp, jaw: t1, run: "oven calling for heat", wait: 90 s, good: 3.2 to 3.6 A, bad_below: 3.0 A, once_good: [house_supply.line]}
)");
    const Path &strip = kind.paths.at(0);
    EXPECT_EQ(strip.working, (Span{31, 37, Unit::Ohm, Span::Of::Itself}));
    EXPECT_EQ(strip.settlesS, 90);
    const core::Test &amp = kind.tests.at(0);
    EXPECT_EQ(amp.jaw, "t1");
    EXPECT_EQ(amp.waitS, 90);
    EXPECT_EQ(amp.placements.size(), 1U) << "a clamp has one, without names";
    EXPECT_EQ(amp.limits->good.at(0).span.unit, Unit::Ampere);
    EXPECT_EQ(amp.onceGood, std::vector<std::string>{"house_supply.line"});
    EXPECT_EQ(amp.minutes, 5) << "energized";
}

TEST(LoadKind, AThermistorOnItsCurve)
{
    const Kind kind = kindOf(R"(format: 1
kind: ntc
name: Thermistor
terminals: [t1, t2]
paths: {bead: {between: [t1, t2], curve: {ntc_r25: 10 kohm, ntc_b: 3950}, good: 0.90 to 1.10 of curve, bad_below: 0.85 of curve, bad_above: 1.15 of curve, basis: sheet}}
fails: {drift: {share: 1, bead: 1.3 to 3 of curve}}
tests:
  room: {measure: resistance, probes: [t1, t2], pull: [t1, t2], with: [part_temperature]}
  ice:  {measure: resistance, probes: [t1, t2], with: [part_temperature], part_temperature: -1 to 3 C, wait: 5 min}
buy_needs: [room, ice]
)");
    ASSERT_TRUE(kind.paths.at(0).curve);
    EXPECT_EQ(kind.paths[0].curve->r0, 1e4);
    EXPECT_EQ(kind.paths[0].curve->beta, 3950);
    EXPECT_EQ(kind.paths[0].limits.basis, Basis::Sheet);
    EXPECT_FALSE(kind.test("room")->with.at(0).limits);
    EXPECT_EQ(kind.test("ice")->with.at(0).limits, (Span{-1, 3, Unit::Celsius, Span::Of::Itself}));
    EXPECT_EQ(kind.test("ice")->waitS, 300);
}

TEST(LoadKind, AThermostatToBeProvenCold)
{
    const Kind kind = kindOf(R"(format: 1
kind: defrost
name: Defrost thermostat
terminals: [t1, t2]
paths: {contact: {between: [t1, t2], normally: open, good: 0 to 0.5 ohm, closes_below: -14 to -5 C, opens_above: 4 to 15 C, basis: common practice}}
fails: {open: {share: 70, contact: OL}, stuck_closed: {share: 15, contact: 0 to 0.5 ohm}}
tests:
  cold: {measure: resistance, probes: [t1, t2], pull: [t1], with: [part_temperature], part_temperature: at most -15 C, within: 3 min, convicts: [open]}
  warm: {measure: opens_at, convicts: [stuck_closed]}
)");
    EXPECT_EQ(kind.paths.at(0).normally, Path::Normally::Open);
    EXPECT_EQ(kind.paths[0].closesBelow->hi, -5);
    EXPECT_EQ(kind.paths[0].opensAbove->lo, 4);
    EXPECT_EQ(kind.test("cold")->withinS, 180);
    EXPECT_EQ(kind.test("cold")->with.at(0).limits->hi, -15);
    EXPECT_EQ(kind.test("warm")->convicts, std::vector<std::string>{"stuck_closed"});
}

TEST(LoadKind, ARangeBelongsToAVoltage)
{
    const Kind kind =
        kindOf("format: 1\nkind: pump\nname: Pump\nterminals: [t1, t2]\nfails: {open: {share: 1, coil: OL}}\n"
               "paths: {coil: {between: [t1, t2], good: {120 V: 5 to 40 ohm, 230 V: 110 to 250 ohm}, basis: common practice}}\n");
    EXPECT_EQ(kind.paths.at(0).limits.good.at(120).span.hi, 40);
    EXPECT_EQ(kind.paths.at(0).limits.good.at(230).span.lo, 110);
}

TEST(LoadKind, WhatIsLookedAtIsAnsweredInTheOrderOfTheFile)
{
    const Kind kind = kindOf(R"(format: 1
kind: belt
name: Belt
fails: {worn: {share: 1}, torn: {share: 2}}
tests:
  look: {measure: look, appliance: no_power, ask: "Is it whole?", proves: {whole: [], frayed: [worn], torn: [worn, torn], cannot see: []}, unsure: [cannot see], sens: 0.9}
)");
    const core::Test &look = kind.tests.at(0);
    EXPECT_EQ(look.answers, (std::vector<std::string>{"whole", "frayed", "torn", "cannot see"}));
    EXPECT_EQ(look.proves.at("torn"), (std::vector<std::string>{"worn", "torn"}));
    EXPECT_EQ(look.unsure, std::vector<std::string>{"cannot see"});
    EXPECT_EQ(look.appliance, ApplianceState::NoPower);
    EXPECT_EQ(look.sensitivity, 0.9);
    EXPECT_EQ(look.falseAlarm, 0.06);
}

TEST(LoadKind, AConditionIsNoPartAndItsOwnIdMeansEveryWayItCanBe)
{
    const std::string head = "format: 1\ncondition: vent\nname: Vent\ncure: clean\n";
    const std::string test =
        "tests: {look: {measure: look, appliance: as_is, ask: \"Is it?\", proves: {it is: [vent], not: []}}}\n";
    const Kind plain = kindOf(head + test);
    EXPECT_FALSE(plain.isPart);
    ASSERT_EQ(plain.fails.size(), 1U);
    EXPECT_EQ(plain.fails[0].id, "") << "it can be in one way only";
    EXPECT_EQ(plain.tests.at(0).proves.at("it is"), std::vector<std::string>{""});
    const Kind twoWays = kindOf(head + test + "fails: {crushed: {share: 1, cure: replace}, full: {share: 2}}\n");
    EXPECT_EQ(twoWays.tests.at(0).proves.at("it is"), (std::vector<std::string>{"crushed", "full"}));
    EXPECT_EQ(twoWays.cureOf("full"), "clean");
}

TEST(LoadKind, ATestWithoutABasisGoesByThatOfItsPaths)
{
    const Kind kind =
        kindOf("format: 1\nkind: coil\nname: Coil\nterminals: [t1, t2]\nfails: {open: {share: 1, coil: OL}}\n"
               "paths: {coil: {between: [t1, t2], good: 5 to 9 ohm, basis: published, source: \"Handbook, table 4\"}}\n"
               "tests: {ohm: {measure: resistance, probes: [t1, t2], good: 5 to 8 ohm}}\n");
    EXPECT_EQ(kind.tests.at(0).limits->basis, Basis::Published);
    EXPECT_EQ(kind.tests.at(0).limits->source, "Handbook, table 4");
}

} // namespace
} // namespace core
