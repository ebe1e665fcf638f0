#pragma once
// One screen of a job. It is made from a state and replaced by the next one; it says commands and decides nothing.
#include "app/walk/job_controller.h"
#include "core/session/command.h"

#include <QWidget>

class QKeyEvent;

namespace app {

class KeyButton;
class RunLabel;

class Page : public QWidget
{
    Q_OBJECT
public:
    explicit Page(QWidget *parent = nullptr);

    // What stands round it.
    virtual bool wantsChain() const { return true; }
    virtual bool wantsTape() const { return true; }
    virtual bool fillsWindow() const { return false; } // no menu, no rail: the stop page
    virtual QString holdSentence() const { return {}; } // the orange bar over it; empty: none

    virtual QWidget *firstFocus() = 0;
    virtual QString help() const = 0; // F1
    // Keys that no widget took. True: done.
    virtual bool key(QKeyEvent *event);
    virtual void escape() {}
    // What stands beside it now; what does not is a button of the page.
    struct Room
    {
        bool chain = true, tape = true;
    };
    virtual void setRoom(Room) {}
    // The session's no, as one sentence.
    virtual void showDenial(const core::Denial &denial) = 0;

Q_SIGNALS:
    void said(const core::Command &command);
    void wantsCannot();
    void wantsChainPage();
    void wantsWayPage();
    void wantsStart();
    void wantsWhere();
    void wantsHelp();
    void wantsPrint(); // the record of this job
    void closed(); // a page over another one is done
};

bool isEnter(const QKeyEvent &event);
// 1 to 9, without modifiers but the key pad's; 0: none of them.
int digitOf(const QKeyEvent &event);

} // namespace app
