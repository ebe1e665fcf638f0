#pragma once
// Proving dead, after its hold point: known outlet, every pair at the work point, known outlet again; values only.
#include "app/shared/text_block.h"
#include "app/walk/page.h"

namespace app {

class ReadingEntry;
class SaySentence;
class ScrollSheet;

class ProvePage : public Page
{
    Q_OBJECT
public:
    explicit ProvePage(const JobController &job, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    QString holdSentence() const override;
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override;
    void showDenial(const core::Denial &denial) override;

private:
    void addStations(const JobController &job);
    void addStation(QLayout *row, int number, const QString &title, const QString &note, const Runs &readings);
    void take();

    core::StepView m_step;
    bool m_dc;
    ScrollSheet *m_sheet;
    SaySentence *m_sentence;
    ReadingEntry *m_entry;
    KeyButton *m_take;
};

} // namespace app
