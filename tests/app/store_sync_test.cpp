// What would outlast a power cut is what was synced. The two sync calls are taken over here: they remember what had reached
// the disk by then, and fail when told to.
#include "app/store/event_file.h"
#include "tests/support/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cerrno>
#include <map>
#include <sys/syscall.h>
#include <unistd.h>

namespace {

std::map<std::string, std::string> g_onDisk;      // file -> its bytes at its last good sync
std::map<std::string, std::string> g_namesOnDisk; // folder -> the names in it at its last good sync
int g_failures = 0;                               // so many syncs fail from now on

std::string pathOf(int fd)
{
    return std::filesystem::read_symlink("/proc/self/fd/" + std::to_string(fd)).string();
}

int synced(int fd)
{
    if (g_failures > 0) {
        --g_failures;
        errno = EIO;
        return -1;
    }
    const std::string path = pathOf(fd);
    if (!std::filesystem::is_directory(path)) {
        g_onDisk[path] = test::bytesOf(path);
        return 0;
    }
    std::string &names = g_namesOnDisk[path];
    names.clear();
    for (const auto &entry : std::filesystem::directory_iterator(path))
        names += entry.path().filename().string() + "\n";
    return 0;
}

} // namespace

extern "C" int fdatasync(int fd)
{
    return synced(fd);
}

extern "C" int fsync(int fd)
{
    return synced(fd);
}

namespace {

using testing::HasSubstr;

class EventFileSync : public testing::Test
{
protected:
    void SetUp() override
    {
        g_onDisk.clear();
        g_namesOnDisk.clear();
        g_failures = 0;
    }
    std::vector<std::string> linesOnDisk(const app::EventFile &log) const
    {
        return app::parseJob(log.id(), g_onDisk[log.path().string()]).lines;
    }
    test::ScratchFolder home;
};

TEST_F(EventFileSync, ANewJobsNameAndItsFoldersAreOnTheDisk)
{
    const auto log = app::EventFile::create(home.path() / "data" / "jobs");

    ASSERT_TRUE(log);
    EXPECT_THAT(g_namesOnDisk[home.path().string()], HasSubstr("data"));
    EXPECT_THAT(g_namesOnDisk[(home.path() / "data").string()], HasSubstr("jobs"));
    EXPECT_THAT(g_namesOnDisk[(home.path() / "data" / "jobs").string()], HasSubstr((*log)->id() + ".jsonl"));
}

TEST_F(EventFileSync, WhatIsAcknowledgedIsOnTheDisk)
{
    auto log = app::EventFile::create(home.path());
    std::vector<std::string> lines;

    for (const char *line : {"one", "two", "three"}) {
        lines.emplace_back(line);
        ASSERT_TRUE((*log)->append(line));
        EXPECT_EQ(linesOnDisk(**log), lines);
    }
}

TEST_F(EventFileSync, AFailedSyncIsAFaultAndTheLinesComeWithTheNextOne)
{
    auto log = app::EventFile::create(home.path());
    ASSERT_TRUE((*log)->append("one"));
    g_failures = 2;

    const auto second = (*log)->append("two");
    const auto third = (*log)->append("three");

    ASSERT_FALSE(second);
    ASSERT_FALSE(third);
    EXPECT_THAT(second.error().text, HasSubstr("1 entry is missing: the disk reports an error."));
    EXPECT_THAT(third.error().text, HasSubstr("2 entries are missing: the disk reports an error."));
    EXPECT_EQ(app::readJob((*log)->path())->lines, std::vector<std::string>{"one"}); // not shown as kept to anybody
    ASSERT_TRUE((*log)->append("four"));
    EXPECT_EQ((*log)->waiting(), 0U);
    EXPECT_EQ(linesOnDisk(**log), (std::vector<std::string>{"one", "two", "three", "four"}));
}

TEST_F(EventFileSync, CloseTriesOnceMoreAndSaysWhatIsLost)
{
    auto log = app::EventFile::create(home.path());
    g_failures = 2;
    ASSERT_FALSE((*log)->append("one"));

    const auto closed = (*log)->close();

    ASSERT_FALSE(closed);
    EXPECT_THAT(closed.error().text, HasSubstr("1 entry is missing"));
    EXPECT_TRUE((*log)->close()) << "said once";
}

TEST_F(EventFileSync, AJobWhoseNameIsNotOnTheDiskIsNotMade)
{
    g_failures = 1;

    const auto log = app::EventFile::create(home.path());

    ASSERT_FALSE(log);
    EXPECT_EQ(log.error().what, app::StoreError::NotWritable);
    EXPECT_TRUE(std::filesystem::is_empty(home.path()));
}

TEST_F(EventFileSync, ATornEndIsSetAsideOnTheDiskBeforeItIsCutOff)
{
    std::filesystem::path path;
    {
        auto log = app::EventFile::create(home.path());
        ASSERT_TRUE((*log)->append("one"));
        path = (*log)->path();
    }
    const std::string whole = test::bytesOf(path);
    test::setBytes(path, whole + "torn");
    g_failures = 1;

    EXPECT_FALSE(app::EventFile::open(path));
    EXPECT_EQ(test::bytesOf(path), whole + "torn");

    EXPECT_TRUE(app::EventFile::open(path));
    EXPECT_EQ(g_onDisk[path.string()], whole);
    EXPECT_THAT(g_onDisk[path.string() + ".torn"], HasSubstr("torn"));
    EXPECT_THAT(g_namesOnDisk[home.path().string()], HasSubstr(".torn"));
}

} // namespace
