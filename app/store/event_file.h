#pragma once
// The log of one job as one append-only file. One process writes it at a time.
#include "app/store/job_log.h"
#include "app/store/posix_file.h"
#include "app/store/stored_job.h"

#include <deque>
#include <filesystem>
#include <memory>
#include <string>

namespace app {

struct OpenedJob;

class EventFile final : public JobLog
{
public:
    // A new, empty job in this folder (made if it is not there), with an id of its own.
    static Stored<std::unique_ptr<EventFile>> create(const std::filesystem::path &folder);
    // Goes on with a job. A torn end is cut off, after it was set aside in <path>.torn. Refused, with the file untouched: Held
    // (the sentence says by whom) and Damaged.
    static Stored<OpenedJob> open(const std::filesystem::path &path);
    ~EventFile() override;

    const std::string &id() const { return m_job.id; }
    const std::filesystem::path &path() const { return m_path; }

    Stored<void> append(std::string_view line) override;
    Stored<void> close() override;
    std::size_t waiting() const override { return m_waiting.size(); }

private:
    struct Chain // where the next line goes
    {
        std::string id, lastHash;
        std::uint64_t lines = 0, bytes = 0;
    };
    EventFile(PosixFile file, std::filesystem::path path, const StoredJob &job);
    static Stored<std::unique_ptr<EventFile>> lockedNew(PosixFile file, const std::filesystem::path &path);
    Tried<void> writeWaiting();
    Tried<void> writeOne(std::string_view line);
    StoreFault notSaved(int error) const;

    PosixFile m_file;
    std::filesystem::path m_path;
    Chain m_job;
    std::deque<std::string> m_waiting;
    bool m_unsure = false; // a write failed: what lies beyond m_job.bytes is to be cut off first
    bool m_open = true;
};

struct OpenedJob
{
    std::unique_ptr<EventFile> log;
    StoredJob job; // what is in it; the note says if an end was cut off
};

} // namespace app
