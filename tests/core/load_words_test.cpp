// The words are common practice of the trade, no source: a help for authors, the gate goes by what is measured.
#include "core/load/words.h"

#include <gtest/gtest.h>

namespace core {
namespace {

TEST(LoadWords, PowerIsFoundInWhateverCaseAndPunctuation)
{
    EXPECT_EQ(wordsOfPower("Plug it in, then feel the pot."), "plug it in");
    EXPECT_EQ(wordsOfPower("Measure WHILE IT RUNS!"), "while it runs");
    EXPECT_EQ(wordsOfPower("start\n a heated cycle"), "start a");
}

TEST(LoadWords, WholeWordsOnly)
{
    EXPECT_EQ(wordsOfPower("The start switch's two tabs; the start winding."), "");
    EXPECT_EQ(wordsOfPower("Unplug it. Pull both wires off and deliver the reading."), ""); // "live" in "deliver"
    EXPECT_EQ(wordsOfPower(""), "");
}

TEST(LoadWords, OpeningNeedsACoverBehindTheVerb)
{
    EXPECT_EQ(wordsOfOpening("Remove the small rear panel."), "remove the small rear panel");
    EXPECT_EQ(wordsOfOpening("Tip the console forward"), "tip the console");
    EXPECT_EQ(wordsOfOpening("Unscrew it."), "unscrew");
    EXPECT_EQ(wordsOfOpening("Open the door and look into the drum."), "");
    EXPECT_EQ(wordsOfOpening("Take the lint filter out."), "");
    EXPECT_EQ(wordsOfOpening("Remove lint; it lies on the floor below the rear panel"), "") << "too far from the verb";
}

} // namespace
} // namespace core
