// What the kettle of tests/golden/good becomes when all its files are loaded together: names are spelt out, what needs a
// broken file cannot be used, the first of two with one id wins.
#include "core/base/hash.h"
#include "core/load/load.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

namespace core {
namespace {

namespace fs = std::filesystem;

std::string textOf(const std::string &name)
{
    std::ifstream in(fs::path(GOLDEN) / "good" / name, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

std::vector<SourceText> kettle()
{
    std::vector<SourceText> texts;
    for (const auto *name : {"kinds/kettle_element.yaml", "kinds/boil_dry_cutout.yaml", "kinds/limescale.yaml",
                             "kinds/outlet.yaml", "kettle/appliance.yaml", "kettle/cold.yaml", "kettle/cases.yaml"})
        texts.push_back({name, textOf(name), 1, false});
    return texts;
}

// The kettle with one text replaced in one of its files.
std::vector<SourceText> kettleWith(const std::string &name, const std::string &from, const std::string &to)
{
    std::vector<SourceText> texts = kettle();
    for (SourceText &source : texts)
        if (source.file == name) {
            const std::size_t at = source.text.find(from);
            EXPECT_NE(at, std::string::npos) << from;
            source.text.replace(at, from.size(), to);
        }
    return texts;
}

std::string slugsOf(const Loaded &loaded)
{
    std::string slugs;
    for (const Diagnostic &d : loaded.diagnostics)
        slugs += std::string(slugOf(d.kind)) + " ";
    return slugs;
}

TEST(LoadLibrary, RungsAreSpeltOut)
{
    const Loaded loaded = loadTexts(kettle());
    const Rung &heat = loaded.library.appliance("kettle")->rungs.at(0);
    ASSERT_EQ(heat.items.size(), 4U);
    EXPECT_EQ(heat.items[0].what, RungItem::What::Rail);
    EXPECT_EQ(heat.items[0].component, "L1");
    EXPECT_EQ(heat.items[2].what, RungItem::What::Part);
    EXPECT_EQ(heat.items[2].component, "kettle_element");
    EXPECT_EQ(heat.items[2].path, "coil") << "the first path, where none is named";
    EXPECT_FALSE(heat.items[2].flipped);
}

TEST(LoadLibrary, ARungItemMayNameItsPathOrTheTerminalWhereItIsEntered)
{
    const Loaded loaded =
        loadTexts(kettleWith("kettle/appliance.yaml", "boil_dry_cutout, kettle_element, N",
                             "boil_dry_cutout.contact, (m1), N]}\n  - {rung: rest, path: [(m1), kettle_element.t2, N"));
    EXPECT_EQ(slugsOf(loaded), "");
    const Appliance &a = *loaded.library.appliance("kettle");
    EXPECT_EQ(a.rungs.at(0).items.at(1).path, "contact");
    EXPECT_EQ(a.rungs[0].items.at(2).what, RungItem::What::Point);
    EXPECT_EQ(a.rungs[0].items[2].component, "m1");
    EXPECT_EQ(a.rungs.at(1).items.at(1).path, "coil");
    EXPECT_TRUE(a.rungs[1].items[1].flipped);
}

TEST(LoadLibrary, ContactsAreSpeltOut)
{
    const Loaded loaded = loadTexts(kettleWith("kettle/appliance.yaml", "standing: []", "standing: [boil_dry_cutout]"));
    EXPECT_EQ(slugsOf(loaded), "");
    EXPECT_EQ(loaded.library.appliance("kettle")->closed.at(0).second, std::vector<std::string>{"boil_dry_cutout.contact"});
}

TEST(LoadLibrary, ValuesOfTheAppliance)
{
    const Loaded loaded = loadTexts(kettle());
    const Appliance &a = *loaded.library.appliance("kettle");
    EXPECT_FALSE(a.hardWired);
    EXPECT_EQ(a.asked("supply")->says.at("at_230"), "220 to 240 V");
    EXPECT_FALSE(a.servicePlace("outlet")->cover) << "the face of the receptacle has no cover";
    EXPECT_TRUE(a.servicePlace("bottom")->cover);
    EXPECT_EQ(a.component("kettle_element")->ratings.at("at_120").watts, 1500);
    EXPECT_EQ(a.component("boil_dry_cutout")->price->hi, 9);
    EXPECT_EQ(a.rails.at("at_230").at("L1"), 230);
    EXPECT_EQ(a.condition("outlet.tripped")->loses, "L1");
    EXPECT_EQ(a.loop("both")->limits->good.at(230).span.lo, 20);
    EXPECT_TRUE(a.loop("both")->isLoop());
}

TEST(LoadLibrary, ValuesOfTheTree)
{
    const Loaded loaded = loadTexts(kettle());
    const Tree &tree = *loaded.library.tree("kettle/cold");
    EXPECT_EQ(tree.appliance, "kettle");
    EXPECT_EQ(tree.weights.front(), (std::pair<std::string, double>{"kettle_element", 45}));
    EXPECT_EQ(tree.steps.front().id, "lamp");
    EXPECT_EQ(tree.alsoCalled.size(), 3U);
    const Step &breaker = *tree.step("breaker");
    EXPECT_EQ(breaker.what, Step::What::Do);
    EXPECT_EQ(breaker.minutes, 3);
    EXPECT_EQ(breaker.changes, std::vector<std::string>{"outlet.tripped"});
    EXPECT_EQ(breaker.answers(), (std::vector<std::string>{"it lights now", "it stays dark", "it trips again"}));
    EXPECT_EQ(breaker.thenFor("it lights now")->what, Then::What::Fix);
    EXPECT_EQ(breaker.thenFor("it trips again")->trade, "electrician");
    EXPECT_EQ(breaker.thenFor("it trips again")->suspect, "outlet.dead");
    const Step &crust = *tree.step("crust");
    EXPECT_EQ(crust.minutes, 2);
    EXPECT_EQ(crust.thenFor("thick crust")->what, Then::What::Found);
    EXPECT_EQ(crust.thenFor("thick crust")->step, "pot");
    EXPECT_EQ(tree.step("pot")->minutes, 2) << "that of its test";
    EXPECT_EQ(tree.step("pot")->thenFor("low")->what, Then::What::Claim);
    EXPECT_EQ(tree.step("element")->thenFor("good")->what, Then::What::Stop);
}

TEST(LoadLibrary, WhatCanStandBehindAProtectorIsThereBesideOthersNowAndThen)
{
    EXPECT_DOUBLE_EQ(loadTexts(kettle()).library.kind("limescale")->beside, 0.02);
    EXPECT_DOUBLE_EQ(loadTexts(kettle()).library.kind("outlet")->beside, 0);
    const Loaded own = loadTexts(kettleWith("kinds/limescale.yaml", "cure: clean", "beside: 0.3\ncure: clean"));
    EXPECT_DOUBLE_EQ(own.library.kind("limescale")->beside, 0.3);
}

TEST(LoadLibrary, AFileIsNamedByItsContent)
{
    const Loaded loaded = loadTexts(kettle());
    EXPECT_EQ(loaded.library.hashes.at("kettle/cold"), sha256Hex(textOf("kettle/cold.yaml")));
    const Loaded other = loadTexts(kettleWith("kettle/cold.yaml", "# judgement", "# judgement."));
    EXPECT_NE(other.library.hashes.at("kettle/cold"), loaded.library.hashes.at("kettle/cold"));
    EXPECT_EQ(other.library.hashes.at("kettle"), loaded.library.hashes.at("kettle"));
}

TEST(LoadLibrary, WhatNeedsABrokenFileCannotBeUsedAndIsNotBlamed)
{
    const Loaded loaded = loadTexts(kettleWith("kinds/boil_dry_cutout.yaml", "[t1, t2]\npaths", "[t1, t2\npaths"));
    EXPECT_EQ(slugsOf(loaded), "not-yaml ") << "one fault, at its place";
    EXPECT_EQ(loaded.library.kind("boil_dry_cutout"), nullptr);
    EXPECT_EQ(loaded.library.faulty, (std::set<std::string, std::less<>>{"boil_dry_cutout", "kettle", "kettle/cold"}));
}

TEST(LoadLibrary, AFaultInOneTreeLeavesTheOthers)
{
    std::vector<SourceText> texts = kettle();
    std::string other = textOf("kettle/cold.yaml");
    other.replace(other.find("kettle/cold\n"), 11, "kettle/hums");
    texts.push_back({"kettle/hums.yaml", other, 1, false});
    EXPECT_EQ(slugsOf(loadTexts(texts)), "");
    texts.back().text.replace(other.find("go: pot"), 7, "go: pit");
    const Loaded loaded = loadTexts(texts);
    EXPECT_EQ(slugsOf(loaded), "unknown-step ");
    EXPECT_EQ(loaded.library.faulty, (std::set<std::string, std::less<>>{"kettle/hums"}));
}

TEST(LoadLibrary, TheFirstOfOneIdWins)
{
    std::vector<SourceText> texts = kettle();
    SourceText own{"own/kettle/cold.yaml", textOf("kettle/cold.yaml"), 0, true};
    own.text.replace(own.text.find("The kettle is"), 13, "My kettle is");
    texts.push_back(own);
    const Loaded loaded = loadTexts(texts);
    EXPECT_EQ(slugsOf(loaded), "");
    EXPECT_TRUE(loaded.library.tree("kettle/cold")->complaint.starts_with("My"));
    EXPECT_TRUE(loaded.library.ownTrees.contains("kettle/cold"));
    EXPECT_EQ(loaded.library.hashes.at("kettle/cold"), sha256Hex(own.text));
}

TEST(LoadLibrary, AKindAndAnApplianceMayNotShareAnId)
{
    std::vector<SourceText> texts = kettle();
    texts.push_back({"kinds/kettle.yaml", "format: 1\ncondition: kettle\nname: x\ncure: clean\n", 1, false});
    EXPECT_EQ(slugsOf(loadTexts(texts)), "duplicate-id ");
}

TEST(LoadLibrary, CasesAreTakenAsTheyStand)
{
    const Loaded loaded = loadTexts(kettle());
    const WorkedCase &broken = loaded.library.cases.at(0);
    EXPECT_EQ(broken.id, "broken_coil");
    EXPECT_EQ(broken.asks.at("supply"), "at_230");
    EXPECT_EQ(broken.answers.at("kettle_element.pot"), "OL; OL");
    EXPECT_EQ(broken.kind, "replace");
    EXPECT_TRUE(broken.energized);
    EXPECT_EQ(loaded.library.cases.at(1).conditions, std::vector<std::string>{"outlet.tripped"});
}

TEST(LoadLibrary, AnEmptyListOfTextsIsAnEmptyLibrary)
{
    const Loaded loaded = loadTexts({});
    EXPECT_TRUE(loaded.diagnostics.empty());
    EXPECT_TRUE(loaded.library.trees.empty());
}

} // namespace
} // namespace core
