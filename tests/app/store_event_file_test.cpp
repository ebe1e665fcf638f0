#include "app/store/event_file.h"
#include "app/store/job_folder.h"
#include "tests/support/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <sys/wait.h>
#include <unistd.h>

namespace {

using testing::HasSubstr;

// A job with these lines, closed.
std::filesystem::path jobWith(const std::filesystem::path &folder, const std::vector<std::string> &lines)
{
    auto log = app::EventFile::create(folder);
    EXPECT_TRUE(log) << log.error().text;
    for (const std::string &line : lines)
        EXPECT_TRUE((*log)->append(line));
    EXPECT_TRUE((*log)->close());
    return (*log)->path();
}

TEST(EventFile, GivesBackWhatWasAppendedAndGoesOn)
{
    const test::ScratchFolder home;
    const auto path = jobWith(home.path() / "a" / "jobs", {"one", "two"});

    {
        auto again = app::EventFile::open(path);
        ASSERT_TRUE(again) << again.error().text;
        EXPECT_EQ(again->job.lines, (std::vector<std::string>{"one", "two"}));
        EXPECT_EQ(again->job.note, "");
        ASSERT_TRUE(again->log->append("three"));
    }

    EXPECT_EQ(app::readJob(path)->lines, (std::vector<std::string>{"one", "two", "three"}));
}

TEST(EventFile, IsForItsOwnerAlone)
{
    const test::ScratchFolder home;
    const auto path = jobWith(home.path() / "data" / "jobs", {"one"});

    using std::filesystem::perms;
    EXPECT_EQ(std::filesystem::status(path).permissions(), perms::owner_read | perms::owner_write);
    EXPECT_EQ(std::filesystem::status(home.path() / "data").permissions(), perms::owner_all);
    EXPECT_EQ(std::filesystem::status(home.path() / "data" / "jobs").permissions(), perms::owner_all);
}

TEST(EventFile, RefusesWhatIsNotOneLineAndKeepsGoing)
{
    const test::ScratchFolder home;
    auto log = app::EventFile::create(home.path());

    for (const std::string &line : {std::string(), std::string("a\nb"), std::string(app::kLongestLine + 1, 'x')}) {
        const auto kept = (*log)->append(line);
        ASSERT_FALSE(kept);
        EXPECT_EQ(kept.error().what, app::StoreError::BadLine);
    }

    EXPECT_EQ((*log)->waiting(), 0U);
    EXPECT_TRUE((*log)->append("good"));
    EXPECT_EQ(app::readJob((*log)->path())->lines, std::vector<std::string>{"good"});
}

TEST(EventFile, SetsATornEndAsideSaysSoAndGoesOn)
{
    const test::ScratchFolder home;
    const auto path = jobWith(home.path(), {"one", "two"});
    const std::string whole = test::bytesOf(path);
    const std::string torn = R"({"seq":3,"hash":"00)";
    test::setBytes(path, whole + torn);

    auto again = app::EventFile::open(path);

    ASSERT_TRUE(again) << again.error().text;
    EXPECT_EQ(again->job.lines, (std::vector<std::string>{"one", "two"}));
    EXPECT_THAT(again->job.note, HasSubstr("number 3, is not whole"));
    EXPECT_EQ(test::bytesOf(path), whole);
    EXPECT_EQ(test::bytesOf(path.string() + ".torn"), torn + "\n");
    ASSERT_TRUE(again->log->append("three"));
    EXPECT_EQ(app::readJob(path)->lines, (std::vector<std::string>{"one", "two", "three"}));
}

TEST(EventFile, NeverWritesIntoADamagedJob)
{
    const test::ScratchFolder home;
    const auto path = jobWith(home.path(), {"one", "two", "three"});
    std::string bytes = test::bytesOf(path);
    bytes[bytes.find("two")] = 'T';
    test::setBytes(path, bytes);

    const auto again = app::EventFile::open(path);

    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().what, app::StoreError::Damaged);
    EXPECT_THAT(again.error().text,
                HasSubstr("entry 2 is not what was written. The 1 before it are sound. Nothing was changed."));
    EXPECT_EQ(test::bytesOf(path), bytes);
    EXPECT_EQ(app::readJob(path)->lines, std::vector<std::string>{"one"});
}

TEST(EventFile, TellsWhoHoldsAJobUntilItIsFree)
{
    const test::ScratchFolder home;
    auto log = app::EventFile::create(home.path());
    ASSERT_TRUE((*log)->append("one"));

    const auto second = app::EventFile::open((*log)->path());
    ASSERT_FALSE(second);
    EXPECT_EQ(second.error().what, app::StoreError::Held);
    EXPECT_THAT(second.error().text, HasSubstr("is being written by process " + std::to_string(::getpid()) + " on "));
    EXPECT_TRUE((*log)->append("two"));
    EXPECT_TRUE((*log)->close());

    EXPECT_TRUE(app::EventFile::open((*log)->path()));
}

TEST(EventFile, ADeadWriterHoldsNothing)
{
    const test::ScratchFolder home;
    const auto path = jobWith(home.path(), {"one"});
    const pid_t child = ::fork();
    if (child == 0) {
        const auto held = app::EventFile::open(path);
        ::_exit(held ? 0 : 1); // no destructor runs, as if it were killed
    }
    int status = -1;
    ::waitpid(child, &status, 0);
    ASSERT_EQ(status, 0);

    const auto again = app::EventFile::open(path);

    EXPECT_TRUE(again) << again.error().text;
}

TEST(EventFile, NoticesThatTheFileWasTakenAwayOrWrittenByOthers)
{
    const test::ScratchFolder home;
    auto gone = app::EventFile::create(home.path());
    auto touched = app::EventFile::create(home.path());
    ASSERT_TRUE((*gone)->append("one"));
    std::filesystem::remove((*gone)->path());
    test::setBytes((*touched)->path(), "x");

    for (auto *log : {&*gone, &*touched}) {
        const auto kept = (*log)->append("two");
        ASSERT_FALSE(kept);
        EXPECT_EQ(kept.error().what, app::StoreError::NotWritable);
        EXPECT_THAT(kept.error().text, HasSubstr("is not saved, 1 entry is missing: "));
    }
    EXPECT_EQ(test::bytesOf((*touched)->path()), "x");
}

TEST(EventFile, WritesThroughNoLink)
{
    const test::ScratchFolder home;
    test::setBytes(home.path() / "elsewhere", "");
    std::filesystem::create_symlink(home.path() / "elsewhere", home.path() / "0001-BCD.jsonl");

    EXPECT_FALSE(app::EventFile::open(home.path() / "0001-BCD.jsonl"));
    EXPECT_EQ(test::bytesOf(home.path() / "elsewhere"), "");
}

TEST(EventFile, AClosedLogSavesNothingAndSaysSo)
{
    const test::ScratchFolder home;
    auto log = app::EventFile::create(home.path());
    ASSERT_TRUE((*log)->append("one"));
    ASSERT_TRUE((*log)->close());

    EXPECT_FALSE((*log)->append("two"));
    EXPECT_EQ((*log)->waiting(), 1U);
    EXPECT_EQ(app::readJob((*log)->path())->lines.size(), 1U);
}

TEST(EventFile, ManyProcessesMakeJobsWithNumbersOfTheirOwn)
{
    constexpr int kProcesses = 8, kEach = 12;
    const test::ScratchFolder home;
    for (int i = 0; i < kProcesses; ++i) {
        if (::fork() == 0) {
            bool good = true;
            for (int j = 0; j < kEach; ++j) {
                const auto log = app::EventFile::create(home.path());
                good = good && log && (*log)->append((*log)->id());
            }
            ::_exit(good ? 0 : 1);
        }
    }
    for (int i = 0; i < kProcesses; ++i) {
        int status = -1;
        ::wait(&status);
        EXPECT_EQ(status, 0);
    }

    std::set<std::string> numbers;
    const auto jobs = app::listJobs(home.path());
    for (const app::JobEntry &job : *jobs) {
        EXPECT_EQ(job.firstLine, job.id);
        numbers.insert(job.id.substr(0, 4));
    }
    EXPECT_EQ(numbers.size(), std::size_t{kProcesses * kEach});
    EXPECT_EQ(*numbers.begin(), "0001");
    EXPECT_EQ(*numbers.rbegin(), "0096");
}

} // namespace
