// What is told from a typed line before the session sees it.
#include "app/cli/as_typed.h"
#include "app/cli/danger_word.h"
#include "app/cli/walk_begin.h"
#include "core/reading/understand.h"
#include "tests/support/terminal_person.h"

namespace app {
namespace {

// Understood as, before it is taken: what differs from what was typed is asked; a slipped prefix is a factor of a thousand.
TEST(AsTyped, OnlyWhatNeedsNoQuestion)
{
    const core::Meter meter;
    const auto direct = [&](const char *typed, core::Measure measure) {
        const auto understood = core::understand(typed, measure, meter);
        EXPECT_TRUE(understood) << typed;
        return understood && isAsTyped(typed, understood->shownAs);
    };
    using enum core::Measure;
    for (const char *typed :
         {"10.8 ohm", "10.8ohm", "10.80 Ohms", "10.8 \u03a9", "10.8 \u2126", "4.7 kohm", "2.2 M\u03a9", "OL", "ol"})
        EXPECT_TRUE(direct(typed, Resistance)) << typed;
    for (const char *typed : {"10.8", "1", "4k7", "4.7k", "2.2 meg", "10,8 ohm", "0.0108 kohm"})
        EXPECT_FALSE(direct(typed, Resistance)) << typed;
    EXPECT_TRUE(direct("tone", Continuity));
    EXPECT_TRUE(direct("120 V", VoltageAc));
    EXPECT_FALSE(direct("120", VoltageAc));
    EXPECT_TRUE(direct("45 C", Temperature));
    EXPECT_FALSE(direct("112 F", Temperature));
    EXPECT_FALSE(direct("45", Temperature));
}

TEST(DangerWord, WhateverElseIsInTheLine)
{
    for (const auto &[typed, why] : std::map<std::string, std::string>{{"smoke", "smoke"},
                                                                       {"SMOKE!!", "smoke"},
                                                                       {"there is smoke", "smoke"},
                                                                       {"shock", "shock"},
                                                                       {"it tingles", "shock"},
                                                                       {"water, on the floor", "water"},
                                                                       {"sparks", "spark"},
                                                                       {"gas", "gas"},
                                                                       {"I smell gas and smoke", "gas"},
                                                                       {"co", "co"},
                                                                       {"carbon monoxide", "co"},
                                                                       {"stop", "gas"},
                                                                       {"STOP", "gas"},
                                                                       {"fire", "smoke"}})
        EXPECT_EQ(dangerIn(typed), why) << typed;
    for (const char *typed : {"", "no", "no smoke", "10.8 ohm", "OL", "1", "u", "cold", "jumps", "coil"})
        EXPECT_EQ(dangerIn(typed), std::nullopt) << typed;
}

TEST(MeterQuestion, KnowsItsWordsAndNoOthers)
{
    using Set = std::set<std::string>;
    EXPECT_EQ(functionsIn("rbv").value(), (Set{"resistance", "continuity", "voltage_ac"}));
    EXPECT_EQ(functionsIn("ohms, beeper, d").value(), (Set{"resistance", "continuity", "voltage_dc"}));
    EXPECT_EQ(functionsIn("none").value(), Set{});
    for (const char *typed : {"x", "rbx", "telepathy", "volts"})
        EXPECT_FALSE(functionsIn(typed)) << typed;
    EXPECT_EQ(functionsSaid({"resistance", "voltage_ac"}), "ohms, volts~");
    EXPECT_NE(missingSaid({"voltage_ac"}).find("Without ohms"), std::string::npos);
    EXPECT_EQ(missingSaid({"resistance", "voltage_ac"}), "");
}

std::string asked(core::Snapshot &snapshot, std::vector<std::string> lines, bool &taken)
{
    std::size_t next = 0;
    test::Person person([&](const std::string &) { return next == lines.size() ? std::nullopt : std::optional(lines[next++]); });
    Terminal terminal = person.terminal();
    taken = askBefore(core::Shipped::get().content(), terminal, snapshot);
    return person.all();
}

TEST(BeforeAJob, TheCounterHearsTheSentenceToReadAloud)
{
    core::Snapshot snapshot;
    snapshot.tree = "dryer_elec/no_heat";
    bool taken = false;
    const std::string shown = asked(snapshot, {"2", "rbv", "CAT III 600 V", "yes"}, taken);
    EXPECT_TRUE(taken);
    EXPECT_EQ(snapshot.who, "proxy");
    EXPECT_TRUE(snapshot.energized);
    EXPECT_NE(shown.find(core::Shipped::get().library.tree(snapshot.tree)->say), std::string::npos);
    EXPECT_NE(shown.find("manager"), std::string::npos);
}

TEST(BeforeAJob, AsksAgainForWhatItDoesNotKnow)
{
    core::Snapshot snapshot;
    snapshot.tree = "dryer_elec/no_heat";
    bool taken = false;
    const std::string shown = asked(snapshot, {"me", "1", "telepathy", "v", "potato", "cat iii 600 v", ""}, taken);
    EXPECT_TRUE(taken);
    EXPECT_EQ(snapshot.who, "owner");
    EXPECT_FALSE(snapshot.energized);
    EXPECT_EQ(snapshot.meter.functions, std::set<std::string>{"voltage_ac"});
    EXPECT_EQ(snapshot.meter.category, "CAT III 600 V");
    for (const char *said :
         {"A number from 1 to 2", "`telepathy` is none of these", "Your meter: volts~.", "Without ohms", "no category mark"})
        EXPECT_NE(shown.find(said), std::string::npos) << said;
}

TEST(BeforeAJob, DangerIsHeardBeforeThereIsAJob)
{
    for (const auto &[line, page] :
         std::map<std::string, std::string>{{"gas", "Leave now"}, {"smoke", "Do not touch the machine"}}) {
        core::Snapshot snapshot;
        snapshot.tree = "dryer_elec/no_heat";
        bool taken = true;
        const std::string shown = asked(snapshot, {"1", line}, taken);
        EXPECT_FALSE(taken);
        EXPECT_NE(shown.find(page), std::string::npos) << line;
    }
}

TEST(WrongTree, IsSaidWithNearNames)
{
    const core::Library &library = core::Shipped::get().library;
    EXPECT_EQ(whyNoTree(library, "dryer_elec/no_heat"), "");
    for (const char *near : {"dryer_elec/no_haet", "no_heat", "dryer_elec/noheat"})
        EXPECT_NE(whyNoTree(library, near).find("dryer_elec/no_heat"), std::string::npos) << near;
    EXPECT_NE(whyNoTree(library, "toaster/cold").find("list"), std::string::npos);
}

} // namespace
} // namespace app
