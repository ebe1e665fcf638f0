// Plain text helpers. The malformed sequences are those of M. Kuhn's UTF-8 decoder stress test and of Unicode 15, table
// 3-7; the hidden characters are Unicode's Bidi_Control and its zero-width ones.
#include "core/base/text.h"

#include <gtest/gtest.h>

using namespace core;

namespace {

TEST(Trimmed, TakesBlanksOffBothEnds)
{
    EXPECT_EQ(trimmed(" \t a b \r\n"), "a b");
    EXPECT_EQ(trimmed(" \n "), "");
    EXPECT_EQ(trimmed(""), "");
}

TEST(Lowered, LeavesWhatIsNotAscii)
{
    EXPECT_EQ(lowered("OL K\u03a9"), "ol k\u03a9");
}

TEST(Split, KeepsEmptyParts)
{
    EXPECT_EQ(split("a..b", '.'), (std::vector<std::string_view>{"a", "", "b"}));
    EXPECT_EQ(split("", '.'), (std::vector<std::string_view>{""}));
    EXPECT_EQ(split(".", '.').size(), 2U);
}

TEST(Joined, SetsTheSignOnlyBetween)
{
    const std::vector<std::string> words{"a", "b", "c"};
    EXPECT_EQ(joined(words, ", "), "a, b, c");
    EXPECT_EQ(joined(std::span(words).first(1), ", "), "a");
    EXPECT_EQ(joined({}, ", "), "");
}

TEST(Capitalised, FirstLetterAlone)
{
    EXPECT_EQ(capitalised("open coil"), "Open coil");
    EXPECT_EQ(capitalised("OL"), "OL");
    EXPECT_EQ(capitalised("\u03a9 ohm"), "\u03a9 ohm");
    EXPECT_EQ(capitalised(""), "");
}

TEST(EditDistance, TextbookWords)
{
    EXPECT_EQ(editDistance("kitten", "sitting"), 3U); // the usual example of Levenshtein's distance
    EXPECT_EQ(editDistance("Saturday", "Sunday"), 3U);
    EXPECT_EQ(editDistance("opne", "open"), 1U); // Damerau: neighbours changed over are one slip
    EXPECT_EQ(editDistance("", "abc"), 3U);
    EXPECT_EQ(editDistance(std::string(65, 'a'), "a"), 64U);
}

TEST(NearestWord, OnlyWithinAThird)
{
    const std::vector<std::string> words{"resistance", "continuity", "open"};
    EXPECT_EQ(nearestWord("resistence", words), "resistance");
    EXPECT_EQ(nearestWord("Opne", words), "open");
    EXPECT_EQ(nearestWord("voltage", words), "");
    EXPECT_EQ(nearestWord("", words), "");
}

TEST(FirstBadByte, GoodText)
{
    for (const char *text : {"", "plain\ttext\r\n", "10.3 k\u03a9", "\u00b0C \u2103", "\xF0\x9F\x94\xA7", "\xEF\xBF\xBD"})
        EXPECT_EQ(firstBadByte(text), std::string_view::npos) << text;
}

TEST(FirstBadByte, MalformedSequences)
{
    for (const char *bad : {"\x80", "\xBF", "\xC0\xAF", "\xC1\xBF", "\xE0\x80\xAF", "\xE0\x9F\xBF", "\xF0\x80\x80\xAF",
                            "\xF0\x8F\xBF\xBF", "\xED\xA0\x80", "\xED\xBF\xBF", "\xF4\x90\x80\x80", "\xF8\x88\x80\x80\x80",
                            "\xFE", "\xFF", "\xC3", "\xE2\x84", "\xF0\x9F\x94", "\xC3\x28", "\xE2\x28\xA1"})
        EXPECT_EQ(firstBadByte(std::string("ab") + bad), 2U);
}

TEST(FirstBadByte, ControlsAndNoncharacters)
{
    for (const std::string &bad : {std::string(1, '\0'), std::string("\x1b"), std::string("\x7f"), std::string("\xC2\x80"),
                                   std::string("\xC2\x9F"), std::string("\xEF\xBF\xBE"), std::string("\xEF\xBF\xBF")})
        EXPECT_EQ(firstBadByte("a" + bad + "b"), 1U);
}

TEST(HasHiddenCharacters, DirectionAndZeroWidth)
{
    for (const char *hidden :
         {"\u200b", "\u200d", "\u200e", "\u200f", "\u202a", "\u202e", "\u2066", "\u2069", "\ufeff", "\u061c", "\u2060"})
        EXPECT_TRUE(hasHiddenCharacters(std::string("a") + hidden + "b")) << hidden;
    EXPECT_FALSE(hasHiddenCharacters("10.3 k\u03a9 \u00a0 \u2212"));
}

TEST(Printable, NothingReachesTheTerminal)
{
    EXPECT_EQ(printable("a\x1b[2Jb"), "a\\x1b[2Jb");
    EXPECT_EQ(printable("\x9b"), "\\x9b");
    EXPECT_EQ(printable("line\n\ttab"), "line\n\ttab");
    EXPECT_EQ(printable("\u03a9"), "\u03a9");
    EXPECT_EQ(printable("\r"), "\\x0d");
}

TEST(Printable, ControlsOfTwoBytes)
{
    const std::string shown = printable("\xC2\x9B"
                                        "31m"); // CSI as one C1 control: starts an escape on some terminals
    EXPECT_EQ(shown.find('\x9B'), std::string::npos);
    EXPECT_EQ(firstBadByte(shown), std::string_view::npos);
}

} // namespace
