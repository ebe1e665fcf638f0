// From exec to a window that takes keys, and what it holds in memory then: Meter First beside an empty Qt window, turn by turn in
// one run, each in a process of its own.
//   bench_start [rounds]          QT_QPA_PLATFORM says where: xcb, offscreen
#include "app/shared/settings.h"
#include "app/shared/theme.h"
#include "app/store/content_files.h"
#include "app/store/job_folder.h"
#include "app/walk/main_window.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QTemporaryDir>
#include <QTimer>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <vector>

namespace {

double residentMb()
{
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("VmRSS:"))
            return std::stod(line.substr(6)) / 1024;
    return 0;
}

// Tells the parent once the window was painted and nothing else is waiting to be done.
class WhenPainted : public QObject
{
public:
    bool eventFilter(QObject *, QEvent *event) override
    {
        if (event->type() == QEvent::Paint && !m_seen) {
            m_seen = true;
            QTimer::singleShot(0, [] {
                std::printf("%.1f\n", residentMb());
                std::fflush(stdout);
                QCoreApplication::quit();
            });
        }
        return false;
    }

private:
    bool m_seen = false;
};

int emptyWindow(int argc, char **argv)
{
    QApplication application(argc, argv);
    QWidget window;
    window.resize(1280, 800);
    WhenPainted painted;
    window.installEventFilter(&painted);
    window.show();
    return QApplication::exec();
}

int ourWindow(int argc, char **argv)
{
    QApplication application(argc, argv);
    const app::Settings settings = app::loadSettings();
    app::Theme::current().install();
    app::Theme::current().setShadeWish(settings.shade);
    const auto content = app::loadContent(app::dataFolder(), app::userFolder());
    if (!content)
        return 1;
    const auto folder = app::jobFolder();
    app::MainWindow window(*content, folder ? *folder : app::userFolder() / "jobs");
    WhenPainted painted;
    window.installEventFilter(&painted);
    window.show();
    return QApplication::exec();
}

struct Start
{
    double ms = 0, mb = 0;
};

Start started(const QString &self, const QString &role, const QString &home)
{
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("HOME"), home);
    process.setProcessEnvironment(environment);
    QElapsedTimer timer;
    timer.start();
    process.start(self, {role});
    process.waitForReadyRead(60'000);
    const double ms = static_cast<double>(timer.nsecsElapsed()) / 1e6;
    process.waitForFinished(60'000);
    return {ms, process.readAllStandardOutput().trimmed().toDouble()};
}

double middle(std::vector<double> values)
{
    std::ranges::sort(values);
    return values[values.size() / 2];
}

} // namespace

int main(int argc, char **argv)
{
    const std::string role = argc > 1 ? argv[1] : "";
    if (role == "empty")
        return emptyWindow(argc, argv);
    if (role == "ours")
        return ourWindow(argc, argv);
    QCoreApplication application(argc, argv);
    const int rounds = argc > 1 ? std::max(1, std::atoi(argv[1])) : 15;
    const QTemporaryDir home;
    std::vector<double> emptyMs, oursMs, emptyMb, oursMb;
    for (int n = 0; n <= rounds; ++n) { // the first round only warms the disk's cache
        const Start empty = started(QCoreApplication::applicationFilePath(), QStringLiteral("empty"), home.path());
        const Start ours = started(QCoreApplication::applicationFilePath(), QStringLiteral("ours"), home.path());
        if (n == 0)
            continue;
        emptyMs.push_back(empty.ms);
        oursMs.push_back(ours.ms);
        emptyMb.push_back(empty.mb);
        oursMb.push_back(ours.mb);
    }
    std::printf("start    empty %.0f ms, ours %.0f ms, ratio %.2f (middle of %d)\n", middle(emptyMs), middle(oursMs),
                middle(oursMs) / middle(emptyMs), rounds);
    std::printf("memory   empty %.0f MB, ours %.0f MB, more by %.0f MB\n", middle(emptyMb), middle(oursMb),
                middle(oursMb) - middle(emptyMb));
    return 0;
}
