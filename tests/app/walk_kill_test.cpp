// kill -9 in the middle of a job, of a walk by keys and of the program itself: every answer is there afterwards, the same
// step comes, and the power counts as unknown.
#include "tests/app/walk_stops.h"

#include <QElapsedTimer>
#include <QProcess>
#include <QTextStream>
#include <gtest/gtest.h>

namespace {

using walk::Rig;

constexpr char kThere[] = "cycling_tstat.cold";
constexpr char kReady[] = "ready: ";
constexpr char kWalker[] = "METERFIRST_TEST_WALKER"; // set in the process that is to be killed

// In the process that is killed: walks to the middle, types a reading it does not take, and waits.
void walkAndWait()
{
    Rig rig;
    walk::begin(rig, "dryer_elec/no_heat");
    ASSERT_TRUE(walk::goUntil(rig, walk::withABrokenCoil(), walk::atStep(kThere)));
    rig.type(QStringLiteral("0.3"));
    for (const auto &entry : std::filesystem::directory_iterator(rig.jobs()))
        QTextStream(stdout) << kReady << QString::fromStdString(entry.path().string()) << Qt::endl;
    QTest::qWait(60'000);
}

std::filesystem::path killAWalk()
{
    QProcess walker;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QLatin1String(kWalker), QStringLiteral("1"));
    walker.setProcessEnvironment(environment);
    walker.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--gtest_filter=Killed.*")});
    QByteArray said;
    QElapsedTimer clock;
    for (clock.start(); clock.elapsed() < 30'000 && !(said.contains(kReady) && said.endsWith('\n'));) {
        walker.waitForReadyRead(200);
        said += walker.readAllStandardOutput();
    }
    walker.kill(); // SIGKILL
    walker.waitForFinished();
    const auto at = said.indexOf(kReady);
    EXPECT_GE(at, 0) << said.toStdString();
    const QByteArray path = said.mid(at + static_cast<qsizetype>(sizeof kReady) - 1).split('\n').first();
    return path.toStdString();
}

// Opens the job and kills the program once it has written that it went on with it.
void killTheProgram(const std::filesystem::path &job)
{
    const auto before = std::filesystem::file_size(job);
    QProcess program;
    program.start(QStringLiteral(PROGRAM), {QStringLiteral("--job"), QString::fromStdString(job.string())});
    QElapsedTimer clock;
    for (clock.start(); clock.elapsed() < 20'000 && std::filesystem::file_size(job) == before;)
        QTest::qWait(20);
    QTest::qWait(150); // the window is there by now
    EXPECT_EQ(program.state(), QProcess::Running) << program.readAllStandardError().toStdString();
    EXPECT_GT(std::filesystem::file_size(job), before) << "it did not go on with the job";
    program.kill();
    program.waitForFinished();
    EXPECT_EQ(program.exitStatus(), QProcess::CrashExit);
}

TEST(Killed, InTheMiddleOfAJobComesBackAtTheSameStepWithPowerUnknown)
{
    if (qEnvironmentVariableIsSet(kWalker))
        return walkAndWait();
    const std::filesystem::path left = killAWalk();
    ASSERT_TRUE(std::filesystem::is_regular_file(left));
    killTheProgram(left);
    killTheProgram(left); // and once more

    Rig rig;
    std::filesystem::create_directories(rig.jobs());
    const std::filesystem::path job = rig.jobs() / left.filename();
    std::filesystem::copy_file(left, job);
    std::filesystem::remove_all(left.parent_path().parent_path());
    rig.walk().open(job);
    rig.settle();
    ASSERT_TRUE(rig.walk().job().hasJob());
    EXPECT_EQ(rig.view().power, core::Power::Unknown);
    EXPECT_FALSE(rig.view().step.screen.empty()) << "nothing is measured before the power is told again";
    EXPECT_EQ(rig.walk().page()->objectName(), QStringLiteral("resume"));
    rig.key(Qt::Key_1);
    ASSERT_TRUE(walk::goUntil(rig, walk::withABrokenCoil(),
                              [](const core::StateView &view) { return !view.step.test.empty() && view.step.screen.empty(); }));
    EXPECT_EQ(rig.view().step.test, kThere);
    EXPECT_TRUE(rig.view().step.soFar.empty()) << "a reading that was typed and not taken is no reading";
    const auto &measured = rig.walk().job().session().facts().measured;
    for (const char *test : {"heat_chain", "thermal_cutoff.ohm", "high_limit.ohm"})
        EXPECT_TRUE(std::ranges::any_of(measured, [&](const core::Measured &m) { return m.test == test; })) << test;
}

} // namespace
