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
    const auto job = files ? jobAsItWas(files->content(), choices.job)
                           : core::Expected<JobAsItWas, std::string>(core::unexpected(files.error()));
    if (!job) {
        std::cerr << core::printable(job.error()) << '\n';
        return 66;
    }
    const Record record = recordOfJob(*job, std::filesystem::path(choices.job).stem().string());
    const int done = job->damaged ? 66 : 0;
    if (!job->note.empty())
        std::cerr << core::printable(job->note) << '\n';
    if (choices.pdf.empty()) {
        std::cout << core::printable(recordText(record));
        return done;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen"); // fonts without a display
    QGuiApplication application(argc, argv);
    QString fault;
    if (writeRecordPdf(QString::fromStdString(choices.pdf), record, &fault))
        return done;
    std::cerr << "cannot write " << core::printable(choices.pdf) << ": " << core::printable(fault.toStdString()) << '\n';
    return 74;
}

} // namespace app
