#include "core/diag/diagnostic.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <tuple>

namespace core {
namespace {

struct Entry
{
    DiagnosticKind kind;
    Level level;
    std::string_view slug;
};

constexpr std::array kEntries = std::to_array<Entry>({
#define DIAGNOSTIC(Name, LevelName, Slug) {DiagnosticKind::Name, Level::LevelName, Slug},
#include "core/diag/kinds.def"
#undef DIAGNOSTIC
});

constexpr auto kAll = [] {
    std::array<DiagnosticKind, kEntries.size()> kinds{};
    for (std::size_t i = 0; i < kEntries.size(); ++i)
        kinds[i] = kEntries[i].kind;
    return kinds;
}();

const Entry &entryOf(DiagnosticKind kind)
{
    return kEntries[static_cast<std::size_t>(kind)];
}

} // namespace

Level levelOf(DiagnosticKind kind)
{
    return entryOf(kind).level;
}
std::string_view slugOf(DiagnosticKind kind)
{
    return entryOf(kind).slug;
}
std::span<const DiagnosticKind> allDiagnosticKinds()
{
    return kAll;
}

std::string toText(const Diagnostic &d)
{
    const std::string_view level = levelOf(d.kind) == Level::Fault ? "fault" : "remark";
    std::string text = d.place.line > 0
                           ? fmt::format("{}:{}:{}: {}: {}", d.place.file, d.place.line, d.place.column, level, d.text)
                           : fmt::format("{}: {}: {}", d.place.file, level, d.text);
    if (!d.hint.empty())
        text += "\n    " + d.hint;
    return printable(text);
}

bool hasFault(std::span<const Diagnostic> diagnostics)
{
    return std::ranges::any_of(diagnostics, [](const Diagnostic &d) { return levelOf(d.kind) == Level::Fault; });
}

void sortByPlace(std::vector<Diagnostic> &diagnostics)
{
    const auto key = [](const Diagnostic &d) { return std::tie(d.place.file, d.place.line, d.place.column); };
    std::ranges::stable_sort(diagnostics, {}, key);
}

std::string didYouMean(std::string_view word, std::span<const std::string> words)
{
    const std::string nearest = nearestWord(word, words);
    return nearest.empty() ? "" : fmt::format("did you mean `{}`?", nearest);
}

} // namespace core
