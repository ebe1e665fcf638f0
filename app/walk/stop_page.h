#pragma once
// Gas or carbon monoxide: the whole window, no menu, no rail. It asks for no operation of anything, this computer included;
// "it was not gas" is the only way out, once.
#include "app/walk/page.h"

namespace app {

class SignalPanel;
struct SignalText;

class StopPage : public Page
{
    Q_OBJECT
public:
    explicit StopPage(const JobController &job, QWidget *parent = nullptr);
    // Without a job: the same text, and a way back.
    explicit StopPage(const ContentFiles &content, QWidget *parent = nullptr);

    bool fillsWindow() const override { return true; }
    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override { return {}; }
    bool key(QKeyEvent *event) override;
    void showDenial(const core::Denial &denial) override;

private:
    void build(const SignalText &text, const QString &note, bool mayLeave, bool hasJob);
    void addWays(QLayout *row, bool hasJob);
    void say(const std::string &why);

    SignalPanel *m_panel = nullptr;
    RunLabel *m_note = nullptr;
    std::vector<std::string> m_ways; // by number
    bool m_hasJob = true;
};

} // namespace app
