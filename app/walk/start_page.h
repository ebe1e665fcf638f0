#pragma once
// What is wrong? Typed in a few letters; jobs to go on with; the meter; what was loaded.
#include "app/walk/job_list.h"
#include "app/walk/page.h"

class QBoxLayout;
class QLineEdit;

namespace app {

class HitList;
class ScrollSheet;

class StartPage : public Page
{
    Q_OBJECT
public:
    StartPage(const ContentFiles &content, const std::filesystem::path &folder, bool energized, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void showDenial(const core::Denial &denial) override;
    void say(const QString &sentence); // at once, above the list

Q_SIGNALS:
    void begins(const QString &tree);
    void goesOn(const QString &file);
    void wantsMeter();
    void wantsFaults();

protected:
    bool eventFilter(QObject *object, QEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void addSearch();
    void addJobs(const JobList &jobs);
    void addStrip(const ContentFiles &content, const JobList &jobs, bool energized);
    void look();
    bool fieldKey(QKeyEvent *event);

    std::vector<Hit> m_all;
    QBoxLayout *m_columns;
    QBoxLayout *m_strip;
    ScrollSheet *m_main;
    ScrollSheet *m_side;
    QLineEdit *m_field;
    HitList *m_hits;
    RunLabel *m_line;
    KeyButton *m_start;
    HitList *m_jobs = nullptr;
    std::vector<RunLabel *> m_more; // facts that give way where the window is low
};

} // namespace app
