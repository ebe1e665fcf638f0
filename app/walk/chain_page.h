#pragma once
// The chain alone, for where it does not stand beside the step.
#include "app/walk/page.h"

namespace app {

class ChainPanel;

class ChainPage : public Page
{
    Q_OBJECT
public:
    explicit ChainPage(const JobController &job, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &) override {}
    [[nodiscard]] ChainPanel *panel() const { return m_panel; }

private:
    ChainPanel *m_panel;
};

} // namespace app
