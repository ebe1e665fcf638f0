// Every transition of power. Sources: 29 CFR 1910.333(b)(1) and (b)(2) (breaker off without measurement counts as
// energized), 1910.147(a)(2)(iii)(A) (cord and plug in exclusive control), NFPA 70E 120.5 (proof: known source, each
// conductor to each other and ground, known source; secondary); limits of volts and minutes: common practice, no source.
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

TEST(GateIsolate, CordByPlugHardWiredByProofAlone)
{
    Walk cord;
    cord.isolated();
    EXPECT_EQ(cord.power(), Power::Isolated);
    cord.shows(dead());
    Walk wired(started(true));
    wired.closedAtStart();
    wired.pass(dead(), Screen::S2);
    EXPECT_EQ(wired.power(), Power::OffUnproven);
    wired.proveDead(dead());
    EXPECT_EQ(wired.power(), Power::ProvenDead);
    wired.shows(dead());
    EXPECT_TRUE(refusedWith(wired.send(Confirmed{Screen::S1, {"plug_out", "in_sight"}}), RefusalCode::NotNow));
}

TEST(GateIsolate, SeveralDeadTestsAfterOneUnplugging)
{
    Walk w;
    w.isolated();
    for (int i = 0; i < 20; ++i) {
        const StepRequest r = dead("test" + std::to_string(i), {"wire" + std::to_string(i)}, i % 2 ? "back" : "console");
        w.shows(r);
        ASSERT_FALSE(w.send(ReadingTaken{r, Outcome::Good, {}}));
        w.later(300);
    }
    EXPECT_EQ(putBackList(w.state).wires.size(), 20U);
}

TEST(GateIsolate, PlugOutOfReachLeadsToTheBreaker)
{
    Walk w;
    w.closedAtStart();
    w.inserts(dead(), Screen::S1);
    ASSERT_FALSE(w.send(DetourTaken{Detour::CannotReachPlug}));
    w.inserts(dead(), Screen::S2);
    ASSERT_FALSE(w.send(DetourTaken{Detour::CanReachPlug})); // pressed by mistake
    w.inserts(dead(), Screen::S1);
    ASSERT_FALSE(w.send(DetourTaken{Detour::CannotReachPlug}));
    w.pass(dead(), Screen::S2);
    w.proveDead(dead());
    w.shows(dead());
    w.refuses(face(), RefusalCode::NotUnplugged);
}

TEST(GateIsolate, DecliningLeavesLooksOnly)
{
    Walk w;
    w.closedAtStart();
    w.inserts(dead(), Screen::S1);
    ASSERT_FALSE(w.send(Declined{}));
    w.refuses(dead(), RefusalCode::IsolationDeclined);
    w.refuses(watch(), RefusalCode::IsolationDeclined);
    w.shows(ask());
    EXPECT_EQ(endOfWalk(w.state, verdictRequest(), w.now).what, Screening::What::Show);
    ASSERT_FALSE(w.send(Chosen{"element.ohm"})); // the person may come back to it
    w.inserts(dead(), Screen::S1);
}

TEST(GateProof, TicksProveNothing)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.inserts(dead(), Screen::S3);
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S3, {"have_all", "within_call"}}), RefusalCode::ReadingNeeded));
    w.pass(dead(), Screen::S3);
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S3, {"have_all", "within_call"}}), RefusalCode::ReadingNeeded));
    EXPECT_EQ(w.power(), Power::Energized);
}

TEST(GateProof, AsksEveryPairTwiceAndTheKnownSourceAround)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    EXPECT_EQ(w.want(dead()).phase, "hold");
    w.pass(dead(), Screen::S3);
    std::vector<std::string> seen;
    while (w.power() == Power::Energized) {
        const Screening s = w.want(dead());
        seen.push_back(s.phase + (s.pair.empty() ? "" : ": " + s.pair + (s.dc ? " dc" : " ac")));
        if (s.phase == "work_point") {
            EXPECT_TRUE(refusedWith(w.send(ProofReading{0, true, "L1 to L9"}), RefusalCode::WrongPair));
        }
        ASSERT_FALSE(w.send(ProofReading{s.phase == "work_point" ? (s.dc ? 4.9 : 1.9) : 231.}));
        ASSERT_LT(seen.size(), 20U);
    }
    EXPECT_EQ(seen, (std::vector<std::string>{"known_before", "work_point: L1 to L2 ac", "work_point: L1 to bare metal ac",
                                              "work_point: L2 to bare metal ac", "work_point: L1 to L2 dc",
                                              "work_point: L1 to bare metal dc", "work_point: L2 to bare metal dc", "known_after"}));
    EXPECT_EQ(w.power(), Power::ProvenDead);
}

TEST(GateProof, KnownSourceWithin104To132Or207To253)
{
    for (const auto &[volts, good] : std::vector<std::pair<double, bool>>{{103.9, false}, {104, true}, {132, true}, {132.1, false},
                                                                         {206.9, false}, {207, true}, {253, true}, {253.1, false}, {0, false}}) {
        Walk w(started(true));
        w.closedAtStart();
        w.pass(dead(), Screen::S2);
        w.pass(dead(), Screen::S3);
        w.want(dead());
        ASSERT_FALSE(w.send(ProofReading{volts}));
        EXPECT_EQ(w.want(dead()).phase, good ? "work_point" : "known_before") << volts;
    }
}

TEST(GateProof, VoltsAtThePairAreNotDeadAndTwiceIsACall)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    for (int round = 1; round <= 2; ++round) {
        w.pass(dead(), Screen::S3);
        for (const double volts : {120., 0., round == 1 ? 2. : 118.}) {
            w.want(dead());
            ASSERT_FALSE(w.send(ProofReading{volts}));
        }
        EXPECT_EQ(w.power(), Power::Energized);
        EXPECT_EQ(w.want(dead()).form, "not_dead");
        w.pass(dead(), Screen::S9, Way::Breaker);
        EXPECT_EQ(w.power(), Power::OffUnproven);
    }
    w.refuses(dead(), RefusalCode::NotDead);
}

TEST(GateProof, FiveVoltsDcAreNotDeadEither)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.pass(dead(), Screen::S3);
    for (const double volts : {120., 0., 0., 0., -5.}) {
        w.want(dead());
        ASSERT_FALSE(w.send(ProofReading{volts}));
    }
    EXPECT_EQ(w.want(dead()).screen, Screen::S9);
}

TEST(GateProof, KnownSourceGoneAfterwardsVoidsTheWhole)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.pass(dead(), Screen::S3);
    for (const double volts : {120., 0., 0., 0., 0., 0., 0., 60.}) {
        w.want(dead());
        ASSERT_FALSE(w.send(ProofReading{volts}));
    }
    EXPECT_EQ(w.power(), Power::Energized);
    EXPECT_FALSE(w.state.proof);
    w.inserts(dead(), Screen::S9);
}

TEST(GateProof, AnotherMeterBeginsAgain)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.pass(dead(), Screen::S3);
    w.want(dead());
    ASSERT_FALSE(w.send(ProofReading{120}));
    ASSERT_FALSE(w.send(MeterChanged{goodMeter("m2")}));
    EXPECT_EQ(w.want(dead()).phase, "known_before");
    ASSERT_FALSE(w.send(MeterChanged{{"m3", {{2, 300}}, true, false, false, false}})); // not fit for a wall
    w.inserts(dead(), Screen::S9);
}

TEST(GateProof, OnlyThePlaceThatWasProved)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.proveDead(dead());
    w.shows(dead());
    w.inserts(dead("valve.ohm", {}, "bottom"), Screen::S3);
}

TEST(GateProof, AmendingItsReadingLowersNeverRaises)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.proveDead(dead());
    ASSERT_FALSE(w.send(Amended{true, false, {}, {}}));
    EXPECT_EQ(w.power(), Power::ProvenDead);
    ASSERT_FALSE(w.send(Amended{true, true, {}, {}}));
    EXPECT_EQ(w.power(), Power::Unknown);
    ASSERT_FALSE(w.send(Amended{true, false, {}, {}}));
    EXPECT_EQ(w.power(), Power::Unknown);
}

TEST(GateDead, ShownLeavesCoversWiresAndMeter)
{
    Walk w;
    w.isolated();
    w.shows(dead());
    EXPECT_EQ(w.state.inside.covers, Covers::Open);
    EXPECT_EQ(w.state.inside.pulled, (std::set<std::string>{"element.t1"}));
    EXPECT_EQ(w.state.inside.clips, Clips::Dead);
    ASSERT_FALSE(w.send(Skipped{"element.ohm"}));
    w.inserts(watch(), Screen::S8);
}

TEST(GateDead, MotorCapacitorIsMeasuredTwice)
{
    Walk w;
    w.isolated();
    Screening s = w.want(capacitor());
    ASSERT_EQ(s.screen, Screen::S10);
    EXPECT_EQ(s.phase, "reading");
    EXPECT_EQ(s.waitS, 300);
    EXPECT_TRUE(refusedWith(w.send(ChargeReading{0}), RefusalCode::Wait));
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S10, {}}), RefusalCode::ReadingNeeded));
    w.later(300);
    ASSERT_FALSE(w.send(ChargeReading{4.9}));
    s = w.want(capacitor());
    EXPECT_EQ(s.phase, "again");
    EXPECT_EQ(s.waitS, 30);
    EXPECT_TRUE(refusedWith(w.send(ChargeReading{0}), RefusalCode::Wait));
    w.later(30);
    ASSERT_FALSE(w.send(ChargeReading{0.3}));
    w.pass(capacitor(), Screen::S10);
    w.shows(capacitor());
}

TEST(GateDead, CapacitorThatStaysChargedIsACall)
{
    Walk w;
    w.isolated();
    w.want(capacitor());
    w.later(300);
    ASSERT_FALSE(w.send(ChargeReading{-5}));
    w.refuses(capacitor(), RefusalCode::StillCharged);
    w.refuses(watch(), RefusalCode::Veto);
    w.shows(dead());
}

TEST(GateDead, BoardIsWaitedFor)
{
    Walk w;
    w.isolated();
    StepRequest board = dead("board.pins");
    board.stepClass = StepClass::DS;
    board.store = Store::Board;
    board.storeName = "control_board";
    EXPECT_EQ(w.want(board).waitS, 600);
    EXPECT_TRUE(refusedWith(w.send(ChargeReading{0}), RefusalCode::NotNow)); // the board is not probed
    w.later(599);
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S10, {}}), RefusalCode::Wait));
    w.later(1);
    ASSERT_FALSE(w.send(Confirmed{Screen::S10, {}}));
    w.shows(board);
}

TEST(GateDead, HotPartWaitsOrIsReachedAtItsConnector)
{
    Walk w;
    w.closedAtStart();
    w.pass(watch(), Screen::S7);
    w.pass(dead(), Screen::S9, Way::Plug);
    StepRequest hot = dead();
    hot.hotPart = "heating element";
    hot.hotWaitS = 900;
    EXPECT_EQ(w.want(hot).waitS, 900);
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S11, {"cool"}}), RefusalCode::Wait));
    EXPECT_TRUE(refusedWith(w.send(Confirmed{Screen::S11, {}, Way::Connector}), RefusalCode::NotNow)); // none named
    hot.hotConnector = "the plug of the element";
    hot.step = hot.test = "element.hot";
    w.want(hot);
    ASSERT_FALSE(w.send(Confirmed{Screen::S11, {"only_connector"}, Way::Connector}));
    w.shows(hot);
    StepRequest later = dead("element.gnd");
    later.hotPart = "heating element";
    later.hotWaitS = 900;
    w.pass(later, Screen::S11);
    w.shows(later);
    w.shows(dead("other.ohm"));
}

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
