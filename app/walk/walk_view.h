#pragma once
// The walk in its frame: from a job's state to the page that shows it, pages laid over it, and what a page says handed to
// the job. No rule of the walk is here.
#include "app/paper/record.h"
#include "app/walk/frame.h"
#include "app/walk/landed.h"

namespace app {

class StartPage;

class WalkView : public QWidget
{
    Q_OBJECT
public:
    WalkView(const ContentFiles &content, const std::filesystem::path &jobs, QWidget *parent = nullptr,
             JobController::Clock clock = core::now);

    [[nodiscard]] JobController &job() { return m_job; }
    [[nodiscard]] Frame *frame() const { return m_frame; }
    [[nodiscard]] Page *page() const { return m_frame->page(); }
    [[nodiscard]] bool isAtStart() const { return m_atStart; }

    void start(const QString &say = {}); // the start page; an open job stays parked on the disk
    void begin(const QString &tree);
    void open(const std::filesystem::path &file);
    void say(const core::Command &command);
    void stop(const std::string &why); // S12 at once; "" is the worst case
    void undo();
    void prove(); // the repair that the verdict asked for
    // Pages over the step.
    void showMeter(const QString &tree = {});
    void showWhy(const std::string &component = {});
    void showChain();
    void showLadder();
    void showWay();
    void showAmend(int event);
    void showCannot();
    void showOutcome();
    void showHelp();
    void showOver(Page *page);
    void back();
    [[nodiscard]] Record record() const; // of the job that is open
    void setTabsAfter(const QList<QWidget *> &after);

Q_SIGNALS:
    void pageChanged();
    void fillsWindow(bool fills);
    void wantsCopy();
    void wantsPrint();
    void wantsPdf();

protected:
    void keyPressEvent(QKeyEvent *event) override;

private:
    void refresh(); // the page of the present state
    void place(Page *page);
    void connectPage(Page *page);
    void connectVerdict(Page *page);
    void landReading(const core::StepView &step, const core::Command &command);
    void startJob(const QString &tree);
    void showMeterPage(const QString &tree, const core::Meter &meter);
    void showCheck(const QString &tree, const core::Meter &meter);
    void showNoMeter(const QString &tree);
    void keepMeter(const QString &tree, const core::Meter &meter, bool energized);

    const ContentFiles &m_content;
    JobController m_job;
    Frame *m_frame;
    std::optional<Landed> m_landed;
    bool m_atStart = true;
    bool m_over = false;
    bool m_energized = false; // for the next job; off until turned on
    bool m_saying = false;
    QList<QWidget *> m_after;
};

} // namespace app
