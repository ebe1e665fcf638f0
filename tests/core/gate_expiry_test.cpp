// How long each thing lasts. Minutes: common practice, no source; waits at capacitors and hot parts likewise.
#include "core/gate/inside.h"
#include "tests/core/gate_fixture.h"

#include <algorithm>

using namespace gatetest;

namespace {

Walk isolatedJob()
{
    Walk w;
    w.isolated();
    return w;
}

TEST(GateExpiry, IsolatedThirtyMinutesOfSilence)
{
    Walk w = isolatedJob();
    w.shows(dead());
    w.later(1800);
    EXPECT_FALSE(lapsed(w.state, w.now));
    w.shows(dead());
    w.later(1801);
    EXPECT_TRUE(lapsed(w.state, w.now));
    const Screening again = w.want(dead());
    EXPECT_EQ(again.screen, Screen::S1);
    EXPECT_EQ(again.form, "still_out"); // one line: still out and in your sight?
    EXPECT_EQ(again.boxes.front().id, "still_out");
    ASSERT_FALSE(w.send(Confirmed{Screen::S1, {"still_out"}}));
    w.shows(dead());
    EXPECT_TRUE(putBackList(w.state).everyWire);
}

TEST(GateExpiry, NotInSightIsUnpluggedFromTheTop)
{
    Walk w = isolatedJob();
    w.later(1801);
    w.inserts(dead(), Screen::S1);
    EXPECT_TRUE(refusedWith(w.send(DetourTaken{Detour::CannotReachPlug}), RefusalCode::NotNow));
    ASSERT_FALSE(w.send(DetourTaken{Detour::NotInSight}));
    EXPECT_EQ(w.want(dead()).form, "full");
}

TEST(GateExpiry, LoggingTheLapseKeepsTheOneLine)
{
    Walk w = isolatedJob();
    w.later(1801);
    ASSERT_FALSE(w.send(WentAway{Away::Lapsed}));
    EXPECT_EQ(w.want(dead()).form, "still_out");
    Walk left = isolatedJob();
    ASSERT_FALSE(left.send(WentAway{Away::Left}));
    EXPECT_EQ(left.want(dead()).form, "full");
}

TEST(GateExpiry, ProvenDeadFourHoursAtMost)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.proveDead(dead());
    for (int i = 0; i < 10; ++i) { // never silent for long
        w.later(1440);
        w.shows(dead("test" + std::to_string(i)));
    }
    EXPECT_EQ(w.power(), Power::ProvenDead);
    w.later(1);
    w.inserts(dead(), Screen::S2);
    Walk silent(started(true));
    silent.closedAtStart();
    silent.pass(dead(), Screen::S2);
    silent.proveDead(dead());
    silent.later(1801);
    silent.inserts(dead(), Screen::S2);
}

TEST(GateExpiry, ProofWithinFifteenMinutes)
{
    Walk w(started(true));
    w.closedAtStart();
    w.pass(dead(), Screen::S2);
    w.pass(dead(), Screen::S3);
    for (const double volts : {120., 0., 0., 0., 0., 0., 0.}) {
        w.want(dead());
        ASSERT_FALSE(w.send(ProofReading{volts}));
        w.later(128);
    }
    w.later(5); // 901 s
    EXPECT_TRUE(refusedWith(w.send(ProofReading{120}), RefusalCode::NotNow));
    w.inserts(dead(), Screen::S9);
}

TEST(GateExpiry, AcknowledgementTenMinutesRunFifteen)
{
    Walk live = isolatedJob();
    live.pass(clips(), Screen::S4);
    live.shows(clips());
    live.later(600);
    live.shows(clips());
    live.later(1);
    EXPECT_TRUE(refusedWith(live.send(ReadingTaken{clips(), Outcome::Good, {}}), RefusalCode::OffFirst));
    EXPECT_EQ(live.want(clips()).screen, Screen::S9);
    Walk run;
    run.closedAtStart();
    run.pass(watch(), Screen::S7);
    run.later(900);
    run.shows(watch("second"));
    run.later(1);
    run.inserts(watch(), Screen::S9);
    EXPECT_EQ(run.power(), Power::Energized);
}

TEST(GateExpiry, ChargeCountsFromDeadAndAgainAfterABreak)
{
    Walk w = isolatedJob();
    w.later(200);
    EXPECT_EQ(w.want(capacitor()).waitS, 100);
    ASSERT_FALSE(w.send(WentAway{Away::Left}));
    w.pass(capacitor(), Screen::S1);
    EXPECT_EQ(w.want(capacitor()).waitS, 300);
}

TEST(GateExpiry, HeatOutlivesTheProgramByTheWallClock)
{
    Walk w;
    w.closedAtStart();
    w.pass(watch(), Screen::S7);
    StepRequest hot = dead();
    hot.hotPart = "heating element";
    hot.hotWaitS = 900;
    w.pass(hot, Screen::S9, Way::Plug);
    w.now = {w.now.wallMs + 400'000, 7}; // another process ten minutes later: its running clock begins anew
    ASSERT_FALSE(w.send(WentAway{Away::Resumed, "p1"}));
    w.pass(hot, Screen::S1);
    EXPECT_EQ(w.want(hot).waitS, 500);
    w.now.steadyMs += 500'000; // only one of the clocks moved: the longer wait counts
    EXPECT_EQ(screenFor(w.state, hot, w.now).screen, Screen::S1);
}

TEST(GateExpiry, WaitsEndByTheClockThatRanLess)
{
    EXPECT_EQ(secondsSince({0, 0}, {50'000, 10'000}), 10);
    EXPECT_EQ(secondsSince({0, 0}, {10'000, 50'000}), 10);
    EXPECT_EQ(secondsSince({5'000, 0}, {0, 50'000}), 0);
    EXPECT_EQ(longestSince({0, 0}, {50'000, 10'000}), 50);
}

TEST(GateExpiry, ClocksThatDisagreeEndEverything)
{
    struct { std::int64_t wallMs, steadyMs; bool over; } cases[] = {
        {-1, 0, true}, {60'000, 0, false}, {60'001, 0, true}, {0, 60'001, true}, {86'400'000, 10, true}, {1'000, 1'000, false}};
    for (const auto &c : cases) {
        Walk w = isolatedJob();
        w.shows(dead());
        w.now = {w.now.wallMs + c.wallMs, w.now.steadyMs + c.steadyMs};
        EXPECT_EQ(lapsed(w.state, w.now), c.over) << c.wallMs << " " << c.steadyMs;
        EXPECT_EQ(w.want(dead()).what == Screening::What::Show, !c.over);
    }
    Walk on = isolatedJob();
    on.pass(clips(), Screen::S4);
    on.now.wallMs += 3'600'000; // the lid was closed
    on.inserts(clips(), Screen::S9);
}

TEST(GateExpiry, HotForAsLongAsItWasOn)
{
    Walk w;
    w.closedAtStart();
    w.pass(watch(), Screen::S7);
    w.later(800);
    StepRequest hot = dead();
    hot.hotPart = "igniter";
    hot.hotWaitS = 1800;
    hot.notes = {"very_hot"};
    w.pass(hot, Screen::S9, Way::Plug);
    const Screening s = w.want(hot);
    EXPECT_EQ(s.waitS, 1800);
    EXPECT_EQ(std::ranges::count(s.notes, "very_hot"), 1);
    w.later(1799);
    w.shows(dead("other.ohm"));
    w.later(60);
    EXPECT_EQ(std::ranges::count(w.want(hot).notes, "very_hot"), 0);
    EXPECT_EQ(w.want(hot).waitS, 0);
}

// The same log folds to the same state at every prefix, and a fold is not changed by having been made.
TEST(GateReplay, PrefixEqualsWhatWasShown)
{
    std::vector<std::pair<GateEvent, Instant>> log;
    std::vector<GateState> seen;
    Walk w;
    const auto note = [&](GateEvent event) {
        ASSERT_FALSE(w.send(event));
        log.emplace_back(std::move(event), w.now);
        seen.push_back(w.state);
        w.later(7);
    };
    log.emplace_back(started(), w.now);
    seen.push_back(w.state);
    note(ScreenShown{Screen::S0, ask()});
    note(StartAnswered{StartAnswer::Closed});
    note(ScreenShown{Screen::S1, dead()});
    note(Confirmed{Screen::S1, {"plug_out", "in_sight"}});
    note(StepShown{dead()});
    note(ReadingTaken{dead(), Outcome::Good, {}});
    note(Undone{});
    w.later(2000);
    note(ScreenShown{Screen::S1, dead()});
    note(Confirmed{Screen::S1, {"still_out"}});
    GateState state;
    for (std::size_t i = 0; i < log.size(); ++i) {
        state = apply(state, log[i].first, log[i].second);
        EXPECT_EQ(state, seen[i]) << i;
    }
}

} // namespace
