#pragma once
// A job and the file it is kept in, for the terminal faces.
#include "app/paper/record.h"
#include "app/store/event_file.h"
#include "core/session/session.h"

namespace app {

class JobOf
{
public:
    // The walk goes on without a file where the disk does not take one; note() says so.
    core::Expected<core::Session, std::string> begin(const core::Content &content, core::Snapshot snapshot);
    core::Expected<core::Session, std::string> resume(const core::Content &content, const std::string &fileOrId);
    const std::string &note() const { return m_note; }
    std::string id() const { return m_log == nullptr ? std::string() : m_log->id(); } // "": not kept

private:
    core::Session::Keep keep();

    std::shared_ptr<EventFile> m_log;
    std::string m_note;
};

// The job as it was, without writing to it: for its record.
struct JobAsItWas
{
    core::Session session;
    bool damaged = false; // only the entries before the damage are in it
    std::string note;     // what is wrong with the file, as a sentence; "" if nothing is
};
core::Expected<JobAsItWas, std::string> jobAsItWas(const core::Content &content, const std::string &fileOrId);
// No verdict stands on a job of which a part is missing.
Record recordOfJob(const JobAsItWas &job, const std::string &name);

} // namespace app
