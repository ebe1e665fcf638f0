#include "app/cli/check.h"

#include "app/cli/commands.h"
#include "app/store/content_files.h"
#include "core/base/text.h"
#include "core/check/check.h"

#include <algorithm>
#include <fstream>
#include <iostream>

namespace app {
namespace {

namespace fs = std::filesystem;

fs::path real(const fs::path &path)
{
    std::error_code gone;
    const fs::path found = fs::weakly_canonical(path, gone);
    return gone ? path : found;
}

bool isInside(const fs::path &path, const fs::path &folder) // the folder itself included; both real
{
    const auto [end, at] = std::mismatch(folder.begin(), folder.end(), path.begin(), path.end());
    return end == folder.end();
}

// Trees and cases stand for themselves; appliances and kinds are what others lean on.
bool isLeanedOn(const fs::path &file)
{
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);)
        if (line.starts_with("complaint:") || line.starts_with("cases:"))
            return false;
    return true;
}

void addFolder(const fs::path &folder, std::vector<fs::path> &files)
{
    std::error_code gone;
    for (const fs::directory_entry &entry : fs::directory_iterator(folder, gone))
        if (entry.path().extension() == ".yaml" && entry.is_regular_file(gone) && isLeanedOn(entry.path()))
            files.push_back(entry.path());
}

// Of a file named by itself: the appliances and kinds beside it, and in the folder `kinds` beside its folder.
std::vector<fs::path> besides(const std::vector<fs::path> &paths)
{
    std::vector<fs::path> files;
    for (const fs::path &path : paths) {
        std::error_code gone;
        if (!fs::is_regular_file(path, gone))
            continue;
        const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
        addFolder(folder, files);
        addFolder(folder / ".." / "kinds", files);
    }
    std::ranges::sort(files);
    const auto same = std::ranges::unique(files);
    files.erase(same.begin(), same.end());
    return files;
}

// Tells the files that were named from others, and from a second copy of them that came in with a whole folder.
class Named
{
public:
    explicit Named(const std::vector<fs::path> &paths) : m_paths(paths)
    {
        for (const fs::path &path : paths)
            m_real.push_back(real(path));
    }
    bool is(const std::string &file) const
    {
        return std::ranges::any_of(m_paths, [&](const fs::path &path) {
            const std::string spelt = path.generic_string(), within = spelt.ends_with('/') ? spelt : spelt + "/";
            return file == spelt || file.starts_with(within);
        });
    }
    bool isAgain(const std::string &file) const
    {
        return !is(file) && std::ranges::any_of(m_real, [&](const fs::path &path) { return isInside(real(file), path); });
    }

private:
    std::vector<fs::path> m_paths, m_real;
};

} // namespace

std::vector<core::Diagnostic> checkPaths(const std::vector<fs::path> &paths, const fs::path &shipped,
                                         const core::Phrases &phrases, const core::SafetyTexts &safety)
{
    std::vector<fs::path> read = paths;
    const fs::path shippedThere = real(shipped);
    for (const fs::path &beside : besides(paths))
        if (!isInside(real(beside), shippedThere))
            read.push_back(beside);
    if (std::ranges::none_of(paths, [&](const fs::path &path) { return real(path) == shippedThere; }))
        read.push_back(shipped);
    core::Loaded loaded = core::loadFolders(read);
    const Named named(paths);
    std::erase_if(loaded.library.cases, [&](const core::WorkedCase &c) { return named.isAgain(c.place.file); });
    std::vector<core::Diagnostic> found = std::move(loaded.diagnostics);
    std::erase_if(found, [&](const core::Diagnostic &d) { return named.isAgain(d.place.file); });
    for (core::Diagnostic &d :
         core::checkContent({&loaded.library, &phrases, &safety}, [&](const std::string &file) { return named.is(file); }))
        found.push_back(std::move(d));
    core::sortByPlace(found);
    return found;
}

int runCheck(const Choices &choices)
{
    std::vector<fs::path> paths(choices.paths.begin(), choices.paths.end());
    for (const fs::path &path : paths)
        if (std::error_code gone; !fs::exists(path, gone)) {
            std::cerr << "meterfirst-cli: there is nothing at " << core::printable(path.string()) << '\n';
            return 66;
        }
    const auto files = loadContent(dataFolder(), userFolder());
    if (!files) {
        std::cerr << "meterfirst-cli: " << core::printable(files.error()) << '\n';
        return 66;
    }
    const std::vector<core::Diagnostic> found = checkPaths(paths, dataFolder() / "trees", files->phrases, files->safety);
    for (const core::Diagnostic &d : found)
        std::cout << core::toText(d) << '\n';
    return core::hasFault(found) ? 1 : 0;
}

} // namespace app
