#include "app/cli/job_of.h"

#include "app/store/job_folder.h"
#include "app/store/stored_job.h"
#include "core/session/event_text.h"

#include <unistd.h>

namespace app {
namespace {

std::string process()
{
    return "p" + std::to_string(getpid()) + "-" + std::to_string(core::now().wallMs);
}

std::filesystem::path fileFor(const std::string &fileOrId)
{
    std::error_code gone;
    if (std::filesystem::exists(fileOrId, gone))
        return fileOrId;
    const auto folder = jobFolder();
    return folder ? *folder / (fileOrId + ".jsonl") : std::filesystem::path(fileOrId);
}

core::Expected<std::vector<core::Event>, std::string> eventsOf(const StoredJob &job)
{
    std::vector<core::Event> events;
    for (const std::string &line : job.lines) {
        auto event = core::eventFrom(line);
        if (!event)
            return core::unexpected(event.error());
        events.push_back(std::move(*event));
    }
    return events;
}

} // namespace

core::Session::Keep JobOf::keep()
{
    return [log = m_log](const core::Event &e) { return log != nullptr && log->append(core::toLine(e)).has_value(); };
}

core::Expected<core::Session, std::string> JobOf::begin(const core::Content &content, core::Snapshot snapshot)
{
    const auto folder = jobFolder();
    auto created = folder ? EventFile::create(*folder) : Stored<std::unique_ptr<EventFile>>(core::unexpected(folder.error()));
    if (created)
        m_log = std::move(*created);
    m_note = created ? "This job is " + m_log->id() + "." : created.error().text + " The walk goes on without being kept.";
    snapshot.program = "meterfirst " METERFIRST_VERSION;
    auto session = core::Session::begin(content, std::move(snapshot), process(), core::now(), keep());
    if (!session)
        return core::unexpected(session.error().text);
    return std::move(*session);
}

core::Expected<core::Session, std::string> JobOf::resume(const core::Content &content, const std::string &fileOrId)
{
    auto opened = EventFile::open(fileFor(fileOrId));
    if (!opened)
        return core::unexpected(opened.error().text);
    m_log = std::move(opened->log);
    m_note = opened->job.note;
    auto events = eventsOf(opened->job);
    if (!events)
        return core::unexpected(events.error());
    auto session = core::Session::resume(content, std::move(*events), process(), core::now(), keep());
    if (!session)
        return core::unexpected(session.error().text);
    return std::move(*session);
}

core::Expected<JobAsItWas, std::string> jobAsItWas(const core::Content &content, const std::string &fileOrId)
{
    const auto job = readJob(fileFor(fileOrId));
    if (!job)
        return core::unexpected(job.error().text);
    auto events = eventsOf(*job);
    if (!events)
        return core::unexpected(events.error());
    auto session = core::Session::asItWas(content, std::move(*events));
    if (!session)
        return core::unexpected(session.error().text);
    return JobAsItWas{std::move(*session), job->state == StoredJob::State::Damaged, job->note};
}

Record recordOfJob(const JobAsItWas &job, const std::string &name)
{
    Record record = recordOf(job.session, name);
    if (job.damaged) {
        record.verdict = "Damaged: no verdict";
        record.sentence = job.note + " What follows is what stood before the damage, and nothing may be concluded from it.";
        record.proven = false;
        for (std::string *line : {&record.basis, &record.proof, &record.outcome})
            line->clear();
        record.causes.clear();
        record.prove.clear();
    } else if (!job.note.empty()) {
        record.notes.insert(record.notes.begin(), job.note);
    }
    return record;
}

} // namespace app
