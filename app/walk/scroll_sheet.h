#pragma once
// A sheet whose middle scrolls when it must, with what is typed and pressed docked below it, in sight as long as there is
// room for both.
#include "app/shared/sheet.h"

#include <QVBoxLayout>

class QScrollArea;

namespace app {

class ScrollSheet : public Sheet
{
    Q_OBJECT
public:
    explicit ScrollSheet(QWidget *parent = nullptr);

    [[nodiscard]] QVBoxLayout *head() const { return m_head; } // above what scrolls
    [[nodiscard]] QVBoxLayout *body() const { return m_body; }
    [[nodiscard]] QVBoxLayout *dock() const { return m_dock; }
    void scrollBy(int pages); // Page Up and Page Down, wherever the focus is
    void bringIntoSight(QWidget *widget);
    void keepShare(int percent) { m_leastShare = percent; } // of the height, for what scrolls; else the dock scrolls too

protected:
    bool event(QEvent *event) override;

private:
    void dress();
    void placeDock();

    QScrollArea *m_area;
    QVBoxLayout *m_all;
    QVBoxLayout *m_head;
    QVBoxLayout *m_body;
    QWidget *m_dockBox;
    QVBoxLayout *m_dock;
    bool m_docked = true;
    int m_leastShare = 0;
};

// Takes the height that is left and none of its own: pictures give way first.
void yieldHeight(QWidget *picture, int leastAt100);

} // namespace app
