#include "app/store/event_file.h"
#include "app/store/job_folder.h"
#include "tests/support/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>

namespace {

using testing::HasSubstr;

TEST(JobFolder, FollowsTheXdgRules)
{
    ::setenv("HOME", "/home/somebody", 1);
    ::setenv("XDG_DATA_HOME", "/data", 1);
    EXPECT_EQ(*app::jobFolder(), "/data/meterfirst/jobs");
    ::setenv("XDG_DATA_HOME", "relative", 1);
    EXPECT_EQ(*app::jobFolder(), "/home/somebody/.local/share/meterfirst/jobs");
    ::unsetenv("XDG_DATA_HOME");
    EXPECT_EQ(*app::jobFolder(), "/home/somebody/.local/share/meterfirst/jobs");
    ::unsetenv("HOME");
    EXPECT_FALSE(app::jobFolder());
}

TEST(JobFolder, KnowsAnIdFromOtherNames)
{
    for (const char *id : {"0001-BCD", "0412-KTR", "10000-ZZZ"})
        EXPECT_TRUE(app::isJobId(id)) << id;
    for (const char *id : {"", "-", "412-KTR", "0412", "0412-KT", "0412-KTRX", "0412-KTA", "0412-ktr", "041a-KTR", "+412-KTR",
                           "0000-KTR", "9999999999-KTR", "0412-KTR (copy)"})
        EXPECT_FALSE(app::isJobId(id)) << id;
}

TEST(JobFolder, ListsJobsByTheirLastChange)
{
    const test::ScratchFolder home;
    std::vector<std::string> ids;
    for (const char *name : {"first", "second", "third"}) {
        auto log = app::EventFile::create(home.path());
        ASSERT_TRUE((*log)->append(std::string(name) + " begins"));
        ASSERT_TRUE((*log)->append(std::string(name) + " ends"));
        std::filesystem::last_write_time((*log)->path(),
                                         std::filesystem::file_time_type::clock::now() - std::chrono::hours(ids.size()));
        ids.push_back((*log)->id());
    }
    test::setBytes(home.path() / "notes.txt", "not a job");

    const auto jobs = app::listJobs(home.path());

    ASSERT_TRUE(jobs) << jobs.error().text;
    ASSERT_EQ(jobs->size(), 3U);
    EXPECT_EQ(jobs->at(0).id, ids[0]);
    EXPECT_EQ(jobs->at(0).firstLine, "first begins");
    EXPECT_EQ(jobs->at(0).lastLine, "first ends");
    EXPECT_EQ(jobs->at(0).lines, 2U);
    EXPECT_EQ(jobs->at(2).id, ids[2]);
    EXPECT_NEAR(static_cast<double>(jobs->at(0).changedMs - jobs->at(2).changedMs), 2 * 3.6e6, 6e4);
}

TEST(JobFolder, ListsWhatItCannotReadWithTheReason)
{
    const test::ScratchFolder home;
    std::filesystem::create_directory(home.path() / "0007-BCD.jsonl");
    std::filesystem::create_symlink("/dev/zero", home.path() / "0008-BCD.jsonl");
    test::setBytes(home.path() / "0009-BCD.jsonl", "nonsense\nmore\n");

    const auto jobs = app::listJobs(home.path());

    ASSERT_EQ(jobs->size(), 3U);
    for (const app::JobEntry &job : *jobs) {
        EXPECT_EQ(job.lines, 0U);
        EXPECT_THAT(job.note, HasSubstr(job.id));
    }
    const auto made = app::EventFile::create(home.path());
    EXPECT_THAT((*made)->id(), testing::StartsWith("0010-"));
}

TEST(JobFolder, AFolderThatIsNotThereHasNoJobs)
{
    const test::ScratchFolder home;
    const auto jobs = app::listJobs(home.path() / "nowhere");
    ASSERT_TRUE(jobs);
    EXPECT_TRUE(jobs->empty());
}

} // namespace
