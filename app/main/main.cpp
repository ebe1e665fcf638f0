// The window of Meter First.
#include "app/shared/settings.h"
#include "app/shared/theme.h"
#include "app/store/content_files.h"
#include "app/store/job_folder.h"
#include "app/walk/main_window.h"

#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QTextStream>

namespace {

void describe(QCommandLineParser &parser)
{
    parser.setApplicationDescription(QApplication::translate("main", "From a complaint to a part proven bad by a reading, or to nothing to buy."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addOption({QStringLiteral("job"), QApplication::translate("main", "Go on with this job file."), QStringLiteral("file")});
    parser.addPositionalArgument(QStringLiteral("tree"), QApplication::translate("main", "Start with this complaint, for example dryer_elec/no_heat."), QStringLiteral("[tree]"));
}

int failed(const QString &why)
{
    QTextStream(stderr) << "meterfirst: " << why << Qt::endl;
    return 1;
}

void useSettings()
{
    const app::Settings settings = app::loadSettings();
    app::Theme &theme = app::Theme::current();
    theme.install();
    theme.setShadeWish(settings.shade);
    theme.setTextPercent(settings.textPercent);
}

} // namespace

int main(int argc, char **argv)
{
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("meterfirst"));
    QApplication::setApplicationDisplayName(QStringLiteral("Meter First"));
    QApplication::setApplicationVersion(QStringLiteral(METERFIRST_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("org.meterfirst.MeterFirst"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/org.meterfirst.MeterFirst.svg")));
    QCommandLineParser parser;
    describe(parser);
    parser.process(application);
    useSettings();

    const auto content = app::loadContent(app::dataFolder(), app::userFolder());
    if (!content)
        return failed(QString::fromStdString(content.error()));
    const auto folder = app::jobFolder();
    app::MainWindow window(*content, folder ? *folder : app::userFolder() / "jobs");
    window.show();
    if (parser.isSet(QStringLiteral("job")))
        window.walk()->open(parser.value(QStringLiteral("job")).toStdString());
    else if (!parser.positionalArguments().isEmpty())
        window.walk()->begin(parser.positionalArguments().constFirst());
    return QApplication::exec();
}
