#pragma once
// The way so far as a list: every step with its answer or reading; what may be changed is a button.
#include "app/walk/page.h"

namespace app {

class ScrollSheet;

class WayPage : public Page
{
    Q_OBJECT
public:
    explicit WayPage(const JobController &job, QWidget *parent = nullptr);

    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &) override {}

Q_SIGNALS:
    void wantsAmend(int event);

private:
    ScrollSheet *m_sheet;
    KeyButton *m_back;
};

} // namespace app
