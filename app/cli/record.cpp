#include "app/cli/commands.h"
#include "app/cli/job_of.h"
#include "app/store/content_files.h"
#include "core/base/text.h"

#include <iostream>

namespace app {

int runRecord(const Choices &choices, int, char **)
{
    const auto files = loadContent(dataFolder(), userFolder());
    const auto session = files ? jobAsItWas(files->content(), choices.job) : core::unexpected(files.error());
    if (!session) {
        std::cerr << core::printable(session.error()) << '\n';
        return 66;
    }
    return 0;
}

} // namespace app
