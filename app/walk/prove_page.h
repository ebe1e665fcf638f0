#pragma once
// Proving dead, after its hold point: known outlet, every pair at the work point, known outlet again; values only.
#include "app/shared/text_block.h"
#include "app/walk/page.h"

class QBoxLayout;

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

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addStations(const JobController &job);
    void addStation(int number, const QString &title, const QString &note, QWidget *picture, const Runs &readings);
    [[nodiscard]] int present() const; // the station: 1, 2 or 3
    void take();

    core::StepView m_step;
    bool m_dc;
    ScrollSheet *m_sheet;
    SaySentence *m_sentence;
    ReadingEntry *m_entry;
    KeyButton *m_take;
    QBoxLayout *m_stations;
    QBoxLayout *m_ways;
    std::vector<QWidget *> m_columns;
};

} // namespace app
