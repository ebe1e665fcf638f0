#include "app/store/content_files.h"

#include <array>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <system_error>

namespace app {
namespace fs = std::filesystem;
namespace {

fs::path fromEnvironment(const char *name)
{
    const char *value = std::getenv(name);
    const fs::path path = value == nullptr ? fs::path() : fs::path(value);
    return path.is_absolute() ? path : fs::path();
}

bool holdsContent(const fs::path &folder)
{
    std::error_code ignored;
    return fs::is_directory(folder / "trees", ignored) && fs::is_directory(folder / "resources", ignored);
}

} // namespace

fs::path dataFolder()
{
    std::error_code ignored;
    const fs::path program = fs::read_symlink("/proc/self/exe", ignored);
    for (const fs::path &folder : std::array{fromEnvironment("METERFIRST_DATA"), program.parent_path().parent_path() / "share/meterfirst", fs::path(METERFIRST_SOURCE)})
        if (!folder.empty() && holdsContent(folder))
            return folder;
    return METERFIRST_SOURCE;
}

fs::path userFolder()
{
    if (const fs::path data = fromEnvironment("XDG_DATA_HOME"); !data.empty())
        return data / "meterfirst";
    const fs::path home = fromEnvironment("HOME");
    return (home.empty() ? fs::temp_directory_path() : home / ".local/share") / "meterfirst";
}

core::Expected<std::string, std::string> readFile(const fs::path &path)
{
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    if (!in)
        return core::unexpected("cannot read " + path.string());
    return text.str();
}

core::Expected<ContentFiles, std::string> loadContent(const fs::path &data, const fs::path &user)
{
    ContentFiles files;
    files.trees = data / "trees";
    files.resources = data / "resources";
    const std::array<fs::path, 2> folders{user / "trees", files.trees};
    core::Loaded loaded = core::loadFolders(folders);
    files.library = std::move(loaded.library);
    files.diagnostics = std::move(loaded.diagnostics);
    const auto phrases = readFile(files.resources / "texts/phrases.en.json").and_then([](const std::string &t) { return core::Phrases::parse(t); });
    if (!phrases)
        return core::unexpected(phrases.error());
    const auto safety = readFile(files.resources / "texts/safety.en.json").and_then([](const std::string &t) { return core::safetyTextsIn(t); });
    if (!safety)
        return core::unexpected(safety.error());
    files.phrases = *phrases;
    files.safety = *safety;
    return files;
}

} // namespace app
