// The limits of a placement on a machine at hand. The limits of contacts, heating elements, thermostats and sensors are
// common practice, no source, unless a source stands beside them.
#include "core/reading/curves.h"
#include "core/reading/limits.h"

#include <gtest/gtest.h>

using namespace core;

namespace {

constexpr double kInf = Limits::kNone;

Span span(double lo, double hi, Span::Of of = Span::Of::Itself, Unit unit = Unit::Ohm)
{
    return {lo, hi, of == Span::Of::Itself ? unit : Unit::None, of};
}

Shown shows(const Span &s)
{
    return {Shown::What::Value, s};
}

Kind elementKind()
{
    Kind kind;
    kind.id = "heating_element";
    kind.terminals = {"t1", "t2", "can"};
    Path coil;
    coil.id = "coil";
    coil.from = "t1";
    coil.to = "t2";
    coil.limits.good[0] = shows(span(.88, 1.15, Span::Of::Rating));
    coil.limits.badBelow[0] = span(.75, .75, Span::Of::Rating);
    coil.limits.badAbove[0] = span(1.30, 1.30, Span::Of::Rating);
    Path toCan;
    toCan.id = "to_can";
    toCan.from = "t1";
    toCan.to = "can";
    toCan.along = "coil";
    toCan.limits.good[0] = {Shown::What::Open, {}};
    toCan.limits.badBelow[0] = span(100e3, 100e3);
    kind.paths = {coil, toCan};
    return kind;
}

core::Test test(const std::string &red, const std::string &black, Measure measure = Measure::Resistance)
{
    core::Test t;
    t.id = "ohm";
    t.measure = measure;
    t.placements = {{red, black}};
    return t;
}

MachineFacts plate(bool read)
{
    MachineFacts facts;
    facts.volts = 240;
    facts.ratedOhm = heaterHotOhm(240, 5400);
    facts.plateRead = read;
    facts.ratingSaid = "5400 W at 240 V";
    return facts;
}

MachineFacts at(const std::string &name, double celsius)
{
    MachineFacts facts;
    facts.with[name] = {celsius, Unit::Celsius};
    return facts;
}

// 240 V 5400 W is 10.67 ohm (Ohm's law): good 9.39 to 12.27, bad under 8.0 and over 13.87
TEST(LimitsOf, ElementByItsPlate)
{
    const auto limits = limitsOf(elementKind(), test("t1", "t2"), 0, plate(true));
    ASSERT_TRUE(limits);
    EXPECT_NEAR(limits->lo, 9.387, .001);
    EXPECT_NEAR(limits->hi, 12.267, .001);
    EXPECT_NEAR(limits->badBelow, 8, .001);
    EXPECT_NEAR(limits->badAbove, 13.867, .001);
    EXPECT_EQ(limits->basis, Basis::Plate);
    EXPECT_EQ(limits->basisText, "plate 5400 W at 240 V: 10.7 \u03a9");
    EXPECT_TRUE(limits->openIsBad);
    EXPECT_EQ(limitsOf(elementKind(), test("t2", "t1"), 0, plate(true)), limits); // either way round
}

TEST(LimitsOf, AnAssumedPlateConvictsOnlyTwiceBeyond)
{
    const auto limits = limitsOf(elementKind(), test("t1", "t2"), 0, plate(false));
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->basis, Basis::CommonPractice);
    EXPECT_NEAR(limits->lo, 9.387, .001);
    EXPECT_NEAR(limits->badBelow, 9.387 / 2, .001);
    EXPECT_NEAR(limits->badAbove, 12.267 * 2, .002);
    EXPECT_TRUE(limits->openIsBad);
}

TEST(LimitsOf, WithoutARatingOpenAloneIsJudged)
{
    const auto limits = limitsOf(elementKind(), test("t1", "t2"), 0, {});
    ASSERT_TRUE(limits);
    EXPECT_FALSE(limits->judgesValues());
    EXPECT_TRUE(limits->openIsBad);
}

TEST(LimitsOf, EitherEndToTheCan)
{
    for (const char *end : {"t1", "t2"}) {
        const auto limits = limitsOf(elementKind(), test(end, "can"), 0, plate(false));
        ASSERT_TRUE(limits) << end;
        EXPECT_TRUE(limits->openIsGood);
        EXPECT_FALSE(limits->openIsBad);
        EXPECT_EQ(limits->badBelow, 100e3); // contact with metal convicts by common practice too
    }
    Kind kind = elementKind();
    kind.paths[1].limits.badBelow.clear();
    EXPECT_EQ(limitsOf(kind, test("t1", "can"), 0, {})->badBelow, kTouchesMetalOhm);
}

TEST(LimitsOf, NothingToCompareWith)
{
    EXPECT_FALSE(limitsOf(elementKind(), test("t1", "t1"), 0, plate(true)));
    EXPECT_FALSE(limitsOf(elementKind(), test("wire(t1)", "t2"), 0, plate(true)));
    EXPECT_FALSE(limitsOf(elementKind(), test("t1", "t2"), 1, plate(true)));
    EXPECT_FALSE(limitsOf(elementKind(), test("t1", "t2", Measure::VoltageAc), 0, plate(true))); // ohms say nothing of volts
    EXPECT_FALSE(limitsOf(elementKind(), test("t1", "t2", Measure::Look), 0, plate(true)));
}

Kind contactKind(Path::Normally normally)
{
    Kind kind;
    Path contact;
    contact.id = "contact";
    contact.from = "t1";
    contact.to = "t2";
    contact.normally = normally;
    contact.limits.good[0] = shows(span(0, .5));
    kind.paths = {contact};
    return kind;
}

TEST(LimitsOf, AContactByCommonPractice)
{
    const auto limits = limitsOf(contactKind(Path::Normally::Always), test("t1", "t2"), 0, {});
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->hi, .5);
    EXPECT_EQ(limits->badAbove, 1.0); // twice beyond
    EXPECT_EQ(limits->badBelow, -kInf);
    EXPECT_EQ(limits->basisText, "common practice");
}

TEST(LimitsOf, TheFartherEdgeHoldsForCommonPractice)
{
    Kind kind = contactKind(Path::Normally::Always);
    kind.paths[0].limits.badAbove[0] = span(.7, .7);
    EXPECT_EQ(limitsOf(kind, test("t1", "t2"), 0, {})->badAbove, 1.0);
    kind.paths[0].limits.badAbove[0] = span(5, 5);
    EXPECT_EQ(limitsOf(kind, test("t1", "t2"), 0, {})->badAbove, 5);
    kind.paths[0].limits.basis = Basis::Sheet;
    kind.paths[0].limits.badAbove[0] = span(.7, .7);
    EXPECT_EQ(limitsOf(kind, test("t1", "t2"), 0, {})->badAbove, .7);
    kind.paths[0].limits.badAbove.clear();
    EXPECT_EQ(limitsOf(kind, test("t1", "t2"), 0, {})->badAbove, kInf); // a sheet without a bad edge convicts by OL alone
}

TEST(LimitsOf, HeldContacts)
{
    core::Test free = test("t1", "t2"), held = free;
    held.hold = {"contact"};
    EXPECT_FALSE(limitsOf(contactKind(Path::Normally::Closed), free, 0, {})->openIsGood);
    EXPECT_TRUE(limitsOf(contactKind(Path::Normally::Closed), held, 0, {})->openIsGood);
    EXPECT_TRUE(limitsOf(contactKind(Path::Normally::Open), free, 0, {})->openIsGood);
    EXPECT_FALSE(limitsOf(contactKind(Path::Normally::Open), held, 0, {})->openIsGood);
    held.hold = {"door_switch.contact"}; // as a loop names it
    EXPECT_TRUE(limitsOf(contactKind(Path::Normally::Closed), held, 0, {})->openIsGood);
    held.hold = {"other"};
    EXPECT_FALSE(limitsOf(contactKind(Path::Normally::Closed), held, 0, {})->openIsGood);
    EXPECT_EQ(limitsOf(contactKind(Path::Normally::Open), free, 0, {})->badBelow, kClosedContactOhm);
}

TEST(LimitsOf, AContactInAPosition)
{
    MachineFacts facts;
    facts.closed["contact"] = false;
    EXPECT_TRUE(limitsOf(contactKind(Path::Normally::Always), test("t1", "t2"), 0, facts)->openIsGood);
    facts.closed["contact"] = true;
    EXPECT_FALSE(limitsOf(contactKind(Path::Normally::Open), test("t1", "t2"), 0, facts)->openIsGood);
}

TEST(LimitsOf, ByVoltage)
{
    Kind kind = contactKind(Path::Normally::Always);
    kind.paths[0].limits.good = {{120, shows(span(5, 40))}, {230, shows(span(110, 250))}};
    const auto with = [&](int volts) {
        MachineFacts facts;
        facts.volts = volts;
        return limitsOf(kind, test("t1", "t2"), 0, facts);
    };
    EXPECT_EQ(with(120)->hi, 40);
    EXPECT_EQ(with(230)->hi, 250); // a 230 V pump of 160 ohm is good
    EXPECT_EQ(with(240)->hi, 250);
    EXPECT_EQ(with(115)->hi, 40);
    EXPECT_FALSE(with(0));
    EXPECT_FALSE(with(24));
    kind.paths[0].limits.good[0] = shows(span(1, 2));
    EXPECT_EQ(with(24)->hi, 2);
    EXPECT_EQ(with(0)->hi, 2);
    EXPECT_EQ(with(120)->hi, 40);
}

Kind sensorKind()
{
    Kind kind = contactKind(Path::Normally::Always);
    Path &bead = kind.paths[0];
    bead.id = "bead";
    bead.curve = Curve{Curve::Family::Ntc, 10e3, 3950};
    bead.limits.good[0] = shows(span(.90, 1.10, Span::Of::Curve));
    bead.limits.badBelow[0] = span(.85, .85, Span::Of::Curve);
    bead.limits.badAbove[0] = span(1.15, 1.15, Span::Of::Curve);
    bead.limits.basis = Basis::Sheet;
    return kind;
}

// 10 kohm, B 3950 reads 33.6 kohm at 0 C and moves 5.3 % a kelvin there (B / T^2)
TEST(LimitsOf, ASensorOnItsCurve)
{
    MachineFacts ice = at("part_temperature", 0);
    ice.temperatureHalfWidth = .5;
    const auto limits = limitsOf(sensorKind(), test("t1", "t2"), 0, ice);
    ASSERT_TRUE(limits);
    EXPECT_NEAR(limits->lo, 33.62e3 * (.90 - .0265), 30);
    EXPECT_NEAR(limits->hi, 33.62e3 * (1.10 + .0265), 30);
    EXPECT_NEAR(limits->badAbove, 33.62e3 * (1.15 + .0265), 30);
    EXPECT_EQ(limits->basisText, "sheet, curve at 0 \u00b0C: 33.6 k\u03a9");
    // without a thermometer at the part three kelvin of doubt, some 13 % at 25 C, on top of the tolerance
    const auto room = limitsOf(sensorKind(), test("t1", "t2"), 0, at("part_temperature", 25));
    EXPECT_NEAR(room->lo, 10e3 * (.90 - 3 * .044435), 1);
    EXPECT_NEAR(room->badBelow, 10e3 * (.85 - 3 * .044435), 1);
    const auto cold = limitsOf(sensorKind(), test("t1", "t2"), 0, {});
    ASSERT_TRUE(cold);
    EXPECT_FALSE(cold->judgesValues());
}

Kind thermostatKind(std::optional<Span> closesBelow, std::optional<Span> opensAbove)
{
    Kind kind = contactKind(Path::Normally::Always);
    kind.paths[0].closesBelow = closesBelow;
    kind.paths[0].opensAbove = opensAbove;
    return kind;
}

constexpr Unit kC = Unit::Celsius;

TEST(LimitsOf, ADefrostThermostatIsJudgedAtItsTemperature)
{
    const Kind kind = thermostatKind(span(-14, -5, Span::Of::Itself, kC), span(4, 15, Span::Of::Itself, kC));
    const auto with = [&](double celsius) { return limitsOf(kind, test("t1", "t2"), 0, at("part_temperature", celsius)); };
    EXPECT_FALSE(with(-16)->openIsGood);
    EXPECT_TRUE(with(18)->openIsGood); // OL at room temperature is normal
    EXPECT_FALSE(with(-10));           // closed or not yet
    EXPECT_FALSE(with(10));
    EXPECT_FALSE(limitsOf(kind, test("t1", "t2"), 0, {})); // no temperature: nothing is said
}

TEST(LimitsOf, ACyclingThermostatAtRoom)
{
    const Kind kind = thermostatKind({}, span(57, 70, Span::Of::Itself, kC));
    EXPECT_FALSE(limitsOf(kind, test("t1", "t2"), 0, {})->openIsGood);
    EXPECT_FALSE(limitsOf(kind, test("t1", "t2"), 0, at("part_temperature", 22))->openIsGood);
    EXPECT_FALSE(limitsOf(kind, test("t1", "t2"), 0, at("part_temperature", 50))); // it may still be open after a run
    EXPECT_TRUE(limitsOf(kind, test("t1", "t2"), 0, at("part_temperature", 80))->openIsGood);
}

TEST(LimitsOf, OpensAtByThePrint)
{
    const Kind kind = thermostatKind({}, span(57, 70, Span::Of::Itself, kC));
    const auto limits = limitsOf(kind, test("t1", "t2", Measure::OpensAt), 0, at("printed_temperature", 63));
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->lo, 58);
    EXPECT_EQ(limits->hi, 68);
    EXPECT_EQ(limits->badBelow, 53);
    EXPECT_EQ(limits->badAbove, 73);
    EXPECT_EQ(limits->stuckAbove, 78);
    EXPECT_EQ(limits->unit, Unit::Celsius);
    EXPECT_EQ(limits->basisText, "printed 63 \u00b0C");
}

TEST(LimitsOf, OpensAtWithoutAPrint)
{
    Kind kind = thermostatKind({}, span(57, 70, Span::Of::Itself, kC));
    const core::Test opens = test("t1", "t2", Measure::OpensAt);
    const auto limits = limitsOf(kind, opens, 0, {});
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->lo, 57);
    EXPECT_EQ(limits->hi, 70);
    EXPECT_EQ(limits->badAbove, kInf); // another thermostat may be meant to open elsewhere
    EXPECT_EQ(limits->stuckAbove, kInf);
    kind.paths[0].limits.basis = Basis::Sheet;
    EXPECT_EQ(limitsOf(kind, opens, 0, {})->badAbove, 75);
    EXPECT_EQ(limitsOf(kind, opens, 0, {})->stuckAbove, 80);
    EXPECT_FALSE(limitsOf(contactKind(Path::Normally::Always), opens, 0, {}));
}

TEST(LimitsOf, ATestsOwnLimitsWin)
{
    core::Test volts = test("t1", "t2", Measure::VoltageAc);
    PathLimits own;
    own.good[0] = shows(span(114, 126, Span::Of::Itself, Unit::Volt)); // ANSI C84.1 range A, service, 120 V
    own.badBelow[0] = span(104, 104, Span::Of::Itself, Unit::Volt);    // range B, utilization
    own.badAbove[0] = span(127, 127, Span::Of::Itself, Unit::Volt);
    own.basis = Basis::Published;
    own.source = "ANSI C84.1, table 1";
    volts.limits = own;
    const auto limits = limitsOf(elementKind(), volts, 0, {});
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->lo, 114);
    EXPECT_EQ(limits->badBelow, 104);
    EXPECT_EQ(limits->unit, Unit::Volt);
    EXPECT_FALSE(limits->openIsBad);
    EXPECT_EQ(limits->basisText, "ANSI C84.1, table 1");
    core::Test heat = test("t1", "t2", Measure::Temperature);
    heat.limits = PathLimits{};
    heat.limits->good[0] = shows(span(50, 75, Span::Of::Itself, kC));
    EXPECT_EQ(limitsOf(elementKind(), heat, 0, {})->badAbove, kInf); // nothing is twice a temperature
    EXPECT_EQ(limitsOf(elementKind(), heat, 0, {})->badBelow, -kInf);
}

} // namespace
