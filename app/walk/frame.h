#pragma once
// What stands round a page: head, rail and Stop, the chain at its side, the tape below. Little room lays the rail down and
// makes chain and tape pages of their own.
#include "app/walk/page.h"

#include <QPointer>

class QBoxLayout;
class QGridLayout;

namespace app {

class ChainPanel;
class HoldBar;
class PowerRail;
class StopButton;
class TapeView;

class Frame : public QWidget
{
    Q_OBJECT
public:
    explicit Frame(QWidget *parent = nullptr);

    void show(Page *page); // takes it over; the one before goes
    [[nodiscard]] Page *page() const { return m_page; }
    void showJob(const JobController &job); // rail, head, chain and tape; nothing of it without a job
    void showNoJob(const QString &title);
    void setFault(const QString &fault); // why the last event is not on the disk
    [[nodiscard]] ChainPanel *chain() const { return m_chain; }
    [[nodiscard]] TapeView *tape() const { return m_tape; }
    [[nodiscard]] StopButton *stop() const { return m_stop; }
    [[nodiscard]] PowerRail *rail() const { return m_rail; }
    [[nodiscard]] Page::Room room() const;
    // Tab: the page, chain, tape, Stop, then `after`.
    void orderTabs(const QList<QWidget *> &after);

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void dress();
    void arrange();
    void arrangeRail(bool lying, bool bare);

    QGridLayout *m_grid;
    QWidget *m_railBox;
    QBoxLayout *m_railLayout;
    PowerRail *m_rail;
    StopButton *m_stop;
    RunLabel *m_head;
    RunLabel *m_saved;
    RunLabel *m_fault;
    HoldBar *m_hold;
    QWidget *m_bodyBox;
    QBoxLayout *m_body; // page and chain
    ChainPanel *m_chain;
    TapeView *m_tape;
    QPointer<Page> m_page;
    std::optional<bool> m_lying;
    bool m_hasJob = false;
};

} // namespace app
