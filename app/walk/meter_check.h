#pragma once
// Does the meter tell the truth today? Probes apart, probes together, a small battery, and where red is plugged in.
#include "app/walk/page.h"

class QBoxLayout;
class QVBoxLayout;

namespace app {

class CheckPicture;
class ReadingEntry;
class ScrollSheet;
class SaySentence;

class MeterCheck : public Page
{
    Q_OBJECT
public:
    explicit MeterCheck(const core::Meter &meter, QWidget *parent = nullptr);

    // The meter as described, with what its probes read together. While red is in A the page is not left with a yes.
    [[nodiscard]] core::Meter meter() const;

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &denial) override;

Q_SIGNALS:
    void checked();

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    struct Station
    {
        QWidget *box = nullptr;
        QVBoxLayout *column = nullptr;
        CheckPicture *picture = nullptr;
        RunLabel *line = nullptr;
    };
    Station station(int number, const QString &title, int scene);
    ReadingEntry *entry(const Station &station, core::Measure measure, const QString &hint, const QString &name);
    void addRed(const Station &station);
    void addWords();
    void judge();

    core::Meter m_was;
    ScrollSheet *m_sheet;
    SaySentence *m_head;
    QBoxLayout *m_row;
    std::vector<Station> m_stations;
    ReadingEntry *m_apart, *m_together, *m_battery;
    KeyButton *m_right, *m_wrong; // where red is
    KeyButton *m_done;
};

} // namespace app
