#include "app/store/job_folder.h"

#include "app/store/stored_job.h"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cstdlib>
#include <fmt/format.h>
#include <random>

namespace app {
namespace {

constexpr std::string_view kLetters = "BCDFGHJKLMNPQRSTVWXZ"; // no vowels: no words; none that looks like a digit
constexpr std::string_view kEnding = ".jsonl";
constexpr std::size_t kFewestDigits = 4, kMostDigits = 9, kLetterCount = 3;

// The number in an id, 0 if it is no id.
unsigned numberOf(std::string_view id)
{
    const auto dash = id.find('-');
    if (dash == std::string_view::npos || dash < kFewestDigits || dash > kMostDigits || id.size() != dash + 1 + kLetterCount)
        return 0;
    if (id.find_first_not_of(kLetters, dash + 1) != std::string_view::npos)
        return 0;
    unsigned number = 0;
    const auto [end, error] = std::from_chars(id.data(), id.data() + dash, number);
    return error == std::errc() && end == id.data() + dash ? number : 0;
}

// The ids of the folder's jobs, or the errno.
Tried<std::vector<std::string>> idsIn(const std::filesystem::path &folder)
{
    std::vector<std::string> ids;
    std::error_code error;
    std::filesystem::directory_iterator entry(folder, error);
    for (const std::filesystem::directory_iterator end; !error && entry != end; entry.increment(error)) {
        const std::filesystem::path name = entry->path().filename();
        if (name.extension() == kEnding && isJobId(name.stem().string()))
            ids.push_back(name.stem().string());
    }
    if (error)
        return core::unexpected(int{error.value()});
    return ids;
}

std::string idFor(unsigned number)
{
    std::random_device chance;
    std::uniform_int_distribution<std::size_t> pick(0, kLetters.size() - 1);
    std::string id = fmt::format("{:04}-", number);
    for (std::size_t i = 0; i < kLetterCount; ++i)
        id += kLetters[pick(chance)];
    return id;
}

Tried<NewJobFile> makeIn(const std::filesystem::path &folder)
{
    auto lock = PosixFile::openFolder(folder);
    if (!lock)
        return core::unexpected(int{lock.error()});
    (void)lock->lock(true); // two processes, two numbers; where a folder cannot be locked the letters still differ
    const auto ids = idsIn(folder);
    if (!ids)
        return core::unexpected(int{ids.error()});
    unsigned number = 0;
    for (const std::string &id : *ids)
        number = std::max(number, numberOf(id));
    for (;;) {
        const std::filesystem::path path = folder / (idFor(number + 1) + std::string(kEnding));
        auto file = PosixFile::open(path, PosixFile::Use::CreateNew);
        if (!file && file.error() == EEXIST)
            continue;
        if (!file)
            return core::unexpected(int{file.error()});
        if (const auto kept = lock->sync(); !kept) {
            std::error_code ignored;
            std::filesystem::remove(path, ignored);
            return core::unexpected(int{kept.error()});
        }
        return NewJobFile{std::move(*file), path};
    }
}

JobEntry entryFor(const std::filesystem::path &path)
{
    JobEntry entry;
    entry.path = path;
    entry.id = path.stem().string();
    entry.changedMs = changedMs(path).value_or(0);
    const auto job = readJob(path);
    entry.note = job ? job->note : job.error().text;
    if (job && !job->lines.empty()) {
        entry.firstLine = job->lines.front();
        entry.lastLine = job->lines.back();
        entry.lines = job->lines.size();
    }
    return entry;
}

} // namespace

Stored<std::filesystem::path> jobFolder()
{
    const auto absolute = [](const char *name) {
        const char *value = std::getenv(name); // NOLINT(concurrency-mt-unsafe): nothing here sets the environment
        const std::filesystem::path path(value == nullptr ? "" : value);
        return path.is_absolute() ? path : std::filesystem::path();
    };
    if (const auto data = absolute("XDG_DATA_HOME"); !data.empty())
        return data / "meterfirst" / "jobs";
    if (const auto home = absolute("HOME"); !home.empty())
        return home / ".local" / "share" / "meterfirst" / "jobs";
    return core::unexpected(
        StoreFault{StoreError::NotWritable, "No job can be saved: neither XDG_DATA_HOME nor HOME names a folder."});
}

bool isJobId(std::string_view id)
{
    return numberOf(id) > 0;
}

Stored<NewJobFile> newJobFile(const std::filesystem::path &folder)
{
    return makeFolder(folder).and_then([&] { return makeIn(folder); }).map_error([&](int error) {
        return writeFault(error, fmt::format("No job can be saved in {}", folder.string()));
    });
}

Stored<std::vector<JobEntry>> listJobs(const std::filesystem::path &folder)
{
    const auto ids = idsIn(folder);
    if (!ids && ids.error() == ENOENT)
        return {};
    if (!ids)
        return core::unexpected(readFault(ids.error(), fmt::format("The jobs in {} cannot be listed", folder.string())));
    std::vector<JobEntry> jobs;
    for (const std::string &id : *ids)
        jobs.push_back(entryFor(folder / (id + std::string(kEnding))));
    std::ranges::sort(jobs, [](const JobEntry &a, const JobEntry &b) {
        return a.changedMs != b.changedMs ? a.changedMs > b.changedMs : a.id > b.id;
    });
    return jobs;
}

} // namespace app
