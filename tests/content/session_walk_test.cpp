// A job from complaint to verdict on the shipped dryer: what may be bought, what may be shown, and what a log remembers.
#include "tests/support/walker.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

TEST(Walk, BuysNoPartBeforeItsOwnReadingFailedTwice)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    ASSERT_EQ(w.read("OL"), "");
    ASSERT_TRUE(w.goTo("thermal_cutoff.ohm"));
    ASSERT_EQ(w.read("OL"), "");

    EXPECT_FALSE(w.atVerdict()) << "one OL may be a slipped probe";
    EXPECT_EQ(w.step().test, "thermal_cutoff.ohm");
    EXPECT_TRUE(w.step().reseat);

    ASSERT_EQ(w.read("OL"), "");
    w.toTheEnd();
    EXPECT_EQ(w.verdict().kind, Verdict::Kind::Replace);
    EXPECT_EQ(w.verdict().parts, std::vector<std::string>{"thermal_cutoff"});
}

TEST(Walk, LooksForTheCauseBeforeAProtectorIsBought)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    ASSERT_EQ(w.read("OL"), "");
    ASSERT_TRUE(w.goTo("thermal_cutoff.ohm"));
    ASSERT_EQ(w.read("OL"), "");
    ASSERT_EQ(w.read("OL"), "");

    // the element's ground is one of the causes that open a cut-off: common practice, no source
    bool lookedAtGround = false;
    for (int n = 0; n < 60 && !(w.atVerdict() && w.step().screen.empty()); ++n) {
        w.passSafety();
        lookedAtGround = lookedAtGround || w.step().test == "dryer_element.gnd";
        if (!w.atVerdict()) {
            ASSERT_EQ(w.healthy(), "");
        }
    }
    EXPECT_TRUE(lookedAtGround);
    EXPECT_FALSE(w.verdict().causes.empty());
}

TEST(Walk, GoodReadingsOfOneWindingAreNoExcuseForAnother)
{
    Walker w("dryer_elec/trips");
    w.passSafety();
    while (w.step().kind == StepView::Kind::Ask)
        ASSERT_EQ(w.healthy(), "");
    Command choose;
    choose.what = Command::What::Choose;
    choose.test = "drive_motor_split.gnd";
    ASSERT_EQ(w.tell(choose), "");
    w.passSafety();
    ASSERT_EQ(w.step().test, "drive_motor_split.gnd");
    Command reading;
    reading.what = Command::What::Reading;
    reading.test = "drive_motor_split.gnd";
    reading.value = "OL";
    reading.placement = 1;
    for (int n = 0; n < 3; ++n)
        ASSERT_EQ(w.tell(reading), "");
    reading.value = "1.1 ohm";
    reading.placement = 2;
    for (int n = 0; n < 2; ++n)
        ASSERT_EQ(w.tell(reading), "");

    const TestState state = testState(w.session().facts(), "drive_motor_split.gnd");
    EXPECT_TRUE(state.done);
    EXPECT_EQ(state.out, 2);
    EXPECT_EQ(state.good, 0);
}

TEST(Walk, AHealthyMachineIsToldToBuyNothing)
{
    Walker w("dryer_elec/no_heat");
    w.toTheEnd();
    EXPECT_EQ(w.verdict().kind, Verdict::Kind::NotProven);
    EXPECT_TRUE(w.verdict().parts.empty());
}

TEST(Walk, ATryThatWorkedBuysNothing)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("cycle"));
    ASSERT_EQ(w.answer("air only"), "");
    ASSERT_TRUE(w.goTo("set_heat"));
    ASSERT_EQ(w.answer("warm now"), "");
    w.toTheEnd();
    EXPECT_EQ(w.verdict().kind, Verdict::Kind::Fix);
    EXPECT_TRUE(w.verdict().parts.empty());
}

TEST(Walk, AMissingLegIsForAnElectrician)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("house_supply.leg_to_leg"));
    ASSERT_EQ(w.read("0.6 V"), "");
    w.toTheEnd();
    EXPECT_EQ(w.verdict().kind, Verdict::Kind::Call);
    EXPECT_TRUE(w.verdict().parts.empty());
    EXPECT_TRUE(std::ranges::any_of(w.verdict().conditions, [](const std::string &c) { return c.starts_with("house_supply"); }));
}

TEST(Walk, WithoutEnergizedTestsNoneIsShownOrOffered)
{
    Walker w("dryer_elec/no_heat", false);
    for (int n = 0; n < 80 && !(w.atVerdict() && w.step().screen.empty()); ++n) {
        EXPECT_FALSE(w.step().kind == StepView::Kind::Hold) << w.step().test;
        w.passSafety();
        EXPECT_NE(w.step().unit, "V") << w.step().test;
        if (!w.atVerdict()) {
            ASSERT_EQ(w.healthy(), "");
        }
    }
    for (const Offer &offer : offersOf(w.session(), true))
        EXPECT_FALSE(offer.energized) << offer.test;
}

TEST(Walk, ADeadTestWaitsForThePlug)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_EQ(w.answer("closed"), "");
    Command early;
    early.what = Command::What::Reading;
    early.test = "dryer_element.ohm";
    early.value = "OL";
    const std::string code = w.tell(early);
    EXPECT_EQ(code, "not_isolated") << "29 CFR 1910.333(b)(1): what is not locked out counts as energized";
    EXPECT_TRUE(w.session().facts().measured.empty());
}

TEST(Walk, WhatCannotBeUnderstoodChangesNothing)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    const auto before = w.session().events().size();
    EXPECT_EQ(w.read("bananas"), "not_understood");
    EXPECT_EQ(w.read("1,500"), "ask_back");
    EXPECT_EQ(w.read("120 V"), "wrong_unit");
    EXPECT_EQ(w.session().events().size(), before);
}

TEST(Walk, UndoTakesBackWhatIsBelievedAndNeverWhatWasDone)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    ASSERT_EQ(w.read("OL"), "");
    const Power power = w.session().gate().power;
    const auto pulled = w.session().gate().inside.pulled;
    const double before = w.session().deduction().chances.of("dryer_element");

    ASSERT_EQ(w.say(Command::What::Undo), "");

    EXPECT_EQ(w.session().gate().power, power);
    EXPECT_EQ(w.session().gate().inside.pulled, pulled) << "the wires are still off";
    EXPECT_LT(w.session().deduction().chances.of("dryer_element"), before);
    EXPECT_EQ(w.step().test, "heat_chain");
}

TEST(Walk, AnAmendedReadingCountsFromThenOn)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    ASSERT_EQ(w.read("OL"), "");
    const auto read = std::ranges::find_if(w.session().events(), [](const Event &e) { return e.what == Event::What::Read; });
    const auto preview = w.session().previewAmend(read->number, "10.7 ohm");
    ASSERT_TRUE(preview.has_value());
    Command amend;
    amend.what = Command::What::Amend;
    amend.event = read->number;
    amend.value = "10.7 ohm";

    ASSERT_EQ(w.tell(amend), "");

    EXPECT_EQ(testState(w.session().facts(), "heat_chain").name, ReadingName::Good);
}

TEST(Walk, EveryPrefixOfALogReplaysToTheSameState)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    w.toTheEnd();
    std::vector<Event> events;
    for (const std::string &line : w.kept)
        events.push_back(eventFrom(line).value());
    ASSERT_EQ(events.size(), w.session().events().size());
    const auto again = Session::asItWas(Shipped::get().content(), events);
    ASSERT_TRUE(again.has_value());
    EXPECT_EQ(again->gate(), w.session().gate());
    EXPECT_EQ(again->deduction().chances.suspect, w.session().deduction().chances.suspect);
    EXPECT_EQ(verdictView(*again, componentViews(*again)).kind, w.verdict().kind);
}

TEST(Walk, AfterABreakTheSameStepComesBackWithPowerUnknown)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    const std::string wanted = w.session().presentation().wanted.id;
    std::vector<Event> events;
    for (const std::string &line : w.kept)
        events.push_back(eventFrom(line).value());

    auto resumed = Session::resume(Shipped::get().content(), events, "another", {9'000'000, 5}, {});

    ASSERT_TRUE(resumed.has_value());
    EXPECT_EQ(resumed->gate().power, Power::Unknown);
    EXPECT_EQ(resumed->presentation().wanted.id, wanted);
    EXPECT_FALSE(stepView(*resumed).screen.empty()) << "nothing inside before somebody says again that it is off";
}

TEST(Walk, SaysAtOnceThatTheDiskTookNothingAndGoesOn)
{
    Walker w("dryer_elec/no_heat");
    w.diskTakes = false;
    ASSERT_EQ(w.answer("closed"), "");
    EXPECT_FALSE(viewOf(w.session()).saved);
    EXPECT_EQ(w.step().id, "supply");
}

TEST(Walk, StopsForGasFromAnyScreenAndAsksForNothing)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("heat_chain"));
    Command stop;
    stop.what = Command::What::Stop;
    stop.why = "gas";
    ASSERT_EQ(w.tell(stop), "");
    EXPECT_EQ(w.step().screen, "S12");
    EXPECT_EQ(w.read("10 ohm"), "stopped");
    EXPECT_TRUE(viewOf(w.session()).stopped);
}

TEST(Walk, AReportedValueIsKeptAndProvesNothing)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_EQ(w.answer("closed"), "");
    Command reported;
    reported.what = Command::What::Reading;
    reported.test = "house_supply.leg_x";
    reported.value = "120 V";
    reported.reported = true;
    EXPECT_EQ(w.tell(reported), "");
    EXPECT_EQ(w.session().facts().reported.size(), 1U);
    EXPECT_TRUE(w.session().facts().measured.empty());
}

class EveryTree : public testing::TestWithParam<std::string>
{
};

std::vector<std::string> treeIds()
{
    std::vector<std::string> ids;
    for (const auto &[id, tree] : Shipped::get().library.trees)
        ids.push_back(id);
    return ids;
}

// No step of any machine is shown before the gate let it, whatever the supply and the control.
TEST_P(EveryTree, EndsInAVerdictOnEveryMachineAndShowsNothingUngated)
{
    for (const char *supply : {"split_120_240", "single_120", "single_230"})
        for (const char *control : {"knob", "touch"}) {
            Walker w(GetParam());
            w.machine = {{"supply", supply}, {"control", control}, {"cord", "4_wire"}};
            for (int n = 0; n < 150 && !(w.atVerdict() && w.step().screen.empty()); ++n) {
                w.passSafety();
                const StepView s = w.step();
                const Power power = w.session().gate().power;
                if (s.kind == StepView::Kind::Test && s.unit == "V") {
                    EXPECT_TRUE(power == Power::Energized && w.session().gate().ack) << s.test;
                }
                if (s.kind == StepView::Kind::Test && (s.unit == "ohm" || s.unit == "continuity")) {
                    EXPECT_TRUE(isDead(power)) << s.test;
                }
                if (!w.atVerdict()) {
                    ASSERT_EQ(w.healthy(), "") << s.id << " " << s.test;
                }
            }
            EXPECT_TRUE(w.atVerdict()) << supply << " " << control;
            EXPECT_TRUE(w.verdict().parts.empty()) << "a healthy machine needs no part";
        }
}

INSTANTIATE_TEST_SUITE_P(Shipped, EveryTree, testing::ValuesIn(treeIds()), [](const auto &one) {
    std::string name = one.param;
    std::ranges::replace(name, '/', '_');
    return name;
});

} // namespace
} // namespace core
