// After the verdict: the repair is proven by the machine at work, step by step and by keys, and what was seen is kept.
#include "app/paper/record.h"
#include "tests/app/walk_stops.h"

#include <gtest/gtest.h>

namespace {

using walk::Rig;

// To the verdict on a broken coil, and on to its proof.
void toTheProof(Rig &rig)
{
    walk::begin(rig, "dryer_elec/no_heat");
    ASSERT_TRUE(walk::goUntil(rig, walk::withABrokenCoil(), walk::atVerdict));
    ASSERT_TRUE(rig.press(QStringLiteral("prove")));
}

TEST(RepairPages, PutItTogetherAndAreHeldBeforeTheRun)
{
    Rig rig;
    toTheProof(rig);
    ASSERT_EQ(rig.view().step.screen, "S8") << "wires are still off";
    for (const char *wire : {"wire:dryer_element.t1", "wire:dryer_element.t2"})
        EXPECT_NE(rig.find(QStringLiteral("box:") + QLatin1String(wire)), nullptr) << wire;
    ASSERT_TRUE(rig.passScreen(QStringLiteral("confirm")));
    ASSERT_EQ(rig.view().step.screen, "S7");
    EXPECT_NE(rig.view().power, core::Power::Running);
    ASSERT_TRUE(rig.passScreen(QStringLiteral("confirm")));
    EXPECT_EQ(rig.view().step.id, "proof");
    EXPECT_EQ(rig.view().power, core::Power::Running);
}

TEST(RepairPages, KeepThatItWorks)
{
    Rig rig;
    toTheProof(rig);
    ASSERT_TRUE(walk::goUntil(rig, walk::withABrokenCoil(), walk::atStep("proof")));
    ASSERT_TRUE(rig.answer(QStringLiteral("works")));
    EXPECT_EQ(rig.view().step.screen, "S9") << "it still counts as on";
    ASSERT_TRUE(walk::goUntil(rig, walk::withABrokenCoil(), walk::atVerdict));
    EXPECT_EQ(rig.view().outcome, "fixed");
    EXPECT_EQ(rig.find(QStringLiteral("prove")), nullptr) << "it is proven";
    const std::string text = app::recordText(rig.walk().record());
    EXPECT_NE(text.find("It works again."), std::string::npos) << text;
    EXPECT_NE(text.find("Prove the repair: It works as it should"), std::string::npos) << text;

    rig.kill();
    rig.open();
    for (const auto &entry : std::filesystem::directory_iterator(rig.jobs()))
        rig.walk().open(entry.path());
    rig.settle();
    EXPECT_EQ(rig.view().outcome, "fixed") << "kept in the job's file";
}

TEST(RepairPages, GoBackToTheSearchWhenItDidNotHelp)
{
    Rig rig;
    toTheProof(rig);
    ASSERT_TRUE(walk::goUntil(rig, walk::withABrokenCoil(), walk::atStep("proof")));
    ASSERT_TRUE(rig.answer(QStringLiteral("same")));
    EXPECT_EQ(rig.view().outcome, "not_fixed");
}

// Nothing to buy is a repair too; with nothing proven there is none.
TEST(RepairPages, AreOfferedForWhatWasFoundAlone)
{
    {
        Rig rig;
        walk::begin(rig, "dryer_elec/no_heat");
        ASSERT_TRUE(walk::goUntil(rig, walk::withATrippedBreaker(), walk::atVerdict));
        EXPECT_NE(rig.find(QStringLiteral("prove")), nullptr);
    }
    Rig rig;
    walk::begin(rig, "dryer_elec/no_heat");
    ASSERT_TRUE(walk::goUntil(rig, walk::withALostLeg(), walk::atVerdict));
    EXPECT_EQ(rig.find(QStringLiteral("prove")), nullptr);
    const std::size_t events = rig.walk().job().session().events().size();
    rig.walk().prove();
    EXPECT_EQ(rig.walk().job().session().events().size(), events);
}

} // namespace
