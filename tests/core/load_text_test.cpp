// Texts that are hostile, broken, or merely typed on another machine. What yaml-cpp 0.7 makes of the first group was
// measured: an endless loop, memory without end, a file swallowed by one quote. None of it may come through.
#include "core/load/document.h"
#include "core/load/load.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

namespace core {
namespace {

const std::string kKind = "format: 1\n"
                          "kind: spare\n"
                          "name: Spare part\n"
                          "terminals: [t1, t2]\n"
                          "paths: {coil: {between: [t1, t2], good: OL}}\n"
                          "fails: {open: {share: 1, coil: 0 to 1 ohm}}\n";

bool refuses(std::string_view text, DiagnosticKind kind)
{
    const auto parsed = parseKind(text, "x.yaml");
    EXPECT_FALSE(parsed.value);
    return std::ranges::any_of(parsed.diagnostics, [kind](const Diagnostic &d) { return d.kind == kind; });
}

std::string times(std::size_t count, std::string_view text)
{
    std::string out;
    for (std::size_t i = 0; i < count; ++i)
        out += text;
    return out;
}

TEST(LoadText, HostileTextsEndSoonAndInAFault)
{
    const std::string bombs[] = {",",
                                 "&a [*a],",
                                 times(100'000, "["),
                                 times(100'000, "{a: "),
                                 times(100'000, "- "),
                                 times(100'000, "? "),
                                 times(50'000, "!"),
                                 "a: &a [x,x]\n" + times(40, "b: [*a,*a,*a,*a]\n"),
                                 "&a {k: *a}",
                                 "{:",
                                 "[:",
                                 "{foo:",
                                 "!2",
                                 "%YAML 1.1\n---\na: 1\n",
                                 "\xFF\xFE"
                                 "a\0:\0",
                                 std::string("a\0b: 1\n", 7),
                                 "a: \"abc\nb: 2\nc: 3\n",
                                 times(1'000, "\n") + "'",
                                 "*",
                                 "&",
                                 "!",
                                 "|",
                                 ">",
                                 "@",
                                 "`",
                                 "%",
                                 "---\n---\n",
                                 "...\n"};
    const auto began = std::chrono::steady_clock::now();
    for (const std::string &bomb : bombs) {
        const auto parsed = parseKind(bomb, "x.yaml");
        EXPECT_FALSE(parsed.value) << bomb.substr(0, 20);
        EXPECT_TRUE(hasFault(parsed.diagnostics)) << bomb.substr(0, 20);
        EXPECT_LE(parsed.diagnostics.size(), 1'000U) << bomb.substr(0, 20);
    }
    EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::seconds(20)) << "a hang, not a matter of speed";
}

TEST(LoadText, TooManyValuesAreNotReadToTheEnd)
{
    EXPECT_TRUE(refuses("format: 1\nkind: [" + times(250'000, "a,\n") + "b]\n", DiagnosticKind::TooMuch));
    EXPECT_TRUE(refuses(kKind + "does: \"" + times(2'100, "ten bytes\n ") + "\"\n", DiagnosticKind::TooMuch));
}

TEST(LoadText, ManyFaultsAreCutOff)
{
    std::string text = kKind;
    for (int i = 0; i < 5'000; ++i)
        text += "key" + std::to_string(i) + ": x\n";
    EXPECT_LE(parseKind(text, "x.yaml").diagnostics.size(), 500U);
}

TEST(LoadText, AQuoteLeftOpenIsFoundWhereItBegins)
{
    const auto parsed = parseKind("format: 1\nkind: spare\nname: \"Spare\nterminals: [t1]\n", "x.yaml");
    ASSERT_EQ(parsed.diagnostics.size(), 1U);
    EXPECT_EQ(slugOf(parsed.diagnostics[0].kind), "open-quote");
    EXPECT_EQ(parsed.diagnostics[0].place, (Place{"x.yaml", 3, 7}));
}

TEST(LoadText, QuotesThatDoCloseAreLeftAlone)
{
    for (const auto *name : {"\"a \\\" b\"", "'it''s'", "\"it's\"", "'say \"x\"'", "\"back\\\\\"", "it's", "say \"x\""})
        EXPECT_TRUE(parseKind(kKind + "does: " + name + "\n", "x.yaml").value) << name;
}

TEST(LoadText, LineEndsAndByteOrderMarkOfOtherMachines)
{
    std::string dos;
    for (const char c : kKind)
        dos += c == '\n' ? std::string("\r\n") : std::string(1, c);
    EXPECT_TRUE(parseKind(dos, "x.yaml").value);
    EXPECT_TRUE(parseKind("\xEF\xBB\xBF" + kKind, "x.yaml").value);
    EXPECT_TRUE(parseKind(kKind.substr(0, kKind.size() - 1), "x.yaml").value) << "no line feed at the end";
    std::string old = kKind;
    std::ranges::replace(old, '\n', '\r');
    EXPECT_TRUE(refuses(old, DiagnosticKind::NotUtf8));
}

TEST(LoadText, ColumnsCountCharactersNotBytes)
{
    // µ and Ω take two bytes each, the dash three
    const auto parsed = parseKind(kKind + "called: {t1: \"µ Ω –\", t9: \"x\"}\n", "x.yaml");
    ASSERT_EQ(parsed.diagnostics.size(), 1U);
    EXPECT_EQ(parsed.diagnostics[0].place, (Place{"x.yaml", 7, 23}));
}

TEST(LoadText, MarkupIsPlainText)
{
    const auto parsed = parseKind(kKind + "does: \"<img src='file:///etc/passwd'> & <b>bold</b> %1\"\n", "x.yaml");
    ASSERT_TRUE(parsed.value);
    EXPECT_EQ(parsed.value->does, "<img src='file:///etc/passwd'> & <b>bold</b> %1");
}

TEST(LoadText, HiddenCharactersAreFoundWhereverTheyHide)
{
    // zero width space, bidi override, soft hyphen, line separator, tag letter, variation selector, zero width no-break
    for (const auto *hidden : {"\u200b", "\u202e", "\u00ad", "\u2028", "\U000E0041", "\uFE0F", "\uFEFF", "\u2066", "\u3164"}) {
        EXPECT_TRUE(refuses(kKind + "does: \"a" + hidden + "b\"\n", DiagnosticKind::HiddenCharacter));
        EXPECT_TRUE(refuses("# note" + std::string(hidden) + "\n" + kKind, DiagnosticKind::HiddenCharacter));
    }
    EXPECT_TRUE(parseKind(kKind + "does: \"Grüße, 日本語, ½ – “x” °C µF Ω é\"\n", "x.yaml").value)
        << "letters of people are no tricks";
}

TEST(LoadText, AllFaultsOfAFileComeInOneGoInItsOrder)
{
    const auto parsed =
        parseKind("format: 2\nkind: Spare\nname: [x]\nterminal: [t1]\nfails: {open: {shar: 1}}\nfails: {}\n", "x.yaml");
    std::string slugs;
    for (const Diagnostic &d : parsed.diagnostics)
        slugs += std::to_string(d.place.line) + " " + std::string(slugOf(d.kind)) + "; ";
    EXPECT_EQ(slugs, "1 unknown-format; 2 bad-id; 3 wrong-shape; 4 unknown-key; 5 missing-key; 5 unknown-key; 6 duplicate-key; ");
}

} // namespace
} // namespace core
