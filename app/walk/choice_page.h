#pragma once
// A page over the step with one heading and a few large choices, each a sentence of what follows. Esc goes back.
#include "app/walk/page.h"

#include <functional>
#include <vector>

class QAbstractButton;
class QGridLayout;

namespace app {

class ChoiceButton;
class SaySentence;
class ScrollSheet;

class ChoicePage : public Page
{
    Q_OBJECT
public:
    ChoicePage(const QString &caption, const QString &head, const QString &text, QWidget *parent = nullptr);

    ChoiceButton *add(const QString &head, const QString &text, const char *name, std::function<void()> chosen);
    void addQuiet(const QString &words, const char *name, std::function<void()> chosen); // in the row below
    void setMost(int columns);                                                           // beside each other where there is room
    void setBack(const QString &words);
    [[nodiscard]] ScrollSheet *sheet() const { return m_sheet; }

    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &denial) override;

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void lay();

    ScrollSheet *m_sheet;
    QGridLayout *m_grid;
    QLayout *m_row;
    SaySentence *m_head;
    RunLabel *m_line;
    KeyButton *m_back;
    int m_columns = 0;
    int m_most = 2;
    std::vector<QAbstractButton *> m_choices;
    std::vector<std::function<void()>> m_chosen; // by number
};

} // namespace app
