// After the verdict: what was put in is read, the machine is closed up and run, and what was seen is kept.
#include "tests/support/walker.h"

#include <algorithm>

namespace core {
namespace {

void openCutOff(Walker &w)
{
    ASSERT_TRUE(w.goTo("heat_chain"));
    ASSERT_EQ(w.read("OL"), "");
    ASSERT_TRUE(w.goTo("thermal_cutoff.ohm"));
    ASSERT_EQ(w.read("OL"), "");
    ASSERT_EQ(w.read("OL"), "");
    w.toTheEnd();
    ASSERT_EQ(w.verdict().kind, Verdict::Kind::Replace);
}

void grounded(Walker &w)
{
    w.passSafety();
    while (w.step().kind == StepView::Kind::Ask)
        ASSERT_EQ(w.healthy(), "");
    Command choose;
    choose.what = Command::What::Choose;
    choose.test = "dryer_element.gnd";
    ASSERT_EQ(w.tell(choose), "");
    w.passSafety();
    ASSERT_EQ(w.step().test, "dryer_element.gnd");
    for (int n = 0; n < 6 && w.step().test == "dryer_element.gnd"; ++n)
        ASSERT_EQ(w.read(w.step().placement == 0 ? "4 ohm" : "6.5 ohm"), ""); // the two halves of a 10.5 ohm coil
    w.toTheEnd();
    ASSERT_EQ(w.verdict().parts, std::vector<std::string>{"dryer_element"});
}

TEST(Repair, IsNotProvenBeforeAVerdict)
{
    Walker w("dryer_elec/no_heat");
    EXPECT_EQ(w.say(Command::What::Prove), "not_now");
}

TEST(Repair, IsClosedUpAndHeldBeforeTheMachineRuns)
{
    Walker w("dryer_elec/no_heat");
    openCutOff(w);
    ASSERT_EQ(w.say(Command::What::Prove), "");
    EXPECT_EQ(w.step().screen, "S8") << "wires are still off";
    ASSERT_EQ(w.say(Command::What::Confirm), "");
    EXPECT_EQ(w.step().screen, "S7");
    EXPECT_NE(w.session().gate().power, Power::Running);
    ASSERT_EQ(w.say(Command::What::Confirm), "");
    EXPECT_EQ(w.step().id, "proof");
    EXPECT_EQ(w.session().gate().power, Power::Running);
}

TEST(Repair, ThatWorkedIsKeptAndEndsOff)
{
    Walker w("dryer_elec/no_heat");
    openCutOff(w);
    ASSERT_EQ(w.say(Command::What::Prove), "");
    w.passSafety();
    ASSERT_EQ(w.answer("works"), "");
    EXPECT_EQ(w.step().screen, "S9") << "it still counts as on";
    w.passSafety();
    ASSERT_TRUE(w.atVerdict());
    EXPECT_EQ(w.session().facts().outcome, "fixed");
    EXPECT_EQ(w.verdict().parts, std::vector<std::string>{"thermal_cutoff"}) << "the proof is no evidence of the fault";
}

TEST(Repair, ThatDidNotHelpStartsTheSearchAgain)
{
    Walker w("dryer_elec/no_heat");
    openCutOff(w);
    ASSERT_EQ(w.say(Command::What::Prove), "");
    w.passSafety();
    ASSERT_EQ(w.answer("same"), "");
    EXPECT_EQ(w.session().facts().outcome, "not_fixed");
    w.passSafety();
    if (w.atVerdict()) {
        EXPECT_EQ(w.verdict().kind, Verdict::Kind::NotProven);
    }
    ASSERT_EQ(w.say(Command::What::Undo), "") << "a slip of the finger";
    EXPECT_FALSE(w.session().facts().outcome.has_value());
}

TEST(Repair, LeftForLaterKeepsTheVerdict)
{
    Walker w("dryer_elec/no_heat");
    openCutOff(w);
    ASSERT_EQ(w.say(Command::What::Prove), "");
    ASSERT_EQ(w.say(Command::What::Decline), "");
    ASSERT_TRUE(w.atVerdict());
    EXPECT_EQ(w.verdict().parts, std::vector<std::string>{"thermal_cutoff"});
    EXPECT_EQ(w.say(Command::What::Prove), "") << "and may be taken up again";
}

// A coil that touched its can: no power before the new one reads free of it. Common practice, no source.
TEST(Repair, OfAGroundIsReadBeforePowerComesBack)
{
    Walker w("dryer_elec/too_hot");
    grounded(w);
    ASSERT_EQ(w.say(Command::What::Prove), "");
    w.passSafety();
    ASSERT_EQ(w.step().test, "dryer_element.gnd");

    ASSERT_EQ(w.read("0.4 ohm"), "") << "the new one touches too";
    w.passSafety();
    EXPECT_EQ(w.step().test, "dryer_element.gnd");
    EXPECT_NE(w.session().gate().power, Power::Running);

    for (int n = 0; n < 4 && w.step().test == "dryer_element.gnd"; ++n)
        ASSERT_EQ(w.read("OL"), "");
    ASSERT_EQ(w.step().screen, "S8");
    w.passSafety();
    EXPECT_EQ(w.step().id, "proof");
    EXPECT_EQ(w.session().gate().power, Power::Running);
}

TEST(EnergizedTests, AreTurnedOnWithinAJobByThePersonAlone)
{
    Walker w("dryer_elec/no_heat", false);
    w.passSafety();
    EXPECT_FALSE(w.session().abilities().energized);
    EXPECT_EQ(w.say(Command::What::Energized, "perhaps"), "bad_message");
    ASSERT_EQ(w.say(Command::What::Energized, "on"), "");
    EXPECT_TRUE(w.session().abilities().energized);
    ASSERT_EQ(w.say(Command::What::Energized, "off"), "");
    EXPECT_FALSE(w.session().abilities().energized);
}

TEST(EnergizedTests, NeverIsTakenBackOnlyByAskingForThem)
{
    Walker w("dryer_elec/no_heat");
    for (int n = 0; n < 200 && w.step().kind != StepView::Kind::Hold && !w.atVerdict(); ++n) {
        if (w.step().screen.empty())
            w.healthy();
        else
            w.passOne();
    }
    ASSERT_EQ(w.step().kind, StepView::Kind::Hold);
    Command never;
    never.what = Command::What::Decline;
    never.never = true;
    ASSERT_EQ(w.tell(never), "");
    EXPECT_FALSE(w.session().abilities().energized);
    ASSERT_EQ(w.say(Command::What::Undo), "");
    EXPECT_FALSE(w.session().abilities().energized) << "undo takes back what is believed, not what was said of safety";
    ASSERT_EQ(w.say(Command::What::Energized, "on"), "");
    EXPECT_TRUE(w.session().abilities().energized);
}

} // namespace
} // namespace core
