#pragma once
// A remark about a text that people write: what was found, where, and what would help.
#include "core/diag/place.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace core {

enum class Level { Remark, Fault }; // a file with a fault is not used

enum class DiagnosticKind {
#define DIAGNOSTIC(Name, LevelName, Slug) Name,
#include "core/diag/kinds.def"
#undef DIAGNOSTIC
};

Level levelOf(DiagnosticKind kind);
std::string_view slugOf(DiagnosticKind kind);
std::span<const DiagnosticKind> allDiagnosticKinds();

struct Diagnostic
{
    DiagnosticKind kind{};
    Place place;
    std::string text; // what was found, lower case, no full stop: "no test `omh` in dryer_element"
    std::string hint; // what to do, or ""
    friend bool operator==(const Diagnostic &, const Diagnostic &) = default;
};

// "no_heat.yaml:31:9: fault: no step `limt`" and, with a hint, a second line "    did you mean `limit`?".
// Control characters of the text are made visible: it may go to a terminal.
std::string toText(const Diagnostic &diagnostic);
bool hasFault(std::span<const Diagnostic> diagnostics);
// By file, then in the order of the text; of one place in the order they were found.
void sortByPlace(std::vector<Diagnostic> &diagnostics);
// "did you mean `x`?", or "" if none of the words is near.
std::string didYouMean(std::string_view word, std::span<const std::string> words);

} // namespace core
