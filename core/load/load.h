#pragma once
// The door of the loader: YAML in, values and faults out. Texts are data and nothing else: never executed, never followed
// to other files. Any bytes are safe to pass. Nothing throws.
#include "core/diag/diagnostic.h"
#include "core/tree/library.h"

#include <filesystem>

namespace core {

// All faults of all files in one go, sorted by file and place. A file with a fault, and what needs it, is listed in
// library.faulty; everything else can be used.
struct Loaded
{
    Library library;
    std::vector<Diagnostic> diagnostics;
};

// Folders in order of precedence (the shop's, the user's, the shipped one): of one id the first wins. The last one is
// the shipped one; a folder before it may be missing. Read are files *.yaml down to 4 levels, no links; pack.yaml and
// translations (`no_heat.de.yaml`) are no content of their own and are passed over. A path may also be a single file.
Loaded loadFolders(std::span<const std::filesystem::path> folders);

// The same of texts in memory: what an editor holds, what a test writes.
struct SourceText
{
    std::string file; // as it is to be shown; ids of unreadable files are guessed from it
    std::string text;
    int folder = 0;   // 0 wins over 1
    bool own = false; // not shipped with the program
};
Loaded loadTexts(std::span<const SourceText> texts);

// One file by itself: everything that can be said without the others. The value is there exactly when there is no fault.
template<class T>
struct Parsed
{
    std::optional<T> value;
    std::vector<Diagnostic> diagnostics;
};
Parsed<Kind> parseKind(std::string_view text, std::string_view fileName);
Parsed<Appliance> parseAppliance(std::string_view text, std::string_view fileName);
Parsed<Tree> parseTree(std::string_view text, std::string_view fileName);
Parsed<std::vector<WorkedCase>> parseCases(std::string_view text, std::string_view fileName);

} // namespace core
