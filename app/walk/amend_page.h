#pragma once
// Changing one answer or reading. Before anything changes it is shown what stays, what falls away and what comes next; the
// focus is on leaving it as it was. Power, covers and wires are never changed by it.
#include "app/walk/page.h"

namespace app {

class ReadingEntry;
class SaySentence;
class ScrollSheet;

class AmendPage : public Page
{
    Q_OBJECT
public:
    AmendPage(const JobController &job, const core::WayView &way, QWidget *parent = nullptr);

    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &denial) override;

private:
    void addReading();
    void addAnswers();
    void preview(const std::string &value);
    void change();

    const JobController &m_job;
    core::WayView m_way;
    std::string m_value; // what it would become; "" nothing yet
    ScrollSheet *m_sheet;
    SaySentence *m_head;
    ReadingEntry *m_entry = nullptr;
    std::vector<KeyButton *> m_answers;
    RunLabel *m_preview;
    KeyButton *m_change;
    KeyButton *m_leave;
};

} // namespace app
