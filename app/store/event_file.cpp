#include "app/store/event_file.h"

#include "app/store/job_folder.h"
#include "core/base/clock.h"
#include "core/base/text.h"

#include <cerrno>
#include <fmt/format.h>

namespace app {
namespace {

// Who writes the job, for whoever else wants to; the lock itself is on the job file.
std::filesystem::path holderNote(const std::filesystem::path &file)
{
    return std::filesystem::path(file) += ".held";
}

void leaveHolderNote(const std::filesystem::path &file)
{
    std::error_code ignored; // the note is a courtesy
    std::filesystem::remove(holderNote(file), ignored);
    auto note = PosixFile::open(holderNote(file), PosixFile::Use::CreateNew);
    if (note)
        (void)note->write(fmt::format("{} since {}", thisProcess(), core::isoTime(core::now().wallMs)));
}

StoreFault heldFault(const std::filesystem::path &file)
{
    const auto note = PosixFile::open(holderNote(file), PosixFile::Use::Read).and_then([](const PosixFile &opened) {
        return opened.readAll();
    });
    constexpr std::size_t kMost = 300;
    const std::string holder = note && !note->empty() ? core::printable(note->substr(0, kMost)) : "another process";
    return {StoreError::Held, fmt::format("Job {} is being written by {}.", file.stem().string(), holder)};
}

StoreFault lockFault(int error, const std::filesystem::path &file)
{
    if (error == EWOULDBLOCK)
        return heldFault(file);
    return writeFault(error, fmt::format("Job {} cannot be locked", file.stem().string()));
}

// What is cut off is kept beside the job: nobody can tell an unfinished entry from one that was altered later.
Tried<void> setAside(const std::filesystem::path &file, std::string_view tail)
{
    const std::filesystem::path aside = std::filesystem::path(file) += ".torn";
    auto opened = PosixFile::open(aside, PosixFile::Use::CreateNew);
    if (!opened && opened.error() == EEXIST)
        opened = PosixFile::open(aside, PosixFile::Use::Append);
    if (!opened)
        return core::unexpected(int{opened.error()});
    return opened->write(tail)
        .and_then([&] { return opened->write("\n"); })
        .and_then([&] { return opened->sync(); })
        .and_then([&] { return syncFolder(file.parent_path()); });
}

Tried<void> cutOff(PosixFile &file, const std::filesystem::path &path, std::string_view bytes, std::uint64_t sound)
{
    return setAside(path, bytes.substr(sound)).and_then([&] { return file.truncate(sound); }).and_then([&] {
        return file.syncData();
    });
}

} // namespace

EventFile::EventFile(PosixFile file, std::filesystem::path path, const StoredJob &job)
    : m_file(std::move(file)), m_path(std::move(path)), m_job{job.id, job.lastHash, job.lines.size(), job.soundBytes}
{
    leaveHolderNote(m_path);
}

EventFile::~EventFile()
{
    (void)close();
}

Stored<std::unique_ptr<EventFile>> EventFile::create(const std::filesystem::path &folder)
{
    return newJobFile(folder).and_then([](NewJobFile &&made) { return lockedNew(std::move(made.file), made.path); });
}

Stored<std::unique_ptr<EventFile>> EventFile::lockedNew(PosixFile file, const std::filesystem::path &path)
{
    if (const auto locked = file.lock(false); !locked)
        return core::unexpected(lockFault(locked.error(), path));
    return std::unique_ptr<EventFile>(new EventFile(std::move(file), path, parseJob(path.stem().string(), {})));
}

Stored<OpenedJob> EventFile::open(const std::filesystem::path &path)
{
    const std::string id = path.stem().string();
    auto file = PosixFile::open(path, PosixFile::Use::Append);
    if (!file)
        return core::unexpected(writeFault(file.error(), fmt::format("Job {} cannot be opened", id)));
    if (const auto locked = file->lock(false); !locked)
        return core::unexpected(lockFault(locked.error(), path));
    const auto bytes = file->readAll();
    if (!bytes)
        return core::unexpected(readFault(bytes.error(), fmt::format("Job {} cannot be read", id)));
    StoredJob job = parseJob(id, *bytes);
    if (job.state == StoredJob::State::Damaged)
        return core::unexpected(StoreFault{StoreError::Damaged, job.note + " Nothing was changed."});
    if (job.state == StoredJob::State::TornEnd) {
        if (const auto cut = cutOff(*file, path, *bytes, job.soundBytes); !cut)
            return core::unexpected(writeFault(cut.error(), job.note + " It cannot be set aside"));
    }
    std::unique_ptr<EventFile> log(new EventFile(std::move(*file), path, job));
    return OpenedJob{std::move(log), std::move(job)};
}

Stored<void> EventFile::append(std::string_view line)
{
    if (line.empty() || line.size() > kLongestLine || line.find('\n') != std::string_view::npos)
        return core::unexpected(StoreFault{StoreError::BadLine, "An entry must be one line, neither empty nor over 16 MiB."});
    m_waiting.emplace_back(line);
    if (!m_open)
        return core::unexpected(notSaved(EBADF));
    return writeWaiting().map_error([this](int error) { return notSaved(error); });
}

Stored<void> EventFile::close()
{
    if (!m_open)
        return {};
    const auto written = writeWaiting();
    m_open = false;
    std::error_code ignored;
    std::filesystem::remove(holderNote(m_path), ignored);
    { // the lock goes with the descriptor
        const PosixFile last = std::move(m_file);
    }
    return Tried<void>(written).map_error([this](int error) { return notSaved(error); });
}

Tried<void> EventFile::writeWaiting()
{
    while (!m_waiting.empty()) {
        if (const auto written = writeOne(m_waiting.front()); !written)
            return written;
        m_waiting.pop_front();
    }
    return {};
}

Tried<void> EventFile::writeOne(std::string_view line)
{
    const auto size = m_file.size();
    if (!size)
        return core::unexpected(int{size.error()});
    if (!m_unsure && *size != m_job.bytes)
        return core::unexpected(int{EUCLEAN}); // somebody else wrote into it
    if (m_unsure) {
        // Linux may count a page as written whose sync failed: cut off and written anew it is dirty again.
        if (const auto cut = m_file.truncate(m_job.bytes); !cut)
            return cut;
    }
    const std::string hash = lineHash(m_job.lastHash, m_job.lines + 1, line);
    const std::string text = storedLine(m_job.lines + 1, line, hash);
    m_unsure = true;
    if (const auto kept = m_file.write(text).and_then([&] { return m_file.syncData(); }); !kept) {
        (void)m_file.truncate(m_job.bytes); // tidy for a reader; done again before the next write
        return kept;
    }
    m_unsure = false;
    m_job = {m_job.id, hash, m_job.lines + 1, m_job.bytes + text.size()};
    return {};
}

StoreFault EventFile::notSaved(int error) const
{
    const std::size_t count = m_waiting.size();
    return writeFault(
        error, fmt::format("Job {} is not saved, {} {} missing", m_job.id, count, count == 1 ? "entry is" : "entries are"));
}

} // namespace app
