// A writer is killed at any moment, over and over, in the same job. What it had acknowledged must be there afterwards.
#include "app/store/event_file.h"
#include "core/base/random.h"
#include "tests/support/scratch_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <csignal>
#include <cstdint>
#include <ctime>
#include <sys/wait.h>
#include <unistd.h>

namespace {

constexpr int kJobs = 8, kKillsPerJob = 15;

std::string lineFor(std::uint64_t n)
{
    return "event " + std::to_string(n) + std::string(n * 37 % 900, '.');
}

// Appends line after line, for ever, and tells the pipe each number after it was acknowledged.
[[noreturn]] void write(const std::filesystem::path &path, int pipe)
{
    auto opened = app::EventFile::open(path);
    if (!opened)
        ::_exit(2);
    for (std::uint64_t n = opened->job.lines.size() + 1;; ++n) {
        if (!opened->log->append(lineFor(n)) || ::write(pipe, &n, sizeof n) != sizeof n)
            ::_exit(3);
    }
}

// Waits for so many acknowledgements and this much longer, then kills. Returns the last number that was acknowledged.
std::uint64_t killAfter(const std::filesystem::path &path, int acknowledgements, long microseconds)
{
    int ends[2];
    EXPECT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        ::close(ends[0]);
        write(path, ends[1]);
    }
    ::close(ends[1]);
    std::uint64_t last = 0;
    std::uint64_t n = 0;
    for (int i = 0; i < acknowledgements && ::read(ends[0], &n, sizeof n) == sizeof n; ++i)
        last = n;
    const timespec time = {0, microseconds * 1000};
    ::nanosleep(&time, nullptr);
    ::kill(child, SIGKILL);
    while (::read(ends[0], &n, sizeof n) == sizeof n)
        last = n;
    ::close(ends[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) << "the writer ended by itself: " << status;
    return last;
}

// Kills the writers of one job; returns how many events they had acknowledged.
std::uint64_t tortured(const std::filesystem::path &path, core::Random &chance)
{
    std::uint64_t acknowledged = 0;
    for (int kill = 0; kill < kKillsPerJob; ++kill) {
        // some before the first line, in the middle of opening
        const std::uint64_t last = killAfter(path, chance.below(4), static_cast<long>(chance.uniform() * 2'000));
        acknowledged = std::max(acknowledged, last);
        const auto job = app::readJob(path);
        EXPECT_TRUE(job);
        EXPECT_NE(job->state, app::StoredJob::State::Damaged) << job->note;
        EXPECT_GE(job->lines.size(), acknowledged) << "after kill " << kill;
        EXPECT_LE(job->lines.size(), acknowledged + 1) << "after kill " << kill;
        for (std::size_t n = 0; n < job->lines.size(); ++n)
            EXPECT_EQ(job->lines[n], lineFor(n + 1));
        acknowledged = job->lines.size(); // written, killed before it could say so: it counts from now on
    }
    return acknowledged;
}

TEST(EventFile, KilledAtAnyMomentLosesNothingAcknowledged)
{
    // A kill leaves the machine's memory alone, so where the file lies does not matter; there a sync takes no time.
    const test::ScratchFolder home("/dev/shm");
    core::Random chance(20260301);
    std::uint64_t acknowledged = 0;

    for (int job = 0; job < kJobs; ++job) {
        auto log = app::EventFile::create(home.path());
        ASSERT_TRUE(log) << log.error().text;
        ASSERT_TRUE((*log)->close());
        acknowledged += tortured((*log)->path(), chance);
    }

    EXPECT_GT(acknowledged, std::uint64_t{kJobs * kKillsPerJob}) << "the writers hardly wrote: nothing was shown";
    if (!HasFailure())
        std::printf("%d kills, %llu events acknowledged, none lost\n", kJobs * kKillsPerJob,
                    static_cast<unsigned long long>(acknowledged));
}

} // namespace
