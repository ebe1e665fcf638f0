// What a message looks like; the format is the house's own.
#include "core/diag/diagnostic.h"

#include <gtest/gtest.h>

#include <set>

namespace core {
namespace {

TEST(DiagDiagnostic, IsOneLineAndAHint)
{
    const Diagnostic d{DiagnosticKind::UnknownStep, {"no_heat.yaml", 31, 9}, "no step `limt`", "did you mean `limit`?"};
    EXPECT_EQ(toText(d), "no_heat.yaml:31:9: fault: no step `limt`\n    did you mean `limit`?");
}

TEST(DiagDiagnostic, WithoutHintOrPlace)
{
    EXPECT_EQ(toText({DiagnosticKind::NeverUsed, {"a.yaml", 2, 3}, "nothing goes by it", ""}),
              "a.yaml:2:3: remark: nothing goes by it");
    EXPECT_EQ(toText({DiagnosticKind::TooLarge, {"a.yaml", 0, 0}, "a file of 9 bytes", ""}), "a.yaml: fault: a file of 9 bytes");
}

TEST(DiagDiagnostic, NoEscapeReachesATerminal)
{
    const std::string text = toText({DiagnosticKind::BadId, {"a\x1b[31m.yaml", 1, 1}, "`\x1b]0;x\x07` is no id", ""});
    EXPECT_EQ(text.find('\x1b'), std::string::npos);
    EXPECT_NE(text.find("\\x1b"), std::string::npos);
}

TEST(DiagDiagnostic, SortsByFileAndPlaceAndKeepsTheRest)
{
    std::vector<Diagnostic> list{{DiagnosticKind::BadId, {"b.yaml", 1, 1}, "1", ""},
                                 {DiagnosticKind::BadId, {"a.yaml", 10, 1}, "2", ""},
                                 {DiagnosticKind::BadId, {"a.yaml", 9, 12}, "3", ""},
                                 {DiagnosticKind::BadId, {"a.yaml", 9, 2}, "4", ""},
                                 {DiagnosticKind::BadId, {"a.yaml", 9, 2}, "5", ""}};
    sortByPlace(list);
    std::string order;
    for (const Diagnostic &d : list)
        order += d.text;
    EXPECT_EQ(order, "45321");
}

TEST(DiagDiagnostic, OnlyFaultsMakeAFileUseless)
{
    EXPECT_FALSE(hasFault({}));
    EXPECT_FALSE(hasFault(std::vector<Diagnostic>{{DiagnosticKind::NeverUsed, {}, "x", ""}}));
    EXPECT_TRUE(
        hasFault(std::vector<Diagnostic>{{DiagnosticKind::NeverUsed, {}, "x", ""}, {DiagnosticKind::NotYaml, {}, "x", ""}}));
}

TEST(DiagDiagnostic, EveryKindHasASlugOfItsOwn)
{
    std::set<std::string_view> slugs;
    for (const DiagnosticKind kind : allDiagnosticKinds()) {
        EXPECT_TRUE(slugs.insert(slugOf(kind)).second) << slugOf(kind);
        EXPECT_EQ(slugOf(kind).find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string_view::npos);
    }
}

TEST(DiagDiagnostic, DidYouMeanOnlyWhatIsNear)
{
    const std::vector<std::string> words{"resistance", "continuity"};
    EXPECT_EQ(didYouMean("resistence", words), "did you mean `resistance`?");
    EXPECT_EQ(didYouMean("volts", words), "");
}

} // namespace
} // namespace core
