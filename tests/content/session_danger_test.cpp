// What is seen on the way and forbids power; what a plain yes may be taken for; a run that is over before it is told.
#include "tests/support/session_laws.h"
#include "tests/support/walker.h"

#include <algorithm>

namespace core {
namespace {

void answerAsks(Walker &w)
{
    w.passSafety();
    while (w.step().kind == StepView::Kind::Ask && w.session().presentation().wanted.what == Wanted::What::Ask)
        ASSERT_EQ(w.healthy(), "");
}

std::string chosen(Walker &w, const std::string &test)
{
    Command c;
    c.what = Command::What::Choose;
    c.test = test;
    return w.tell(c);
}

std::string confirmed(Walker &w, const std::string &way)
{
    Command c;
    c.what = Command::What::Confirm;
    c.way = way;
    return w.tell(c);
}

// 29 CFR 1910.334(b)(2): a tripped device is not closed again until it is known that it can be done safely (from memory).
TEST(Danger, ABreakerThatTripsAgainIsCalledForAndNothingRuns)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("breaker"));
    ASSERT_EQ(w.answer("trips again"), "");
    for (int n = 0; n < 80 && !(w.atVerdict() && w.step().screen.empty()); ++n) {
        w.passSafety();
        EXPECT_FALSE(showsStep(w.session()) && w.session().presentation().request.stepClass == StepClass::R) << w.step().id;
        if (!w.atVerdict()) {
            ASSERT_EQ(w.healthy(), "");
        }
    }
    EXPECT_EQ(w.verdict().kind, Verdict::Kind::Call);
    EXPECT_EQ(w.verdict().call, "electrician");
    EXPECT_TRUE(w.verdict().parts.empty());
}

TEST(Danger, AWayThatDoesNotMakeItDeadIsNotTakenForDead)
{
    for (const char *way : {"cannot_reach_plug", "not_in_sight", "rubbish", "decline", "breaker"}) {
        Walker w("dryer_elec/no_heat");
        answerAsks(w);
        ASSERT_EQ(chosen(w, "thermal_cutoff.ohm"), "");
        ASSERT_EQ(w.step().screen, "S1");
        confirmed(w, way);
        EXPECT_NE(w.session().gate().power, Power::Isolated) << way;
    }
}

TEST(Danger, APlainYesAfterARunSaysNoMoreThanOffAtTheControl)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("outside_flap"));
    ASSERT_EQ(w.session().gate().power, Power::Running);
    ASSERT_EQ(w.healthy(), "");
    if (w.step().screen != "S9") {
        ASSERT_EQ(chosen(w, "thermal_cutoff.ohm"), "");
    }
    ASSERT_EQ(w.step().screen, "S9");
    ASSERT_EQ(w.say(Command::What::Confirm), "");
    EXPECT_FALSE(isDead(w.session().gate().power));
}

TEST(Danger, OfAnUnknownSortIsTheWorstCase)
{
    Walker w("dryer_elec/no_heat");
    Command stop;
    stop.what = Command::What::Stop;
    stop.why = "help";
    ASSERT_EQ(w.tell(stop), "");
    EXPECT_EQ(w.step().screen, "S12");
}

TEST(Danger, AMachineThatMayBeOnIsCalledForAndNothingIsOffered)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("outside_flap"));
    ASSERT_EQ(w.healthy(), "");
    if (w.step().screen != "S9") {
        ASSERT_EQ(chosen(w, "thermal_cutoff.ohm"), "");
    }
    ASSERT_EQ(w.say(Command::What::Decline), "");
    const StateView view = viewOf(w.session());
    ASSERT_TRUE(view.verdict.has_value());
    EXPECT_EQ(view.verdict->kind, Verdict::Kind::Call);
    EXPECT_TRUE(view.offers.empty());
}

// A load takes longer than the program keeps a machine for running: what was seen is told afterwards.
TEST(Danger, ARunThatLapsedIsToldAfterwardsAndNotRunAgain)
{
    Walker w("dryer_elec/no_heat");
    ASSERT_TRUE(w.goTo("outside_flap"));
    ASSERT_EQ(w.session().gate().power, Power::Running);
    ASSERT_EQ(w.say(Command::What::State, {}, 45 * 60), "");
    ASSERT_EQ(w.step().screen, "S9");
    ASSERT_EQ(w.say(Command::What::Confirm), "");
    EXPECT_EQ(w.step().id, "outside_flap");
    EXPECT_EQ(w.step().screen, "") << "no second run for what was seen in the first";
    EXPECT_NE(w.session().gate().power, Power::Running);
    const std::size_t looked = w.session().facts().looked.size();
    ASSERT_EQ(w.healthy(), "");
    EXPECT_EQ(w.session().facts().looked.size(), looked + 1);
}

} // namespace
} // namespace core
