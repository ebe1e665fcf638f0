// What stays in the largest type. A stop before a small letter ends no sentence: UAX #29 SB8 (from memory); the texts are
// invented.
#include "app/shared/run_label.h"
#include "app/shared/say_block.h"
#include "app/shared/theme.h"

#include <QApplication>
#include <QFontMetrics>
#include <gtest/gtest.h>

using namespace app;
using namespace Qt::StringLiterals;

namespace {

const QString kLong = u"Knob at OFF - pull the wire of the element that does not come from the cut-off. Measure from that tab to "
                      "one wide tab of the thermostat, then to the other. The higher of the two counts."_s;

TEST(Say, EndsTheFirstSentenceBeforeACapital)
{
    EXPECT_EQ(firstSentence(u"Read once. Then stop."_s), std::pair(u"Read once."_s, u"Then stop."_s));
    EXPECT_EQ(firstSentence(u"Is it closed? Did it trip?"_s), std::pair(u"Is it closed?"_s, u"Did it trip?"_s));
    EXPECT_EQ(firstSentence(u"At most 0.5 ohms, approx. nothing."_s).second, QString());
    EXPECT_EQ(firstSentence(u"One sentence"_s), std::pair(u"One sentence"_s, QString()));
}

TEST(Say, KeepsAShortTextLargeAndAWideWindowWhole)
{
    SayBlock block(u"Pull both wires off. Measure."_s);
    block.resize(700, 200);
    block.show();
    EXPECT_EQ(block.sentence()->text(), u"Pull both wires off. Measure."_s);
    SayBlock wide(kLong);
    wide.resize(4000, 200);
    wide.show();
    EXPECT_EQ(wide.sentence()->text(), kLong);
}

TEST(Say, SetsWhatFollowsTheFirstSentenceSmallAndReadsAllOfIt)
{
    SayBlock block(kLong);
    block.resize(700, 400);
    block.show();
    const auto *rest = block.findChild<RunLabel *>();
    ASSERT_NE(rest, nullptr);
    EXPECT_FALSE(rest->isHidden());
    EXPECT_TRUE(block.sentence()->text().endsWith(u"cut-off."_s));
    EXPECT_TRUE(rest->text().startsWith(u"Measure from that tab"_s));
    EXPECT_EQ(block.sentence()->accessibleName(), kLong);
    block.resize(4000, 400);
    EXPECT_TRUE(rest->isHidden());
    EXPECT_EQ(block.sentence()->text(), kLong);
}

} // namespace
