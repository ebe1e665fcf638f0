// The walk in a terminal, typed line by line over the shipped trees.
#include "tests/support/terminal_person.h"

#include <gmock/gmock.h>

namespace test {
namespace {

using core::Event;
using core::StepView;

#define SHOWS(text, part) EXPECT_THAT(text, ::testing::HasSubstr(part))
#define SHOWS_NOT(text, part) EXPECT_THAT(text, ::testing::Not(::testing::HasSubstr(part)))

constexpr const char *kTree = "dryer_elec/no_heat";
constexpr const char *kElement = "dryer_element.ohm";

bool isScreen(const StepView &step, std::string_view screen)
{
    return step.screen == screen;
}

// ---- understood as, before it is taken ------------------------------------------------------------------------------

TEST(WalkReading, ABareNumberIsSaidBackBeforeItIsTaken)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    const int before = walk.count(Event::What::Read);
    SHOWS(walk.type({"10.8"}), "10.8 \u03a9. Enter takes it, or type it again: ");
    EXPECT_EQ(walk.count(Event::What::Read), before);
    walk.type({"10.8", ""});
    EXPECT_EQ(walk.count(Event::What::Read), before + 1);
    EXPECT_EQ(walk.last(Event::What::Read).reading->amount.value, 10.8);
}

TEST(WalkReading, WhatIsTypedInsteadCounts)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    SHOWS(walk.type({"4k7", "10,8", ""}), "good");
    EXPECT_EQ(walk.last(Event::What::Read).reading->amount.value, 10.8);
    SHOWS(walk.all, "4.7 k\u03a9. Enter takes it");
}

TEST(WalkReading, WithItsUnitItIsTakenAtOnceAndItsMeaningIsSaid)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    const std::string shown = walk.type({"OL"});
    SHOWS_NOT(walk.all, "Enter takes it");
    SHOWS(shown, "=> OL: nothing gets through. Once more, to be sure.");
    SHOWS(walk.type({"OL"}), "failed its test, twice");
}

TEST(WalkReading, WhatIsNotUnderstoodIsNotTaken)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    const int before = walk.count(Event::What::Read);
    SHOWS(walk.type({"12 V"}), "Not taken: ");
    walk.type({"banana"});
    EXPECT_EQ(walk.count(Event::What::Read), before);
}

// ---- danger ---------------------------------------------------------------------------------------------------------

TEST(WalkDanger, AnyOfItsWordsOpensItsPageAnywhere)
{
    for (const auto &[word, screen] : std::map<std::string, std::string>{{"smoke", "S14"},
                                                                         {"shock", "S14"},
                                                                         {"water", "S14"},
                                                                         {"spark", "S14"},
                                                                         {"gas", "S12"},
                                                                         {"co", "S12"},
                                                                         {"stop", "S12"}}) {
        TypedWalk walk(kTree);
        SHOWS(walk.type({word}), "DANGER"); // at the first question
        EXPECT_EQ(walk.view().step.screen, screen) << word;
    }
    TypedWalk reading(kTree);
    ASSERT_TRUE(reading.goToTest(kElement));
    SHOWS(reading.type({"10.8", "there is smoke"}), "Do not touch the machine"); // where Enter was asked
    TypedWalk box(kTree);
    box.offBy = "control";
    ASSERT_TRUE(box.goTo([](const StepView &s) { return isScreen(s, "S1"); }));
    SHOWS(box.type({"1", "gas"}), "Leave now"); // at a box
    EXPECT_NE(box.last(Event::What::Confirmed).step, "S1");
}

TEST(WalkDanger, TheGasPageHasItsTwoWaysOut)
{
    TypedWalk walk(kTree);
    SHOWS(walk.type({"stop", "x"}), "Which of them?");
    EXPECT_EQ(walk.view().step.screen, "S12"); // no key leaves it by accident
    SHOWS(walk.type({"1"}), "What was it?");
    walk.type({"1", "2"});
    EXPECT_EQ(walk.view().step.screen, "S14");
    SHOWS(walk.all, "Do not touch the machine");
    TypedWalk other(kTree);
    SHOWS(other.type({"stop", "2"}), "This job is closed");
    EXPECT_EQ(other.count(Event::What::Mistake), 1);
}

TEST(WalkDanger, TheDangerPagesAreTheProgramsAlone)
{
    TypedWalk walk(kTree);
    ASSERT_FALSE(walk.view().step.caution.empty());
    walk.type({"gas"});
    SHOWS_NOT(walk.all.substr(walk.all.find("DANGER")), "from the tree");
    TypedWalk running(kTree);
    ASSERT_TRUE(running.goTo([](const StepView &s) { return isScreen(s, "S7"); }));
    SHOWS(running.type({"again"}), "from the tree"); // a caution that belongs to it
}

// ---- safety screens: every way that is listed can be taken ------------------------------------------------------------

TEST(WalkSafety, EachWayOfMakingItOff)
{
    std::map<std::string, core::Power> after;
    for (std::size_t way = 0; way < 4; ++way) {
        TypedWalk walk(kTree);
        ASSERT_TRUE(walk.goTo([](const StepView &s) { return isScreen(s, "S9"); }));
        const StepView step = walk.view().step;
        if (way >= step.ways.size())
            break;
        std::vector<std::string> lines{std::to_string(way + 1)};
        lines.insert(lines.end(), step.boxes.size(), "yes");
        walk.type(lines);
        after[step.ways[way].id] = walk.view().power;
        if (step.ways[way].id == "decline")
            EXPECT_EQ(walk.count(Event::What::Declined), 1);
        else
            EXPECT_EQ(walk.last(Event::What::Confirmed).value, step.ways[way].id);
    }
    EXPECT_GE(after.size(), 3U);
    EXPECT_EQ(after["plug"], core::Power::Isolated);
    EXPECT_NE(after["breaker"], core::Power::Isolated);
    EXPECT_NE(after["decline"], core::Power::Isolated);
}

TEST(WalkSafety, APlainYesSaysNotWhichWay)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goTo([](const StepView &s) { return isScreen(s, "S9"); }));
    SHOWS(walk.type({"yes"}), "Which of them?");
    EXPECT_EQ(walk.view().step.screen, "S9");
}

TEST(WalkSafety, EveryBoxIsTickedForItself)
{
    TypedWalk walk(kTree);
    walk.offBy = "control";
    ASSERT_TRUE(walk.goTo([](const StepView &s) { return isScreen(s, "S1"); }));
    const std::size_t boxes = walk.view().step.boxes.size();
    ASSERT_GE(boxes, 2U);
    SHOWS(walk.type({"1", "yes", "no"}), "Then not yet.");
    EXPECT_EQ(walk.view().step.screen, "S1");
    std::vector<std::string> lines{"1"};
    lines.insert(lines.end(), boxes, "yes");
    walk.type(lines);
    EXPECT_EQ(walk.view().power, core::Power::Isolated);
    EXPECT_EQ(walk.last(Event::What::Confirmed).boxes.size(), boxes);
}

TEST(WalkSafety, WhoCannotReachThePlugComesToTheBreaker)
{
    for (const std::string &line : {std::string("I cannot reach the plug"), std::string("2")}) {
        TypedWalk walk(kTree);
        walk.offBy = "control";
        ASSERT_TRUE(walk.goTo([](const StepView &s) { return isScreen(s, "S1"); }));
        walk.type({line});
        EXPECT_EQ(walk.view().step.screen, "S2") << line;
    }
}

TEST(WalkSafety, APlugOutOfSightMakesPowerUnknown)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    ASSERT_TRUE(core::isDead(walk.view().power));
    walk.type({"not in sight"});
    EXPECT_FALSE(core::isDead(walk.view().power));
    EXPECT_FALSE(walk.view().step.screen.empty()); // nothing inside is shown before it is off again
}

TEST(WalkSafety, AWaitIsCountedDownWhenItIsShownAgain)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goTo([](const StepView &s) { return isScreen(s, "S11"); }));
    const double first = walk.view().step.waitS;
    ASSERT_GT(first, 100);
    walk.wait(60);
    SHOWS(walk.type({""}), "wait: ");
    EXPECT_LT(walk.view().step.waitS, first - 50);
    SHOWS(walk.type({"1", "yes"}), "Not taken: ");
}

// ---- words ------------------------------------------------------------------------------------------------------------

TEST(WalkWords, HelpNamesWhatCanBeSaid)
{
    TypedWalk walk(kTree);
    const std::string shown = walk.type({"help"});
    for (const char *word : {"undo", "amend", "choose", "cannot", "skip", "not in sight", "park", "energized", "plate", "prove",
                             "outcome", "why", "suspects", "price", "together", "smoke"})
        SHOWS(shown, word);
}

TEST(WalkWords, UndoSaysWhatFellAway)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    walk.type({"10.8 ohm"});
    SHOWS(walk.type({"undo"}), "Taken back: ");
    SHOWS(walk.all, "10.8 \u03a9");
    EXPECT_EQ(walk.count(Event::What::Undone), 1);
}

TEST(WalkWords, AmendShowsFirstWhatFallsAway)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    walk.type({"10.8 ohm"});
    const std::vector<core::WayView> way = walk.view().way;
    std::size_t number = 0;
    for (const core::WayView &stub : way) {
        number += stub.amendable ? 1 : 0;
        if (stub.id == kElement)
            break;
    }
    SHOWS(walk.type({"amend"}), std::to_string(number) + ". ");
    SHOWS(walk.type({"amend " + std::to_string(number), "OL"}), "Then comes: ");
    EXPECT_EQ(walk.count(Event::What::Amended), 0);
    SHOWS(walk.type({"amend " + std::to_string(number), "OL", "no"}), "Left as it was.");
    EXPECT_EQ(walk.count(Event::What::Amended), 0);
    walk.type({"amend " + std::to_string(number), "OL", "yes"});
    EXPECT_EQ(walk.count(Event::What::Amended), 1);
    EXPECT_EQ(walk.last(Event::What::Amended).reading->what, core::Reading::What::OverLimit);
}

TEST(WalkWords, AmendsAnAnswerByItsNumber)
{
    TypedWalk walk(kTree);
    walk.type({"3"});
    const StepView ask = walk.view().step;
    ASSERT_EQ(ask.kind, StepView::Kind::Ask);
    ASSERT_GE(ask.answers.size(), 2U);
    walk.type({"1"});
    walk.type({"amend 1", "2", "yes"});
    EXPECT_EQ(walk.last(Event::What::Amended).value, ask.answers[1].value);
}

TEST(WalkWords, ChoosesByNameAndFromTheList)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    const auto offers = core::offersOf(walk.session(), true);
    ASSERT_FALSE(offers.empty());
    walk.type({"choose", "1"});
    EXPECT_EQ(walk.last(Event::What::Chosen).test, offers.front().test);
    walk.type({"choose dryer_element.case"});
    SHOWS(walk.type({"choose nothing of the kind"}), "No test of this machine");
    SHOWS(walk.type({"choose element"}), "1. ");
}

TEST(WalkWords, CannotHasItsFourGoodAnswers)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    const std::string place = walk.view().step.placeSay;
    SHOWS(walk.type({"cannot", "1"}), place);
    SHOWS(walk.type({"I cannot", "4"}), "Nothing is counted against anyone");
    EXPECT_EQ(walk.count(Event::What::Skipped), 0);
    walk.type({"cannot", "2"});
    EXPECT_EQ(walk.last(Event::What::Skipped).value, "cannot reach it");
    ASSERT_TRUE(walk.goTo([](const StepView &s) { return s.screen.empty(); }));
    walk.type({"cannot", "3"});
    EXPECT_EQ(walk.last(Event::What::Skipped).value, "it looks different here");
    walk.type({"cannot", "5"});
    EXPECT_EQ(walk.count(Event::What::Left), 1);
}

TEST(WalkWords, ThePlateIsTaken)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    SHOWS(walk.type({"plate 240 V 5400 W"}), "Taken: ");
    const Event &sheet = walk.last(Event::What::Sheet);
    ASSERT_TRUE(sheet.reading);
    EXPECT_NEAR(sheet.reading->amount.value, 240. * 240 / 5400, 1e-9); // R = V^2 / P
    EXPECT_EQ(sheet.step, "dryer_element.rating");
}

TEST(WalkWords, PowerIsAllowedAndForbiddenByName)
{
    TypedWalk walk(kTree, false);
    walk.type({"energized on"});
    EXPECT_TRUE(walk.view().energizedAllowed);
    walk.type({"energized off"});
    EXPECT_FALSE(walk.view().energizedAllowed);
    SHOWS(walk.type({"energized"}), "`energized on` or `energized off`");
}

TEST(WalkWords, WhySuspectsAndPriceNameThePart)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    walk.type({"OL"});
    SHOWS(walk.type({"suspects"}), "eating element");
    SHOWS(walk.type({"why"}), "our estimate");
    SHOWS(walk.type({"why heating element"}), "OL");
    SHOWS(walk.type({"why flux capacitor"}), "No part of this machine");
    SHOWS(walk.type({"price"}), "not proven");
}

TEST(WalkWords, ParkingSaysHowToGoOn)
{
    TypedWalk walk(kTree);
    ASSERT_TRUE(walk.goToTest(kElement));
    walk.type({"park"});
    SHOWS(walk.all, "To go on: meterfirst-cli walk --job 0412-KTR");
    SHOWS(walk.all, "still open: ");
    EXPECT_EQ(walk.count(Event::What::Left), 1);
}

// ---- to a verdict, its repair and its outcome ---------------------------------------------------------------------------

TEST(WalkVerdict, ABrokenElementIsReplacedPutTogetherAndProven)
{
    TypedWalk walk(kTree);
    walk.reads[kElement] = "OL";
    ASSERT_FALSE(walk.goTo([](const StepView &s) { return s.id == "never"; })); // to the end
    const core::StateView end = walk.view();
    ASSERT_TRUE(end.verdict);
    ASSERT_EQ(end.verdict->kind, core::Verdict::Kind::Replace);
    SHOWS(walk.type({""}), "== Replace the heating element ==");
    std::vector<std::string> lines{"together"};
    lines.insert(lines.end(), end.verdict->putBack.size(), "yes");
    walk.type(lines);
    EXPECT_TRUE(walk.view().verdict->isTogether);
    walk.type({"prove"});
    EXPECT_EQ(walk.count(Event::What::Proving), 1);
    ASSERT_TRUE(walk.goTo([](const StepView &s) { return s.id == "proof" && s.screen.empty(); }));
    walk.type({"1"});
    SHOWS(walk.type({"outcome", "1"}), "Kept: It works again.");
    EXPECT_EQ(walk.view().outcome, "fixed");
}

bool toTheEnd(TypedWalk &walk)
{
    walk.goTo([](const StepView &) { return false; });
    return walk.view().verdict.has_value();
}

TEST(WalkVerdict, ABreakerThatTripsAgainIsACallAndNoReset)
{
    TypedWalk walk(kTree);
    walk.machine["breaker"] = "trips again";
    ASSERT_TRUE(toTheEnd(walk));
    EXPECT_EQ(walk.view().verdict->kind, core::Verdict::Kind::Call);
    SHOWS(walk.type({"again"}), "== Buy nothing: a job for the electrician ==");
    SHOWS(walk.type({"prove"}), "Not taken: ");
}

TEST(WalkVerdict, AColdCycleIsNothingToBuy)
{
    TypedWalk walk(kTree);
    walk.machine["cycle"] = "air only";
    walk.machine["set_heat"] = "warm now";
    ASSERT_TRUE(toTheEnd(walk));
    EXPECT_EQ(walk.view().verdict->kind, core::Verdict::Kind::Fix);
    SHOWS(walk.type({"again"}), "== Nothing to buy");
}

TEST(WalkVerdict, WithNothingFoundItIsNotProvenAndATestCanBeTaken)
{
    TypedWalk walk(kTree);
    walk.reads.clear();
    ASSERT_TRUE(toTheEnd(walk));
    ASSERT_EQ(walk.view().verdict->kind, core::Verdict::Kind::NotProven);
    SHOWS(walk.type({"again"}), "== Not proven yet: buy nothing ==");
    ASSERT_FALSE(walk.view().offers.empty());
    const std::string first = walk.view().offers.front().test;
    walk.type({"1"});
    EXPECT_EQ(walk.last(Event::What::Chosen).test, first);
}

} // namespace
} // namespace test
