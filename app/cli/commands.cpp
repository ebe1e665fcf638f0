#include "app/cli/commands.h"

#include "app/cli/protocol.h"
#include "app/store/content_files.h"
#include "app/store/event_file.h"
#include "app/store/job_folder.h"
#include "core/base/text.h"
#include "core/check/check.h"
#include "core/session/event_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <iostream>
#include <nlohmann/json.hpp>

namespace app {
namespace {

using Json = nlohmann::json;

bool isUsable(const core::Library &library, const std::string &tree)
{
    return !library.faulty.contains(tree);
}

Json listJson(const core::Library &library)
{
    Json appliances = Json::array(), kinds = Json::array();
    for (const auto &[id, appliance] : library.appliances) {
        Json complaints = Json::array();
        for (const auto &[treeId, tree] : library.trees)
            if (tree.appliance == id && isUsable(library, treeId))
                complaints.push_back({{"id", treeId.substr(treeId.find('/') + 1)}, {"name", tree.complaint}});
        appliances.push_back({{"id", id}, {"name", appliance.name}, {"complaints", complaints}});
    }
    for (const auto &[id, kind] : library.kinds)
        if (kind.isPart)
            kinds.push_back({{"id", id}, {"name", kind.name}});
    return {{"appliances", appliances}, {"kinds", kinds}};
}

int fail(const std::string &text, int status)
{
    std::cerr << "meterfirst-cli: " << core::printable(text) << '\n';
    return status;
}

} // namespace

int runList(const Choices &choices)
{
    const auto files = loadContent(dataFolder(), userFolder());
    if (!files)
        return fail(files.error(), 66);
    const core::Library &library = files->library;
    if (choices.json) {
        std::cout << listJson(library).dump(1) << '\n';
        return 0;
    }
    for (const auto &[id, appliance] : library.appliances) {
        std::cout << core::printable(appliance.name) << '\n';
        for (const auto &[treeId, tree] : library.trees)
            if (tree.appliance == id)
                std::cout << fmt::format("  {:<28} {}{}\n", treeId, core::printable(tree.complaint), isUsable(library, treeId) ? "" : "  (has faults: run check)");
    }
    return 0;
}

int runSession(const Choices &choices)
{
    const auto files = loadContent(dataFolder(), userFolder());
    if (!files)
        return fail(files.error(), 66);
    std::unique_ptr<EventFile> log;
    const auto keepFor = [&](const core::Snapshot &snapshot) -> core::Session::Keep {
        if (!choices.keep || snapshot.toldClock)
            return {};
        const auto folder = jobFolder();
        auto created = folder ? EventFile::create(*folder) : Stored<std::unique_ptr<EventFile>>(core::unexpected(folder.error()));
        if (!created) {
            std::cerr << core::printable(created.error().text) << '\n';
            return [](const core::Event &) { return false; };
        }
        log = std::move(*created);
        return [&log](const core::Event &e) { return log->append(core::toLine(e)).has_value(); };
    };
    Protocol protocol(files->content(), keepFor);
    for (std::string line; std::getline(std::cin, line);)
        std::cout << protocol.answer(line, core::now()) << std::endl;
    return 0;
}

int runCheck(const Choices &choices)
{
    std::vector<std::filesystem::path> folders(choices.paths.begin(), choices.paths.end());
    for (const auto &path : folders)
        if (std::error_code gone; !std::filesystem::exists(path, gone))
            return fail("there is nothing at " + path.string(), 66);
    const std::filesystem::path shipped = dataFolder() / "trees";
    const auto isShipped = [&](const std::filesystem::path &p) { std::error_code e; return std::filesystem::equivalent(p, shipped, e); };
    if (std::ranges::none_of(folders, isShipped)) // a tree alone is checked against the shipped kinds and appliances
        folders.push_back(shipped);
    core::Loaded loaded = core::loadFolders(folders);
    std::vector<core::Diagnostic> found = std::move(loaded.diagnostics);
    const auto files = loadContent(dataFolder(), userFolder());
    if (files)
        for (core::Diagnostic &d : core::checkContent({&loaded.library, &files->phrases, &files->safety}))
            found.push_back(std::move(d));
    core::sortByPlace(found);
    for (const core::Diagnostic &d : found)
        std::cout << core::toText(d) << '\n';
    return core::hasFault(found) ? 1 : 0;
}

} // namespace app
