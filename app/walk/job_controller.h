#pragma once
// The job on the screen: the session and its file. It hands commands on, keeps every event before the screen moves, and
// says at once when the disk does not take one. It decides nothing.
#include "app/store/content_files.h"
#include "app/store/event_file.h"
#include "core/session/view_of.h"

#include <QObject>
#include <QTimer>

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>

namespace app {

class JobController : public QObject
{
    Q_OBJECT
public:
    using Clock = std::function<core::Instant()>;
    // `folder` is where job files lie. The content outlives the controller.
    JobController(const ContentFiles &content, std::filesystem::path folder, QObject *parent = nullptr, Clock clock = core::now);
    ~JobController() override;

    // Both give a sentence if there is no job now; the one before is left as it was.
    std::optional<QString> begin(core::Snapshot snapshot);
    std::optional<QString> open(const std::filesystem::path &file);
    void leave(); // the job stays on the disk as it is

    [[nodiscard]] bool hasJob() const { return m_session.has_value(); }
    [[nodiscard]] const core::Session &session() const { return *m_session; }
    [[nodiscard]] const core::StateView &view() const { return m_view; }
    [[nodiscard]] const ContentFiles &content() const { return m_content; }
    [[nodiscard]] const std::filesystem::path &folder() const { return m_folder; }
    [[nodiscard]] QString jobName() const;   // "0412-KTR"; empty while the file could not be made
    [[nodiscard]] QString diskFault() const; // why the last event is not on the disk; empty: it is
    [[nodiscard]] core::Instant now() const { return m_clock(); }

    // The session's no, or nothing: then changed() was emitted.
    std::optional<core::Denial> handle(const core::Command &command);

Q_SIGNALS:
    void changed();
    void diskFaultChanged();

private:
    bool keep(const core::Event &event);
    void refresh();
    void tick();
    core::Session::Keep keeper();

    const ContentFiles &m_content;
    std::filesystem::path m_folder;
    Clock m_clock;
    std::unique_ptr<EventFile> m_log;
    std::optional<core::Session> m_session;
    core::StateView m_view;
    QString m_fault;
    QTimer m_timer;
};

} // namespace app
