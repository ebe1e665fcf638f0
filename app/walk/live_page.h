#pragma once
// A reading under voltage: one acknowledgement, one reading, one pair. Taking it and stopping are equal in size; whatever
// it reads, the next screen makes it off.
#include "app/walk/page.h"

class QBoxLayout;

namespace app {

class NumberLine;
class ReadingEntry;
class SaySentence;
class ScrollSheet;

class LivePage : public Page
{
    Q_OBJECT
public:
    explicit LivePage(const JobController &job, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    QString holdSentence() const override;
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override;
    void showDenial(const core::Denial &denial) override;

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addPicture(const JobController &job);
    void addEntry(const JobController &job);
    void addWays();
    void show(const core::Meter &meter);
    void take();

    core::StepView m_step;
    QBoxLayout *m_columns;
    ScrollSheet *m_left;
    ScrollSheet *m_right;
    SaySentence *m_sentence = nullptr;
    ReadingEntry *m_entry = nullptr;
    NumberLine *m_line = nullptr;
    KeyButton *m_take = nullptr;
};

} // namespace app
