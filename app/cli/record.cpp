#include "app/cli/commands.h"
#include "app/cli/job_of.h"
#include "app/paper/record_page.h"
#include "app/store/content_files.h"
#include "core/base/text.h"

#include <QGuiApplication>

#include <iostream>

namespace app {

int runRecord(const Choices &choices, int argc, char **argv)
{
    const auto files = loadContent(dataFolder(), userFolder());
    const core::Expected<core::Session, std::string> session = files ? jobAsItWas(files->content(), choices.job) : core::Expected<core::Session, std::string>(core::unexpected(files.error()));
    if (!session) {
        std::cerr << core::printable(session.error()) << '\n';
        return 66;
    }
    const Record record = recordOf(*session, std::filesystem::path(choices.job).stem().string());
    if (choices.pdf.empty()) {
        std::cout << core::printable(recordText(record));
        return 0;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen"); // fonts without a display
    QGuiApplication application(argc, argv);
    QString fault;
    if (writeRecordPdf(QString::fromStdString(choices.pdf), record, &fault))
        return 0;
    std::cerr << "cannot write " << core::printable(choices.pdf) << ": " << core::printable(fault.toStdString()) << '\n';
    return 74;
}

} // namespace app
