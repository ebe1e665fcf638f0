#pragma once
// A job and the file it is kept in, for the terminal faces.
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

private:
    core::Session::Keep keep();

    std::shared_ptr<EventFile> m_log;
    std::string m_note;
};

// The job as it was, without writing to it: for its record.
core::Expected<core::Session, std::string> jobAsItWas(const core::Content &content, const std::string &fileOrId);

} // namespace app
