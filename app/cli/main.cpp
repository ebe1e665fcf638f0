// meterfirst-cli: the same session without a window.
#include "app/cli/commands.h"

#include <CLI/CLI.hpp>
#include <iostream>

int main(int argc, char **argv)
{
    CLI::App cli{"Meter First: from a complaint to a part proven bad by a reading. Local codes and licensed practice stand above "
                 "this program.",
                 "meterfirst-cli"};
    cli.set_version_flag("--version", "meterfirst-cli " METERFIRST_VERSION);
    cli.require_subcommand(1);
    app::Choices choices;
    CLI::App *list = cli.add_subcommand("list", "appliances with their complaints, and kinds");
    list->add_flag("--json", choices.json, "as one JSON object");
    CLI::App *walk = cli.add_subcommand("walk", "the guided walk in a terminal");
    walk->add_option("tree", choices.tree, "complaint, like dryer_elec/no_heat; left out: chosen from a list");
    walk->add_option("--job", choices.job, "go on with this job file");
    CLI::App *session = cli.add_subcommand("session", "JSON lines on standard input and output");
    session->add_flag("--keep", choices.keep, "keep the job's events as a file, as the window does");
    CLI::App *check = cli.add_subcommand("check", "everything an author did wrong, file:line:column: fault: text");
    check->add_option("paths", choices.paths, "folders or files")->required();
    CLI::App *record = cli.add_subcommand("record", "the test record of a job, as text or PDF");
    record->add_option("job", choices.job, "job file, or its number")->required();
    record->add_option("--pdf", choices.pdf, "write a PDF here instead of text");
    try {
        cli.parse(argc, argv);
    } catch (const CLI::ParseError &e) {
        return cli.exit(e);
    }
    try {
        if (*list)
            return app::runList(choices);
        if (*walk)
            return app::runWalk(choices);
        if (*session)
            return app::runSession(choices);
        if (*check)
            return app::runCheck(choices);
        return app::runRecord(choices, argc, argv);
    } catch (const std::exception &e) { // nothing a file or a person gives may end in a crash
        std::cerr << "meterfirst-cli: " << e.what() << '\n';
        return 70;
    }
}
