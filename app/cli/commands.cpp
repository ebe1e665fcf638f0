#include "app/cli/commands.h"

#include "app/cli/protocol.h"
#include "app/store/content_files.h"
#include "app/store/event_file.h"
#include "app/store/job_folder.h"
#include "core/base/text.h"
#include "core/session/event_text.h"

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

// A file for the job's events, made when there is the first: a job that is refused leaves none.
core::Session::Keep keptFromTheFirst()
{
    struct Place
    {
        std::unique_ptr<EventFile> log;
        bool failed = false;
    };
    return [place = std::make_shared<Place>()](const core::Event &e) {
        if (!place->log && !place->failed) {
            const auto folder = jobFolder();
            auto created =
                folder ? EventFile::create(*folder) : Stored<std::unique_ptr<EventFile>>(core::unexpected(folder.error()));
            place->failed = !created;
            if (created)
                place->log = std::move(*created);
            else
                std::cerr << core::printable(created.error().text) << '\n';
        }
        return place->log && place->log->append(core::toLine(e)).has_value();
    };
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
                std::cout << fmt::format("  {:<28} {}{}\n", treeId, core::printable(tree.complaint),
                                         isUsable(library, treeId) ? "" : "  (has faults: run check)");
    }
    return 0;
}

int runSession(const Choices &choices)
{
    const auto files = loadContent(dataFolder(), userFolder());
    if (!files)
        return fail(files.error(), 66);
    const auto keepFor = [&](const core::Snapshot &snapshot) {
        return !choices.keep || snapshot.toldClock ? core::Session::Keep() : keptFromTheFirst();
    };
    Protocol protocol(files->content(), keepFor);
    for (std::string line; std::getline(std::cin, line);)
        std::cout << protocol.answer(line, core::now()) << std::endl;
    return 0;
}

} // namespace app
