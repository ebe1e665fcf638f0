// No room, no right, no folder: said at once, nothing pretended, nothing that was kept lost.
#include "app/store/event_file.h"
#include "app/store/job_folder.h"
#include "tests/support/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <csignal>
#include <functional>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

using testing::HasSubstr;

// Appends until it is refused; then makes room, appends once more and looks whether every line is there.
void fillAndGoOn(const std::filesystem::path &folder, const std::function<void()> &makeRoom)
{
    auto log = app::EventFile::create(folder);
    ASSERT_TRUE(log) << log.error().text;
    std::vector<std::string> lines;
    core::Expected<void, app::StoreFault> kept;
    while (kept && lines.size() < 1000) {
        lines.push_back("line " + std::to_string(lines.size()) + std::string(1000, '.'));
        kept = (*log)->append(lines.back());
    }
    ASSERT_FALSE(kept) << "never full";
    EXPECT_EQ(kept.error().what, app::StoreError::Full);
    EXPECT_EQ((*log)->waiting(), 1U);
    const auto meanwhile = app::readJob((*log)->path());
    EXPECT_EQ(meanwhile->note, "");
    EXPECT_EQ(meanwhile->lines.size(), lines.size() - 1);

    makeRoom();
    lines.emplace_back("after");
    ASSERT_TRUE((*log)->append("after"));
    EXPECT_EQ(app::readJob((*log)->path())->lines, lines);
}

TEST(FullDisk, AFileThatMayNotGrowIsSaidAndCaughtUpWithLater)
{
    const test::ScratchFolder home;
    struct sigaction old = {}, ignore = {};
    ignore.sa_handler = SIG_IGN;
    ::sigaction(SIGXFSZ, &ignore, &old);
    rlimit before = {};
    ::getrlimit(RLIMIT_FSIZE, &before);
    const rlimit tight = {20'000, before.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &tight);

    fillAndGoOn(home.path(), [&] { ::setrlimit(RLIMIT_FSIZE, &before); });

    ::setrlimit(RLIMIT_FSIZE, &before);
    ::sigaction(SIGXFSZ, &old, nullptr);
}

TEST(FullDisk, AFullDiskIsSaidAndCaughtUpWithLater)
{
    const test::ScratchFolder home;
    if (::mount("tmpfs", home.path().c_str(), "tmpfs", 0, "size=128k,mode=0700") != 0)
        GTEST_SKIP() << "a small disk can be made by root alone";
    test::setBytes(home.path() / "ballast", std::string(64'000, 'x'));

    fillAndGoOn(home.path(), [&] { std::filesystem::remove(home.path() / "ballast"); });

    ::umount2(home.path().c_str(), MNT_DETACH);
}

// The rest of a child's life as a user without rights; true if `check` was.
bool asNobody(const std::function<bool()> &check)
{
    const pid_t child = ::fork();
    if (child == 0) {
        constexpr uid_t kNobody = 65534;
        const bool plain = ::geteuid() != 0 || (::setgid(kNobody) == 0 && ::setuid(kNobody) == 0);
        ::_exit(plain && check() ? 0 : 1);
    }
    int status = -1;
    ::waitpid(child, &status, 0);
    return status == 0;
}

TEST(FullDisk, AFolderWithoutTheRightToWriteIsSaid)
{
    const test::ScratchFolder home;
    std::filesystem::permissions(home.path(), std::filesystem::perms(0555));

    EXPECT_TRUE(asNobody([&] {
        const auto log = app::EventFile::create(home.path());
        return !log && log.error().what == app::StoreError::NotWritable &&
               log.error().text.ends_with(": you have no right to that place.");
    }));
    EXPECT_TRUE(asNobody([&] { return !app::EventFile::create(home.path() / "jobs"); }));
    EXPECT_TRUE(app::listJobs(home.path())->empty());
}

TEST(FullDisk, AFileInThePlaceOfTheFolderIsSaid)
{
    const test::ScratchFolder home;
    test::setBytes(home.path() / "data", "a file");

    for (const auto &folder : {home.path() / "data", home.path() / "data" / "jobs"}) {
        const auto log = app::EventFile::create(folder);
        ASSERT_FALSE(log);
        EXPECT_THAT(log.error().text, HasSubstr("a file stands where a folder should be"));
    }
    EXPECT_FALSE(app::listJobs(home.path() / "data"));
}

} // namespace
