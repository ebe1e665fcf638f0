// The safety texts. Signal words as ANSI Z535.4 uses them, sign numbers of ISO 7010 (both secondary; M004, M006, M009 from
// memory). 65 C on bare metal: ISO 13732-1 (secondary).
#include "core/base/text.h"
#include "core/gate/classify.h"
#include "core/gate/inside.h"
#include "core/gate/texts.h"
#include "tests/core/gate_fixture.h"

#include <fstream>
#include <sstream>

using namespace gatetest;

namespace {

std::string file()
{
    std::ifstream in(std::string(SOURCE) + "/resources/texts/safety.en.json");
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

SafetyTexts english()
{
    const auto texts = safetyTextsIn(file());
    EXPECT_TRUE(texts) << (texts ? "" : texts.error());
    return texts.value_or(SafetyTexts{});
}

// Every word of the file that a person may read.
std::vector<std::string> everyText(const SafetyTexts &texts)
{
    std::vector<std::string> out;
    for (const auto &[id, screen] : texts.screens) {
        for (const SafetyLine &line : screen.lines)
            out.push_back(line.text);
        for (const auto &words : {screen.boxes, screen.ways})
            for (const auto &[name, text] : words)
                out.push_back(text);
    }
    for (const auto &[zone, call] : texts.calls) {
        out.push_back(call.why);
        out.push_back(call.who);
    }
    for (const auto &[name, text] : texts.lines)
        out.push_back(text);
    return out;
}

TEST(GateTexts, EveryScreenHasItsWordAndSigns)
{
    const SafetyTexts texts = english();
    const std::map<std::string, std::pair<std::string, std::vector<std::string>>> expected{
        {"S0", {"", {}}},
        {"S1", {"WARNING", {"W012", "M006"}}},
        {"S2", {"WARNING", {"W012", "M021"}}},
        {"S3", {"WARNING", {"W012", "M004"}}},
        {"S4", {"WARNING", {"W012"}}},
        {"EO", {"WARNING", {"W012"}}},
        {"S5", {"WARNING", {"W012"}}},
        {"S6", {"WARNING", {"W012", "W017"}}},
        {"S7", {"CAUTION", {"W018", "W017"}}},
        {"S8", {"WARNING", {"W012"}}},
        {"S9", {"WARNING", {"W012", "M006"}}},
        {"S10", {"WARNING", {"W012"}}},
        {"S11", {"CAUTION", {"W017"}}},
        {"S12", {"DANGER", {"W021", "P003", "E004"}}},
        {"S13", {"DANGER", {"W012", "W005", "P001"}}},
        {"S14", {"DANGER", {"W012", "E003"}}},
    };
    ASSERT_EQ(texts.screens.size(), expected.size());
    const std::vector<std::string> notes{"hot_surface", "cord", "microwave", "shock"};
    for (const auto &[id, want] : expected) {
        EXPECT_EQ(texts.screens.at(id).word, want.first) << id;
        EXPECT_EQ(signsOf(texts.screens.at(id), notes), want.second) << id;
        EXPECT_GE(texts.screens.at(id).version, 1);
        EXPECT_TRUE(texts.screens.at(id).lines.front().bold) << id;
    }
    EXPECT_EQ(wordOf(texts.screens.at("S11"), {"very_hot"}), "WARNING");
    EXPECT_EQ(wordOf(texts.screens.at("S11"), {}), "CAUTION");
    EXPECT_EQ(signsOf(texts.screens.at("S12"), {"co"}).front(), "W016");
}

TEST(GateTexts, NothingSaysSafe)
{
    std::vector<std::string> all = everyText(english());
    for (const RefusalText &refusal : kRefusals)
        all.emplace_back(refusal.text);
    ASSERT_GT(all.size(), 150U);
    for (const std::string &text : all) {
        const std::string low = " " + lowered(text) + " ";
        for (const char *word : {" safe ", " safe.", " safe,", " safe;", " safely ", "unsafe"})
            EXPECT_EQ(low.find(word), std::string::npos) << text;
        EXPECT_EQ(text.find_first_of("<>&"), std::string::npos) << text; // plain text, never markup
        EXPECT_EQ(firstBadByte(text), std::string::npos) << text;
        EXPECT_FALSE(hasHiddenCharacters(text)) << text;
    }
}

// From a stopped walk nothing may be asked for that makes a spark indoors.
TEST(GateTexts, GasPageAsksForNothingButLeaving)
{
    const SafetyTexts texts = english();
    for (const std::vector<std::string> &notes : {std::vector<std::string>{}, {"co"}, {"clerk"}})
        for (const SafetyLine &line : linesOf(texts.screens.at("S12"), notes, {})) {
            const std::string low = lowered(line.text);
            for (const char *operation : {"unplug", "pull the plug", "switch it off", "breaker off", "turn off", "open the window"})
                EXPECT_EQ(low.find(operation), std::string::npos) << line.text;
        }
    EXPECT_TRUE(texts.screens.at("S12").boxes.empty());
}

// No discharge is ever taught to an owner; no price, no haste.
TEST(GateTexts, WhatIsNeverSaid)
{
    for (const std::string &text : everyText(english())) {
        const std::string low = lowered(text);
        for (const char *word : {"discharge it", "short it", "bleed", "hurry", "price", "do not show again", "relight"})
            EXPECT_EQ(low.find(word), std::string::npos) << text;
    }
}

TEST(GateTexts, EveryZoneHasWhyAndWho)
{
    const SafetyTexts texts = english();
    for (const char *zone : {"microwave", "sealed_system", "gas", "panel", "inverter"}) {
        ASSERT_TRUE(isXZone(zone));
        ASSERT_TRUE(texts.calls.contains(zone)) << zone;
        EXPECT_FALSE(texts.calls.at(zone).why.empty() || texts.calls.at(zone).who.empty());
    }
    EXPECT_EQ(texts.calls.size(), 5U);
}

// Whatever the gate puts on a screen has words, and every {word} of a line is given by the gate or by the step.
void hasWords(const SafetyTexts &texts, const Screening &screening)
{
    const std::set<std::string> byTheStep{"function", "jacks", "terminals", "cycle", "black_slot", "red_slot", "load", "seconds", "what",
                                          "minutes", "why", "who"};
    const std::string id(word(screening.screen));
    const SafetyText &text = texts.screens.at(id);
    for (const Box &box : screening.boxes)
        EXPECT_TRUE(text.boxes.contains(box.id.substr(0, box.id.find(':')))) << id << " box " << box.id;
    for (const std::string &way : screening.ways)
        EXPECT_TRUE(text.ways.contains(way)) << id << " way " << way;
    for (const SafetyLine &line : linesOf(text, screening.notes, screening.params)) {
        const std::size_t open = line.text.find('{');
        if (open == std::string::npos)
            continue;
        const std::string left = line.text.substr(open + 1, line.text.find('}') - open - 1);
        EXPECT_TRUE(byTheStep.contains(left)) << id << ": " << line.text;
    }
}

TEST(GateTexts, EveryFormOfEveryScreenHasItsWords)
{
    const SafetyTexts texts = english();
    StepRequest wanted = capacitor();
    wanted.hotPart = "element";
    wanted.hotConnector = "its plug";
    wanted.touches = "breaker";
    std::size_t seen = 0;
    for (int i = 0; i < 512; ++i) {
        Walk w(started((i & 1) != 0));
        GateState s = w.state;
        s.stillOut = i & 2;
        s.inside.wiresKnown = i & 4;
        s.inside.coversKnown = i & 8;
        s.inside.covers = i & 16 ? Covers::Open : Covers::Unknown;
        s.inside.opened = {"back", "console"};
        s.inside.pulled = {"element.t1"};
        s.power = i & 32 ? Power::Running : Power::Energized;
        s.danger.stopped = i & 64 ? AlarmKind::CarbonMonoxide : AlarmKind::Gas;
        s.danger.gasPage = i & 128;
        s.notDead = i & 256;
        if (i & 2) {
            s.proof = Proof{"back", "m1", {"L1 to L2"}, static_cast<std::size_t>(i >> 2 & 3), w.now};
            s.heat.at = w.now;
            s.stored.checking = "run_capacitor";
            s.stored.good = static_cast<std::size_t>(i >> 2) % 3;
        }
        for (const StepClass stepClass : {StepClass::DS, StepClass::E1, StepClass::E2, StepClass::AP, StepClass::R}) {
            wanted.stepClass = stepClass;
            wanted.wantsHot = i & 4;
            wanted.store = i & 8 ? Store::Motor : Store::Board;
            for (int screen = 0; screen <= static_cast<int>(Screen::Eo); ++screen, ++seen)
                hasWords(texts, inserted(static_cast<Screen>(screen), s, wanted, w.now));
        }
    }
    EXPECT_EQ(seen, 512U * 5 * 16);
}

TEST(GateTexts, FillsWordsOnceAsPlainText)
{
    EXPECT_EQ(filled("{a} and {b}", {{"a", "{b}"}, {"b", "<b>"}}), "{b} and <b>");
    EXPECT_EQ(filled("{nobody} {", {}), "{nobody} {");
    EXPECT_EQ(filled("no words", {{"a", "1"}}), "no words");
    EXPECT_TRUE(holds("", {}));
    EXPECT_TRUE(holds("x", {"x"}));
    EXPECT_FALSE(holds("x", {}));
    EXPECT_TRUE(holds("!x", {}));
    EXPECT_FALSE(holds("!x", {"x"}));
    EXPECT_TRUE(holds("x !y", {"x"}));
    EXPECT_FALSE(holds("x !y", {"x", "y"}));
    EXPECT_FALSE(holds("x y", {"x"}));
}

TEST(GateTexts, BrokenFilesAreErrorsByValue)
{
    const std::string good = file();
    ASSERT_TRUE(safetyTextsIn(good));
    const auto without = [&](const std::string &what, const std::string &with) {
        std::string text = good;
        const std::size_t at = text.find(what);
        EXPECT_NE(at, std::string::npos) << what;
        return text.replace(at, what.size(), with);
    };
    EXPECT_EQ(safetyTextsIn("{").error(), "not JSON");
    EXPECT_EQ(safetyTextsIn("[]").error(), "file: not an object");
    EXPECT_EQ(safetyTextsIn(without("\"version\": 1", "\"version\": 0")).error(), "screens.S0: 'version' is not a whole number from 1")
        << "the first screen in the file's order of names";
    EXPECT_FALSE(safetyTextsIn(without("\"word\": \"\"", "\"word\": 1")));
    EXPECT_FALSE(safetyTextsIn(without("\"ways\"", "\"roads\"")));
    EXPECT_FALSE(safetyTextsIn(without("\"bold\": \"Electric", "\"text\": \"x\", \"bold\": \"Electric")));
    EXPECT_FALSE(safetyTextsIn(without("\"signs\": []", "\"signs\": {}")));
    EXPECT_FALSE(safetyTextsIn(without("\"who\": \"licensed electrician\"", "\"who\": null")));
    for (std::size_t cut = 0; cut < good.size(); cut += 97) // nothing half is taken
        EXPECT_FALSE(safetyTextsIn(std::string_view(good).substr(0, cut)));
}

TEST(GateTexts, ATranslationDropsNothing)
{
    const SafetyTexts original = english();
    EXPECT_TRUE(differences(original, original).empty());
    const auto changed = [&](auto change) {
        SafetyTexts t = original;
        change(t);
        return differences(original, t).size();
    };
    EXPECT_EQ(changed([](SafetyTexts &t) { t.screens.at("S1").lines[1].text = "Maschine ausschalten."; }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S1").lines.pop_back(); }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S1").lines[2].when.clear(); }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S1").lines[0].bold = false; }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S4").lines[3].text = "without its word"; }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S4").word = "CAUTION"; }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S4").version = 2; }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S4").signs.clear(); }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S4").boxes.erase("clips_on"); }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.at("S4").ways["decline"] = ""; }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.screens.erase("S14"); }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.calls.at("panel").who.clear(); }), 0U);
    EXPECT_GT(changed([](SafetyTexts &t) { t.lines.erase("proven"); }), 0U);
}

TEST(GateTexts, RefusalCodesAreOneWordEach)
{
    std::set<std::string_view> words;
    for (const RefusalText &r : kRefusals) {
        EXPECT_TRUE(words.insert(r.word).second) << r.word;
        EXPECT_EQ(r.word.find_first_not_of("abcdefghijklmnopqrstuvwxyz_"), std::string_view::npos) << r.word;
        EXPECT_EQ(r.text.back() == '.' || r.text.back() == '?', true) << r.word;
        EXPECT_EQ(word(refusal(r.code).code), r.word);
        EXPECT_EQ(refusal(r.code).text, r.text);
    }
}

} // namespace
