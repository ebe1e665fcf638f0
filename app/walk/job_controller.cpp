#include "app/walk/job_controller.h"

#include "app/walk/words.h"
#include "core/session/event_text.h"

#include <QCoreApplication>

namespace app {
namespace {

constexpr int kTickMs = 5000; // lapses are counted in minutes

std::string thisProgram()
{
    return "window-" + std::to_string(QCoreApplication::applicationPid());
}

} // namespace

JobController::JobController(const ContentFiles &content, std::filesystem::path folder, QObject *parent, Clock clock)
    : QObject(parent), m_content(content), m_folder(std::move(folder)), m_clock(std::move(clock))
{
    connect(&m_timer, &QTimer::timeout, this, &JobController::tick);
    m_timer.start(kTickMs);
}

JobController::~JobController() = default;

core::Session::Keep JobController::keeper()
{
    return [this](const core::Event &event) { return keep(event); };
}

bool JobController::keep(const core::Event &event)
{
    const QString before = m_fault;
    if (m_log) {
        const auto kept = m_log->append(core::toLine(event));
        m_fault = kept ? QString() : qs(kept.error().text);
    }
    if (m_fault != before)
        Q_EMIT diskFaultChanged();
    return m_fault.isEmpty();
}

std::optional<QString> JobController::begin(core::Snapshot snapshot)
{
    leave();
    snapshot.program = utf8(QCoreApplication::applicationVersion());
    auto log = EventFile::create(m_folder);
    m_fault = log ? QString() : qs(log.error().text);
    m_log = log ? std::move(*log) : nullptr;
    auto session = core::Session::begin(m_content.content(), std::move(snapshot), thisProgram(), m_clock(), keeper());
    if (!session) {
        m_log.reset();
        return qs(session.error().text);
    }
    m_session.emplace(std::move(*session));
    refresh();
    Q_EMIT diskFaultChanged();
    return std::nullopt;
}

std::optional<QString> JobController::open(const std::filesystem::path &file)
{
    auto opened = EventFile::open(file);
    if (!opened)
        return qs(opened.error().text);
    std::vector<core::Event> events;
    for (const std::string &line : opened->job.lines) {
        auto event = core::eventFrom(line);
        if (!event)
            return tr("This job cannot be read: %1").arg(qs(event.error()));
        events.push_back(std::move(*event));
    }
    leave();
    m_fault.clear();
    m_log = std::move(opened->log);
    auto session = core::Session::resume(m_content.content(), std::move(events), thisProgram(), m_clock(), keeper());
    if (!session) {
        m_log.reset();
        return qs(session.error().text);
    }
    m_session.emplace(std::move(*session));
    refresh();
    Q_EMIT diskFaultChanged();
    return std::nullopt;
}

void JobController::leave()
{
    m_session.reset();
    if (m_log) {
        const auto closed = m_log->close();
        m_fault = closed ? QString() : qs(closed.error().text);
        m_log.reset();
        Q_EMIT diskFaultChanged();
    }
}

QString JobController::jobName() const
{
    return m_log ? qs(m_log->id()) : QString();
}

QString JobController::diskFault() const
{
    return m_fault;
}

std::optional<core::Denial> JobController::handle(const core::Command &command)
{
    if (!m_session)
        return core::Denial{"not_now", utf8(tr("There is no job.")), {}};
    const std::size_t before = m_session->events().size();
    auto denial = m_session->handle(command, m_clock());
    if (!denial || m_session->events().size() != before) // a lapse changes the screen even under a no
        refresh();
    return denial;
}

void JobController::refresh()
{
    m_view = core::viewOf(*m_session);
    m_view.job = utf8(jobName());
    Q_EMIT changed();
}

void JobController::tick()
{
    if (!m_session)
        return;
    const std::size_t before = m_session->events().size();
    m_session->tick(m_clock());
    if (m_session->events().size() != before)
        refresh();
}

} // namespace app
