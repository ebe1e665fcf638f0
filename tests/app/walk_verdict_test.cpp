// Whole walks of the electric dryer by keys alone, from three letters of a complaint to each kind of verdict.
#include "app/walk/hit_list.h"
#include "tests/app/walk_stops.h"

#include <gtest/gtest.h>

namespace {

using core::Verdict;
using walk::Rig;

// Three letters, Down to the complaint that is meant, Enter.
bool typeComplaint(Rig &rig, const char *letters, const char *tree)
{
    rig.type(QString::fromLatin1(letters));
    const auto *hits = rig.find<app::HitList>(QStringLiteral("hits"));
    for (int i = 0; hits != nullptr && i < 9 && hits->currentId() != QLatin1String(tree); ++i)
        rig.key(Qt::Key_Down);
    rig.key(Qt::Key_Return);
    return rig.walk().job().hasJob() && rig.view().tree == tree;
}

void allowEnergizedTests(Rig &rig)
{
    ASSERT_TRUE(rig.press(QStringLiteral("meter")));
    ASSERT_TRUE(rig.press(QStringLiteral("energized")));
    rig.key(Qt::Key_Return);
    ASSERT_TRUE(rig.tabTo(QStringLiteral("complaint")));
}

// What the page says is what the session found.
const core::VerdictView &shownVerdict(Rig &rig)
{
    static const core::VerdictView kNone;
    if (!rig.view().verdict)
        return kNone;
    auto *headline = rig.find(QStringLiteral("headline"));
    EXPECT_NE(headline, nullptr);
    if (headline != nullptr) {
        EXPECT_EQ(headline->accessibleName().toStdString(), rig.view().verdict->headline);
    }
    return *rig.view().verdict;
}

// 5400 W at 240 V make 10.67 ohm (Joule's law); a broken coil and the chain through it read OL.
TEST(Walk, ABrokenCoilIsProvenByItsOwnReadingsAndReplaced)
{
    Rig rig;
    ASSERT_TRUE(typeComplaint(rig, "col", "dryer_elec/no_heat"));
    walk::walkToTheEnd(rig, walk::withABrokenCoil());
    ASSERT_TRUE(rig.view().verdict) << rig.view().step.id;
    EXPECT_EQ(shownVerdict(rig).kind, Verdict::Kind::Replace);
    EXPECT_EQ(shownVerdict(rig).parts, std::vector<std::string>{"dryer_element"});
}

TEST(Walk, ATrippedBreakerEndsWithNothingToBuy)
{
    Rig rig;
    ASSERT_TRUE(typeComplaint(rig, "col", "dryer_elec/no_heat"));
    walk::walkToTheEnd(rig, walk::withATrippedBreaker());
    ASSERT_TRUE(rig.view().verdict) << rig.view().step.id;
    EXPECT_EQ(shownVerdict(rig).kind, Verdict::Kind::Fix);
    EXPECT_TRUE(shownVerdict(rig).parts.empty());
}

// A split supply has 240 V from leg to leg (ANSI C84.1, from memory: 228 to 252); with one leg lost the meter sees far less.
TEST(Walk, ALostLegIsALicensedTradesWork)
{
    Rig rig;
    allowEnergizedTests(rig);
    ASSERT_TRUE(typeComplaint(rig, "col", "dryer_elec/no_heat"));
    walk::Person person = walk::withALostLeg();
    person.declinesPower = false;
    walk::walkToTheEnd(rig, person);
    ASSERT_TRUE(rig.view().verdict) << rig.view().step.id;
    EXPECT_EQ(shownVerdict(rig).kind, Verdict::Kind::Call);
    EXPECT_TRUE(shownVerdict(rig).parts.empty());
    EXPECT_FALSE(shownVerdict(rig).call.empty());
}

TEST(Walk, WithoutThatReadingNothingIsProven)
{
    Rig rig;
    ASSERT_TRUE(typeComplaint(rig, "col", "dryer_elec/no_heat"));
    walk::walkToTheEnd(rig, walk::withALostLeg());
    ASSERT_TRUE(rig.view().verdict) << rig.view().step.id;
    EXPECT_EQ(shownVerdict(rig).kind, Verdict::Kind::NotProven);
    EXPECT_TRUE(shownVerdict(rig).parts.empty());
}

} // namespace
