#pragma once
// A dead test: where the probes go, what is normal, and the field. After a reading the same places say what it means.
#include "app/walk/landed.h"
#include "app/walk/page.h"

#include <vector>

class QBoxLayout;

namespace app {

class ChainLine;
struct ChainState;
class CurveView;
class NumberLine;
class ReadingEntry;
class SayBlock;
class ScrollSheet;
class TestPicture;

class ReadingPage : public Page
{
    Q_OBJECT
public:
    // `landed`: the reading just taken; the page is closed until the person goes on.
    ReadingPage(const JobController &job, std::optional<Landed> landed, QWidget *parent = nullptr);

    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void setRoom(Room room) override;
    void showDenial(const core::Denial &denial) override;
    void setChain(const ChainState &chain);
    [[nodiscard]] bool isLanded() const { return m_landed.has_value(); }

Q_SIGNALS:
    void wantsSheet(); // to type the value of the sheet in the cabinet
    void goesOn();     // from a landed reading to what the session asks next

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addWords(const JobController &job);
    void addPicture(const JobController &job);
    void addEntry(const JobController &job);
    void addDemands(QBoxLayout *row);
    void addActions(const JobController &job);
    void addOpenActions(QLayout *row);
    void addClosedActions(QLayout *row, const JobController &job);
    KeyButton *action(QLayout *row, const QString &words, const QString &key, const char *name);
    void showReading();
    void giveWay();
    void take();
    void takeWord(const char *word);
    void undo();
    bool letter(QKeyEvent *event);
    std::vector<core::Reading> before() const;

    core::StepView m_step;
    std::optional<Landed> m_landed;
    Room m_room;
    core::Meter m_meter;
    bool m_askedAgain = false;
    bool m_near = false; // asked again because it lies between good and bad
    ScrollSheet *m_sheet;
    SayBlock *m_sentence = nullptr;
    TestPicture *m_picture = nullptr;
    CurveView *m_curve = nullptr;
    QBoxLayout *m_row = nullptr; // entry beside the line, or over it
    QWidget *m_lineSide = nullptr;
    NumberLine *m_line = nullptr;
    RunLabel *m_question = nullptr;
    RunLabel *m_good = nullptr;
    QString m_basis; // of the good values, said beside them where there is room
    RunLabel *m_bad = nullptr; // the line in words where there is no room for it
    ChainLine *m_chainLine = nullptr;
    ReadingEntry *m_entry = nullptr;
    std::vector<std::pair<std::string, ReadingEntry *>> m_demands;
    KeyButton *m_take = nullptr;
    std::vector<KeyButton *> m_more;
    std::vector<KeyButton *> m_actions;
};

} // namespace app
