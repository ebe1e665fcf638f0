// Transitions of power at the start, at an alarm, and while it runs closed up. Sources: 29 CFR 1910.333(b)(2)(ii)(B) (a
// selector switch does not isolate); what an owner is asked: common practice, no source.
#include "tests/core/gate_fixture.h"

using namespace gatetest;

namespace {

TEST(GateStart, NothingIsKnown)
{
    Walk w;
    EXPECT_EQ(w.power(), Power::Unknown);
    EXPECT_EQ(w.state.inside.covers, Covers::Unknown);
    EXPECT_FALSE(w.state.inside.wiresKnown);
    EXPECT_EQ(w.state.inside.clips, Clips::Unknown);
    EXPECT_TRUE(w.state.stored.discharged.empty());
}

TEST(GateStart, DailyUseTakesOneQuestion)
{
    Walk w;
    w.closedAtStart();
    w.shows(ask());
    w.shows(request("lint", StepClass::A));
}

TEST(GateStart, OpenPanelLeavesOnlyTheWayToDead)
{
    Walk w;
    w.want(ask());
    ASSERT_FALSE(w.send(StartAnswered{StartAnswer::Open}));
    w.inserts(ask(), Screen::S1);
    w.inserts(watch(), Screen::S1);
}

TEST(GateStart, AlarmAtTheStartIsS14AndAVeto)
{
    Walk w;
    w.want(ask());
    ASSERT_FALSE(w.send(StartAnswered{StartAnswer::Alarm}));
    w.pass(ask(), Screen::S14);
    w.refuses(watch(), RefusalCode::Veto);
    w.inserts(dead(), Screen::S1);
}

TEST(GateStart, StartsOnce)
{
    Walk w;
    w.isolated();
    EXPECT_TRUE(refusedWith(w.send(started()), RefusalCode::NotNow));
    EXPECT_EQ(w.power(), Power::Isolated);
}

TEST(GateAlarm, GasStopsFromEverywhere)
{
    for (const AlarmKind kind : {AlarmKind::Gas, AlarmKind::CarbonMonoxide}) {
        Walk w;
        w.isolated();
        ASSERT_FALSE(w.send(Alarm{kind}));
        EXPECT_EQ(w.power(), Power::Stopped);
        for (const StepRequest &r : {ask(), dead(), watch(), clips(), face()})
            w.inserts(r, Screen::S12);
        EXPECT_EQ(endOfWalk(w.state, verdictRequest(), w.now).screen, Screen::S12);
    }
}

TEST(GateAlarm, ItWasNotGasLeadsOutOnce)
{
    Walk w;
    w.isolated();
    ASSERT_FALSE(w.send(Alarm{AlarmKind::Gas}));
    EXPECT_TRUE(refusedWith(w.send(NotGas{AlarmKind::Gas}), RefusalCode::Stopped));
    ASSERT_FALSE(w.send(NotGas{AlarmKind::Smoke}));
    w.pass(ask(), Screen::S14);
    EXPECT_EQ(w.power(), Power::Unknown);
    ASSERT_FALSE(w.send(Alarm{AlarmKind::Gas}));
    EXPECT_TRUE(refusedWith(w.send(NotGas{AlarmKind::Smoke}), RefusalCode::Stopped));
    EXPECT_EQ(w.power(), Power::Stopped);
}

TEST(GateAlarm, PressedByMistakeClosesTheJob)
{
    Walk w;
    w.closedAtStart();
    ASSERT_FALSE(w.send(Alarm{AlarmKind::Gas}));
    ASSERT_FALSE(w.send(PressedByMistake{}));
    EXPECT_TRUE(refusedWith(w.send(NotGas{AlarmKind::Smoke}), RefusalCode::Stopped));
    w.inserts(ask(), Screen::S12);
}

TEST(GateAlarm, ShockWhileOnCountsAsOn)
{
    for (const AlarmKind kind : {AlarmKind::Shock, AlarmKind::Smoke, AlarmKind::Sparks, AlarmKind::Water}) {
        Walk w;
        w.closedAtStart();
        w.pass(watch(), Screen::S7);
        ASSERT_FALSE(w.send(Alarm{kind}));
        EXPECT_EQ(w.power(), Power::Energized);
        w.pass(dead(), Screen::S14);
        w.pass(dead(), Screen::S9, Way::Plug);
        w.shows(dead());
        w.refuses(watch(), RefusalCode::Veto);
        w.refuses(clips(), RefusalCode::Veto);
    }
}

TEST(GateAlarm, DecliningS14EndsTheJob)
{
    Walk w;
    w.closedAtStart();
    ASSERT_FALSE(w.send(Alarm{AlarmKind::Water}));
    w.inserts(ask(), Screen::S14);
    ASSERT_FALSE(w.send(Declined{}));
    EXPECT_EQ(w.power(), Power::Stopped);
    w.inserts(dead(), Screen::S14);
}

TEST(GateTouch, BreakerIsResetOnce)
{
    Walk w;
    w.closedAtStart();
    StepRequest reset = request("breaker", StepClass::AP);
    reset.touches = "breaker";
    w.pass(reset, Screen::S7);
    EXPECT_EQ(w.power(), Power::Unknown);
    w.shows(reset);
    w.shows(reset); // the same screen once more is not a second reset
    ASSERT_FALSE(w.send(ReadingTaken{reset, Outcome::Good, {}}));
    w.shows(ask());
    w.refuses(reset, RefusalCode::OneReset);
}

TEST(GateTouch, OneRunServesResetAndWhatFollows)
{
    Walk w;
    w.closedAtStart();
    StepRequest reset = request("breaker", StepClass::AP);
    reset.touches = "breaker";
    reset.inUse = true;
    w.pass(reset, Screen::S7);
    EXPECT_EQ(w.power(), Power::Running);
    w.shows(reset);
    ASSERT_FALSE(w.send(ReadingTaken{reset, Outcome::Good, {}}));
    w.shows(watch());
    ASSERT_FALSE(w.send(ReadingTaken{watch(), Outcome::Good, {}}));
    w.pass(dead(), Screen::S9, Way::Plug);
    w.shows(dead());
}

TEST(GateTouch, FromDeadItIsUnknownAfterwards)
{
    Walk w;
    w.isolated();
    w.shows(dead());
    StepRequest reset = request("breaker", StepClass::AP);
    reset.touches = "breaker";
    w.pass(reset, Screen::S8);
    w.pass(reset, Screen::S7);
    EXPECT_EQ(w.power(), Power::Isolated);
    w.shows(reset);
    EXPECT_EQ(w.power(), Power::Unknown);
    w.inserts(dead(), Screen::S1);
}

TEST(GateTouch, AnsweredWithoutBeingShownIsAResetToo)
{
    Walk w;
    w.closedAtStart();
    StepRequest reset = request("breaker", StepClass::AP);
    reset.touches = "breaker";
    reset.inUse = true;
    w.pass(reset, Screen::S7);
    ASSERT_FALSE(w.send(ReadingTaken{reset, Outcome::Good, {}}));
    w.inserts(reset, Screen::S9);
}

TEST(GateTouch, MayChargeWhatWasDischarged)
{
    Walk w;
    w.isolated();
    StepRequest board = dead("board.pins", {});
    board.stepClass = StepClass::DS;
    board.store = Store::Board;
    board.storeName = "control_board";
    w.pass(board, Screen::S10);
    w.shows(board);
    StepRequest plug = request("other_outlet", StepClass::AP);
    plug.touches = "outlet";
    w.pass(plug, Screen::S8);
    w.pass(plug, Screen::S7);
    w.shows(plug);
    w.pass(board, Screen::S1);
    w.inserts(board, Screen::S10);
}

TEST(GateRun, AlarmingAnswerEndsTheRun)
{
    Walk w;
    w.closedAtStart();
    w.pass(watch(), Screen::S7);
    w.shows(watch());
    ASSERT_FALSE(w.send(ReadingTaken{watch(), Outcome::Failed, VetoReason::HotWhenOff}));
    w.inserts(watch("second"), Screen::S9);
    w.pass(watch("second"), Screen::S9, Way::Plug);
    w.refuses(watch("second"), RefusalCode::Veto);
}

TEST(GateRun, DailyUseRunsWithOneScreen)
{
    Walk w;
    w.closedAtStart();
    w.pass(watch(), Screen::S7);
    EXPECT_EQ(w.power(), Power::Running);
    w.shows(watch());
    w.inserts(ask(), Screen::S9);
    w.pass(ask(), Screen::S9, Way::Control);
    EXPECT_EQ(w.power(), Power::Unknown);
    w.shows(ask());
    w.inserts(watch(), Screen::S7);
    w.inserts(dead(), Screen::S1);
}

TEST(GateRun, AfterDeadWorkEverythingGoesBackByName)
{
    Walk w;
    w.isolated();
    w.shows(dead("element.ohm", {"element.t1", "element.t2"}));
    const Screening back = w.want(watch());
    ASSERT_EQ(back.screen, Screen::S8);
    std::vector<std::string> ids;
    for (const Box &box : back.boxes)
        ids.push_back(box.id);
    EXPECT_EQ(ids, (std::vector<std::string>{"wire:element.t1", "wire:element.t2", "meter_off", "nothing_trapped", "cover:back"}));
    for (std::size_t i = 0; i < ids.size(); ++i) { // each box counts
        std::vector<std::string> less = ids;
        less.erase(less.begin() + static_cast<std::ptrdiff_t>(i));
        EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S8, less}), RefusalCode::Boxes));
    }
    ASSERT_FALSE(w.send(Confirmed{Screen::S8, ids}));
    EXPECT_TRUE(putBackList(w.state).empty());
    EXPECT_EQ(w.state.inside.covers, Covers::Closed);
    w.pass(watch(), Screen::S7);
    w.shows(watch());
}

TEST(GateRun, EverythingElseEndsTheRunAsOn)
{
    const std::vector<GateEvent> others{Skipped{"air"}, Declined{}, Chosen{"x"}, Undone{}, Amended{}};
    for (const GateEvent &other : others) {
        Walk w;
        w.closedAtStart();
        w.pass(watch(), Screen::S7);
        w.shows(watch());
        ASSERT_FALSE(w.send(other));
        EXPECT_EQ(w.power(), Power::Energized);
        EXPECT_FALSE(w.state.ack);
        w.inserts(watch(), Screen::S9);
    }
}

TEST(GateRun, OffAtTheControlOnlyClosedUp)
{
    Walk w;
    w.isolated();
    w.pass(clips(), Screen::S4);
    w.inserts(ask(), Screen::S9);
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S9, {"off", "clips_off"}, Way::Control}), RefusalCode::NotNow));
    EXPECT_EQ(w.power(), Power::Energized);
}

} // namespace
