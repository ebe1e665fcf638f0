#include "app/cli/commands.h"
#include "app/cli/job_of.h"
#include "app/cli/walk.h"
#include "app/cli/walk_begin.h"
#include "app/store/content_files.h"
#include "core/base/text.h"

#include <iostream>

namespace app {
namespace {

int fail(const std::string &why)
{
    for (const std::string_view line : core::split(why, '\n'))
        std::cerr << core::printable(line) << '\n';
    return 66;
}

} // namespace

int runWalk(const Choices &choices)
{
    const auto files = loadContent(dataFolder(), userFolder());
    if (!files)
        return fail(files.error());
    if (const std::string why = choices.tree.empty() ? std::string() : whyNoTree(files->library, choices.tree); !why.empty())
        return fail(why);
    Terminal terminal(std::cin, std::cout);
    terminal.say(files->safety.lines.contains("every_screen") ? files->safety.lines.at("every_screen") : std::string());
    JobOf job;
    core::Expected<core::Session, std::string> session = core::unexpected(std::string());
    if (!choices.job.empty()) {
        session = job.resume(files->content(), choices.job);
    } else {
        core::Snapshot snapshot;
        snapshot.tree = choices.tree;
        if (!askBefore(files->content(), terminal, snapshot))
            return 0;
        session = job.begin(files->content(), std::move(snapshot));
    }
    if (!session)
        return fail(session.error());
    if (!job.note().empty())
        terminal.say(job.note());
    Walk walk(*session, terminal, job.id().empty() ? std::string() : "meterfirst-cli walk --job " + job.id());
    walk.run();
    return 0;
}

} // namespace app
