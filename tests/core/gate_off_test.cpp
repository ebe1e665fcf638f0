// The two ways to dead. Sources: 29 CFR 1910.147(a)(2)(iii)(A) (cord and plug in exclusive control), 1910.333(b)(1) (a breaker
// that is off and not measured counts as energized), 1910.333(b)(2)(iv)(B) (absence of voltage is tested); NFPA 70E 120.5
// (known source, each conductor to each other and to ground, known source; secondary). Limits of volts and minutes: common
// practice, no source; 230 V +-10 %: IEC 60038 (secondary).
#include "tests/core/gate_fixture.h"

#include <algorithm>

using namespace gatetest;

namespace {

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

TEST(GateDead, PanelThatWasOffBeforeIsNotForgotten)
{
    Walk w;
    w.want(ask());
    ASSERT_FALSE(w.send(StartAnswered{StartAnswer::Open})); // which one was not said
    w.pass(dead(), Screen::S1);
    w.shows(dead());
    const Screening back = w.want(watch());
    ASSERT_EQ(back.screen, Screen::S8);
    EXPECT_EQ(std::ranges::count(back.boxes, Box{"covers_on", {}}), 1);
    EXPECT_EQ(std::ranges::count(back.boxes, Box{"every_wire", {}}), 1);
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

} // namespace
