#pragma once
// The whole ladder: every rung of this machine beside the others, with what is known of every part.
#include "app/walk/page.h"

namespace app {

class ChainView;
class ScrollSheet;

class LadderPage : public Page
{
    Q_OBJECT
public:
    explicit LadderPage(const JobController &job, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &) override {}

Q_SIGNALS:
    void wantsWhyOf(const std::string &component);

private:
    ScrollSheet *m_sheet;
    std::vector<ChainView *> m_rungs;
    KeyButton *m_back;
};

} // namespace app
