// Hold points, vetoes, breaks and the end of a walk. Sources: NFPA 70E 120.5 (testing counts as energized work; secondary),
// IEC 61010 measurement categories (secondary); one acknowledgement a reading: common practice, no source.
#include "tests/core/gate_fixture.h"

using namespace gatetest;

namespace {

TEST(GateLive, EachHasItsOwnHoldPoint)
{
    const std::vector<std::pair<StepClass, Screen>> holds{{StepClass::E1, Screen::S4}, {StepClass::E2, Screen::S5},
                                                          {StepClass::E3, Screen::S6}, {StepClass::EO, Screen::Eo}};
    for (const auto &[stepClass, screen] : holds) {
        Walk w;
        w.isolated();
        StepRequest r = request("live", stepClass);
        r.place = "back";
        r.coverOff = stepClass != StepClass::E2;
        EXPECT_TRUE(refusedWith(w.send(ReadingTaken{r, Outcome::Good, {}}), RefusalCode::NotAcknowledged));
        w.pass(r, screen);
        EXPECT_EQ(w.power(), Power::Energized);
        StepRequest other = r;
        other.test = other.step = "other";
        EXPECT_TRUE(refusedWith(w.send(ReadingTaken{other, Outcome::Good, {}}), RefusalCode::OffFirst));
        StepRequest placement = r;
        placement.placement = "2";
        EXPECT_TRUE(refusedWith(w.send(ReadingTaken{placement, Outcome::Good, {}}), RefusalCode::OffFirst));
        StepRequest window = r;
        window.process = "p2";
        EXPECT_TRUE(refusedWith(w.send(ReadingTaken{window, Outcome::Good, {}}), RefusalCode::OffFirst));
        w.shows(r);
        ASSERT_FALSE(w.send(ReadingTaken{r, Outcome::Good, {}}));
        EXPECT_TRUE(refusedWith(w.send(ReadingTaken{r, Outcome::Good, {}}), RefusalCode::OffFirst));
        w.pass(dead(), Screen::S9, Way::Plug);
        w.shows(dead());
    }
}

TEST(GateLive, HoldThatLeftTheScreenCannotBeAcknowledged)
{
    Walk w;
    w.isolated();
    w.inserts(clips(), Screen::S4);
    EXPECT_TRUE(refusedWith(w.send(Acknowledged{"other", {"have_all", "clips_on"}}), RefusalCode::OtherStep));
    EXPECT_TRUE(refusedWith(w.send(Acknowledged{{}, {"have_all"}}), RefusalCode::Boxes));
    w.shows(dead());
    EXPECT_TRUE(refusedWith(w.send(Acknowledged{{}, {"have_all", "clips_on"}}), RefusalCode::LeftScreen));
}

TEST(GateLive, WhatHappensMeanwhileCounts)
{
    Walk w;
    w.isolated();
    w.inserts(clips(), Screen::S4);
    ASSERT_FALSE(w.send(VetoFound{{VetoReason::DamagedCord, {}, false}}));
    EXPECT_TRUE(refusedWith(w.send(Acknowledged{{}, {"have_all", "clips_on"}}), RefusalCode::Veto));
}

TEST(GateLive, ClipsOfADeadTestComeOffFirst)
{
    Walk w;
    w.isolated();
    w.shows(dead("element.ohm", {"element.t1", "element.t2"}));
    StepRequest live = clips();
    live.pulls = {"element.t1"};
    const Screening back = w.want(live);
    ASSERT_EQ(back.screen, Screen::S8);
    EXPECT_EQ(back.form, "except");
    EXPECT_EQ(back.boxes.front().id, "wire:element.t2");
    EXPECT_EQ(back.boxes.size(), 3U); // the cover and the wire that this reading needs open stay as they are
    w.pass(live, Screen::S8);
    w.pass(live, Screen::S4);
    w.shows(live);
}

TEST(GateLive, DeclinedHoldLeavesItsClipsToBeTakenOff)
{
    Walk w;
    w.isolated();
    w.inserts(clips(), Screen::S4);
    ASSERT_FALSE(w.send(Declined{}));
    EXPECT_EQ(w.power(), Power::Isolated);
    w.inserts(watch(), Screen::S8);
    w.inserts(clips("board.volt"), Screen::S8);
    w.shows(dead());
}

TEST(GateLive, NeverHoldsUntilTakenBack)
{
    Walk w;
    w.isolated();
    w.inserts(face(), Screen::S5);
    ASSERT_FALSE(w.send(Declined{true}));
    w.refuses(face(), RefusalCode::Never);
    w.refuses(clips(), RefusalCode::Never);
    ASSERT_FALSE(w.send(Chosen{"house_supply.leg_to_leg"}));
    w.refuses(face(), RefusalCode::Never);
    w.shows(dead());
    ASSERT_FALSE(w.send(NeverTakenBack{}));
    w.inserts(face(), Screen::S8);
}

TEST(GateLive, DeclinedOrUndoneAfterTheHoldCountsAsOn)
{
    const std::vector<GateEvent> others{Skipped{"element.volt"}, Declined{}, Chosen{"x"}, Undone{}, Amended{}, Reported{}};
    for (const GateEvent &other : others) {
        Walk w;
        w.isolated();
        w.pass(clips(), Screen::S4);
        w.shows(clips());
        ASSERT_FALSE(w.send(other));
        EXPECT_EQ(w.power(), Power::Energized);
        w.inserts(clips(), Screen::S9);
        w.inserts(dead(), Screen::S9);
    }
}

TEST(GateLive, HardWiredIsProvedAgainAfterEachReading)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(clips(), Screen::S2);
    w.proveDead(clips());
    w.pass(clips(), Screen::S8);
    w.pass(clips(), Screen::S4);
    w.shows(clips());
    ASSERT_FALSE(w.send(ReadingTaken{clips(), Outcome::Good, {}}));
    w.pass(dead(), Screen::S9, Way::Breaker);
    EXPECT_EQ(w.power(), Power::OffUnproven);
    w.inserts(dead(), Screen::S3);
}

TEST(GateLive, OutletOnlyWhileUnplugged)
{
    Walk w;
    w.closedAtStart();
    w.inserts(face(), Screen::S1);
    Walk wired(started(true));
    wired.closedAtStart();
    wired.refuses(face(), RefusalCode::NotUnplugged);
}

TEST(GateLive, OutletHeatsNothing)
{
    Walk w;
    w.isolated();
    w.pass(face(), Screen::S5);
    w.shows(face());
    ASSERT_FALSE(w.send(ReadingTaken{face(), Outcome::Good, {}}));
    StepRequest hot = dead();
    hot.hotPart = "heating element";
    hot.hotWaitS = 900;
    w.pass(hot, Screen::S9, Way::Plug);
    w.shows(hot);
}

TEST(GateLive, SwitchedOnOnlyByWord)
{
    GateStarted off = started();
    off.facts.energizedOn = false;
    Walk w(off);
    w.isolated();
    w.refuses(face(), RefusalCode::EnergizedOff);
    ASSERT_FALSE(w.send(EnergizedTurned{true, true}));
    w.inserts(face(), Screen::S5);
    GateStarted caller = started(true);
    caller.facts.proxy = true;
    caller.facts.energizedOn = caller.facts.provingOn = false;
    Walk p(caller);
    p.closedAtStart();
    p.refuses(dead(), RefusalCode::ProvingOff);
    p.inserts(watch(), Screen::S7);
    GateStarted foreign = started();
    foreign.facts.textsChecked = false;
    Walk f(foreign);
    f.isolated();
    f.refuses(face(), RefusalCode::Untranslated);
    f.shows(dead());
}

TEST(GateLive, FrameIsCheckedFirst)
{
    GateStarted event = started();
    event.facts.frameTests = {"ground_path.ohm", "power_cord_terminal.iso"};
    Walk w(event);
    w.isolated();
    StepRequest live = clips();
    live.needsFrameCheck = true;
    Screening s = w.want(live);
    ASSERT_EQ(s.what, Screening::What::Tests);
    EXPECT_EQ(s.tests, event.facts.frameTests);
    EXPECT_TRUE(refusedWith(w.send(ReadingTaken{live, Outcome::Good, {}}), RefusalCode::FrameCheck));
    const StepRequest ground = dead("ground_path.ohm", {}), iso = dead("power_cord_terminal.iso", {});
    w.shows(ground);
    ASSERT_FALSE(w.send(ReadingTaken{ground, Outcome::Good, {}}));
    EXPECT_EQ(w.want(live).tests, std::vector<std::string>{"power_cord_terminal.iso"});
    w.shows(iso);
    ASSERT_FALSE(w.send(ReadingTaken{iso, Outcome::Part, {}}));
    EXPECT_EQ(w.want(live).what, Screening::What::Tests);
    ASSERT_FALSE(w.send(ReadingTaken{iso, Outcome::Good, {}}));
    w.inserts(live, Screen::S8);
    ASSERT_FALSE(w.send(Amended{false, true, "ground_path.ohm", {}}));
    w.refuses(live, RefusalCode::FrameCheck);
    w.inserts(face(), Screen::S8); // the outlet's face is not near the frame
}

TEST(GateLive, SkippedFrameCheckEndsLiveReadings)
{
    GateStarted event = started();
    event.facts.frameTests = {"ground_path.ohm"};
    Walk w(event);
    w.isolated();
    StepRequest live = clips();
    live.needsFrameCheck = true;
    w.want(live);
    ASSERT_FALSE(w.send(Skipped{"ground_path.ohm"}));
    w.refuses(live, RefusalCode::FrameCheck);
}

TEST(GateVeto, LiftedByRepairAndAGoodReadingOfIt)
{
    Walk w;
    w.isolated();
    w.shows(dead("element.gnd"));
    ASSERT_FALSE(w.send(ReadingTaken{dead("element.gnd"), Outcome::Failed, VetoReason::GroundFault}));
    w.refuses(watch(), RefusalCode::Veto);
    ASSERT_FALSE(w.send(ReadingTaken{dead("element.gnd"), Outcome::Good, {}})); // no repair was told
    w.refuses(watch(), RefusalCode::Veto);
    ASSERT_FALSE(w.send(RepairTold{"element.gnd"}));
    w.refuses(watch(), RefusalCode::Veto);
    ASSERT_FALSE(w.send(ReadingTaken{dead("element.ohm"), Outcome::Good, {}})); // another reading
    w.refuses(watch(), RefusalCode::Veto);
    ASSERT_FALSE(w.send(ReadingTaken{dead("element.gnd"), Outcome::Good, {}}));
    w.inserts(watch(), Screen::S8);
}

TEST(GateX, IsNeverShown)
{
    Walk w;
    w.isolated();
    StepRequest x = request("mw_hv.none", StepClass::X);
    x.zone = "microwave";
    const Screening s = w.want(x);
    EXPECT_EQ(s.screen, Screen::S13);
    EXPECT_EQ(s.form, "microwave");
    w.refuses(x, RefusalCode::NotForYou);
    ASSERT_FALSE(w.send(Chosen{"mw_hv.none"}));
    w.refuses(x, RefusalCode::NotForYou);
}

TEST(GateUnclear, ContradictionsAreWithheld)
{
    Walk w;
    w.isolated();
    StepRequest look = ask();
    look.coverOff = true;
    w.refuses(look, RefusalCode::Unclear);
    StepRequest run = watch();
    run.coverOff = true;
    w.refuses(run, RefusalCode::Unclear);
    w.refuses(request("p", StepClass::P), RefusalCode::Unclear);
}

TEST(GateAway, NothingIsDeadAnyMore)
{
    for (const Away why : {Away::PlugOutOfSight, Away::OtherPerson, Away::BreakerTouched, Away::Lapsed, Away::Left, Away::Resumed, Away::ContentChanged}) {
        Walk w;
        w.isolated();
        w.shows(dead());
        ASSERT_FALSE(w.send(WentAway{why, "p1"}));
        EXPECT_EQ(w.power(), Power::Unknown);
        EXPECT_EQ(w.state.inside.covers, Covers::Unknown);
        EXPECT_TRUE(putBackList(w.state).everyWire);
        EXPECT_EQ(putBackList(w.state).wires, std::vector<std::string>{"element.t1"}); // to be looked over
        w.inserts(dead(), Screen::S1);
        ASSERT_FALSE(w.send(Confirmed{Screen::S1, {"plug_out", "in_sight"}}));
        const Screening back = w.want(watch());
        EXPECT_EQ(back.screen, Screen::S8);
        EXPECT_EQ(back.boxes[1].id, "every_wire");
        Walk on;
        on.isolated();
        on.pass(clips(), Screen::S4);
        ASSERT_FALSE(on.send(WentAway{why, "p1"}));
        EXPECT_EQ(on.power(), Power::Energized);
        on.inserts(ask(), Screen::S9);
    }
}

TEST(GateAway, ClosedUpAfterABreakIsNotDailyUse)
{
    Walk w;
    w.closedAtStart();
    ASSERT_FALSE(w.send(WentAway{Away::Left, {}}));
    w.inserts(ask(), Screen::S0);
    ASSERT_FALSE(w.send(StartAnswered{StartAnswer::Closed}));
    w.shows(ask());
    w.inserts(watch(), Screen::S1);
    w.pass(watch(), Screen::S1);
    w.pass(watch(), Screen::S8);
    w.pass(watch(), Screen::S7);
    w.shows(watch());
}

TEST(GateEnd, SameListEndsEveryJob)
{
    Walk w;
    w.isolated();
    w.shows(dead());
    const StepRequest verdict = verdictRequest();
    EXPECT_EQ(endOfWalk(w.state, verdict, w.now).what, Screening::What::Show);
    EXPECT_EQ(putBackList(w.state).wires, std::vector<std::string>{"element.t1"});
    w.state = apply(w.state, ScreenShown{Screen::S8, verdict}, w.now);
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S8, {}}), RefusalCode::Boxes));
    ASSERT_FALSE(w.send(Confirmed{Screen::S8, {"wire:element.t1", "meter_off", "nothing_trapped", "cover:back"}}));
    EXPECT_TRUE(putBackList(w.state).empty());
}

TEST(GateEnd, OffComesFirst)
{
    Walk w;
    w.closedAtStart();
    w.pass(watch(), Screen::S7);
    EXPECT_EQ(endOfWalk(w.state, verdictRequest(), w.now).screen, Screen::S9);
    w.inserts(ask(), Screen::S9);
    ASSERT_FALSE(w.send(Declined{})); // "I cannot": nothing else is shown, and the verdict says it may be on
    w.refuses(ask(), RefusalCode::MayBeOn);
    EXPECT_EQ(endOfWalk(w.state, verdictRequest(), w.now).what, Screening::What::Show);
}

TEST(GateEnd, AfterABreakHandsGoInOnlyWhenDead)
{
    Walk w;
    w.isolated();
    w.shows(dead());
    ASSERT_FALSE(w.send(WentAway{Away::Left, {}}));
    EXPECT_EQ(endOfWalk(w.state, verdictRequest(), w.now).screen, Screen::S1);
}

} // namespace
