#include "core/load/document.h"
#include "core/load/load.h"

#include <algorithm>
#include <fmt/format.h>
#include <fstream>

namespace core {
namespace {

namespace fs = std::filesystem;

constexpr int kMostLevels = 4;
constexpr std::size_t kMostFiles = 5'000, kMostTotal = 64U << 20;

struct Found
{
    std::vector<SourceText> texts;
    std::vector<Diagnostic> diagnostics;
    std::size_t total = 0;

    void fault(DiagnosticKind kind, const fs::path &path, std::string text, std::string hint)
    {
        diagnostics.push_back({kind, {path.generic_string(), 0, 0}, std::move(text), std::move(hint)});
    }
};

// pack.yaml describes a pack; `no_heat.de.yaml` translates a tree
bool isContent(const fs::path &file)
{
    const std::string name = file.filename().string();
    return file.extension() == ".yaml" && !name.starts_with('.') && name != "pack.yaml" && file.stem().extension().empty();
}

void readFile(const fs::path &path, int folder, bool own, Found &found)
{
    std::error_code error;
    const std::uintmax_t size = fs::file_size(path, error);
    if (!error && size > kMostBytes) {
        found.fault(DiagnosticKind::TooLarge, path, fmt::format("a file of {} bytes", size),
                    fmt::format("{} at most", kMostBytes));
        return;
    }
    if (!error && (found.total + size > kMostTotal || found.texts.size() >= kMostFiles)) {
        found.fault(DiagnosticKind::TooLarge, path, "more content than is read",
                    fmt::format("{} files and {} bytes at most", kMostFiles, kMostTotal));
        return;
    }
    std::ifstream in(path, std::ios::binary);
    std::string text(error ? 0 : static_cast<std::size_t>(size), '\0');
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (error || !in.is_open() || in.bad()) {
        found.fault(DiagnosticKind::CannotRead, path, "the file cannot be read", "look at its permissions");
        return;
    }
    text.resize(static_cast<std::size_t>(std::max<std::streamsize>(0, in.gcount())));
    found.total += text.size();
    found.texts.push_back({path.generic_string(), std::move(text), folder, own});
}

void readFolder(const fs::path &path, int folder, bool own, Found &found)
{
    std::error_code error;
    std::vector<fs::path> files;
    fs::recursive_directory_iterator at(path, error); // follows no links
    for (; !error && at != fs::recursive_directory_iterator(); at.increment(error)) {
        if (at.depth() >= kMostLevels)
            at.disable_recursion_pending();
        if (isContent(at->path()))
            files.push_back(at->path());
    }
    if (error)
        found.fault(DiagnosticKind::CannotRead, path, "the folder cannot be read", "look at its permissions");
    std::ranges::sort(files);
    for (const fs::path &file : files) {
        const fs::file_status status = fs::symlink_status(file, error);
        if (fs::is_regular_file(status))
            readFile(file, folder, own, found);
        else
            found.fault(DiagnosticKind::CannotRead, file, "no plain file",
                        "links and devices are not followed; put the file itself here");
    }
}

} // namespace

Loaded loadFolders(std::span<const fs::path> folders)
{
    try {
        Found found;
        for (std::size_t i = 0; i < folders.size(); ++i) {
            std::error_code error;
            const bool last = i + 1 == folders.size();
            const fs::file_status status = fs::status(folders[i], error);
            if (fs::is_directory(status))
                readFolder(folders[i], static_cast<int>(i), !last, found);
            else if (fs::is_regular_file(status))
                readFile(folders[i], static_cast<int>(i), !last, found);
            else if (last || fs::exists(status))
                found.fault(DiagnosticKind::CannotRead, folders[i], "no such file or folder", "look at its name");
        }
        Loaded loaded = loadTexts(found.texts);
        loaded.diagnostics.insert(loaded.diagnostics.end(), found.diagnostics.begin(), found.diagnostics.end());
        sortByPlace(loaded.diagnostics);
        return loaded;
    } catch (const std::exception &e) {
        return {{}, {{DiagnosticKind::CannotRead, {}, e.what(), ""}}};
    }
}

} // namespace core
