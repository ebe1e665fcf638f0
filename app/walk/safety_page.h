#pragma once
// A safety screen: state in words, the panel, drawing and boxes, the ways on in one row of equal size. It opens with the
// focus on the panel and has no default: Enter, Space and a held key do nothing until a choice is focused by hand.
#include "app/walk/page.h"

#include <QTimer>

#include <functional>

#include <vector>

class QBoxLayout;

namespace app {

class ReadingEntry;
class ScrollSheet;
class SignalPanel;
class TickBox;

class SafetyPage : public Page
{
    Q_OBJECT
public:
    explicit SafetyPage(const JobController &job, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override;
    void showDenial(const core::Denial &denial) override;

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addState(const JobController &job);
    void addPanel(const JobController &job);
    void addMiddle(const JobController &job);
    void addBoxes(QBoxLayout *column, const JobController &job);
    void addWays();
    void addClosing();
    void addWay(const core::Named &way, bool on, const QString &key);
    void say(const std::string &way);
    std::vector<std::string> ticked() const;
    void refresh();
    void countDown();

    core::StepView m_step;
    bool m_stopped;
    ScrollSheet *m_sheet;
    SignalPanel *m_panel = nullptr;
    QBoxLayout *m_middle = nullptr;
    QBoxLayout *m_ways = nullptr;
    ReadingEntry *m_entry = nullptr; // S10: volts across the capacitor
    RunLabel *m_wait = nullptr;
    RunLabel *m_line = nullptr;
    std::vector<std::pair<std::string, TickBox *>> m_boxes;
    std::vector<KeyButton *> m_on; // going on: only when every box is ticked
    QTimer m_timer{this};
    double m_left = 0; // seconds of the waiting time
    std::function<core::Instant()> m_now;
    core::Instant m_from; // when the screen came up
};

} // namespace app
