#pragma once
// The meter by its looks: what stands round its dial, the mark beside its jacks, what its probes read together; and
// whether readings with power on may be offered in the next job.
#include "app/walk/page.h"

class QBoxLayout;

namespace app {

class ReadingEntry;
class ScrollSheet;
class TestPicture;
class TickBox;

class MeterPage : public Page
{
    Q_OBJECT
public:
    MeterPage(const core::Meter &meter, bool energized, const QString &forWhat, QWidget *parent = nullptr);

    [[nodiscard]] core::Meter meter() const;
    [[nodiscard]] bool energized() const;

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &denial) override;

Q_SIGNALS:
    void described();  // the person is done
    void wantsNone();  // there is no meter yet
    void wantsCheck(); // of the meter as it is described now

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addFunctions();
    void addRange();
    void addMark();
    void addProbes();
    void addPower();
    void addSide();
    KeyButton *choice(QLayout *row, const QString &words, bool checked, const char *name);
    void refresh();

    core::Meter m_was;
    QBoxLayout *m_columns;
    ScrollSheet *m_main;
    ScrollSheet *m_side;
    std::vector<std::pair<core::Measure, TickBox *>> m_functions;
    KeyButton *m_auto = nullptr;
    std::vector<std::pair<std::string, KeyButton *>> m_marks;
    ReadingEntry *m_probes = nullptr;
    TickBox *m_power = nullptr;
    RunLabel *m_powerLine = nullptr;
    TestPicture *m_picture = nullptr;
    RunLabel *m_can = nullptr;
    KeyButton *m_done = nullptr;
};

} // namespace app
