#pragma once
// Pieces that several pages share: the caption over the sentence, the buttons of a narrow window, a titled column.
#include "app/shared/run_label.h"
#include "app/walk/page.h"

#include <QCoreApplication>

#include <vector>

namespace app {

struct PageWords
{
    Q_DECLARE_TR_FUNCTIONS(app::PageWords)
public:
    // "Test 8 · Element, end to end · about 3 minutes · plug out"
    static QString caption(const core::StateView &view, const core::Session &session);
    static int stepNumber(const core::StateView &view); // of the step that is asked now
};

// Chain F6 and Way so far F7, for where they do not stand beside the step; hidden at first.
std::vector<KeyButton *> moreButtons(Page *page);
void showMore(const std::vector<KeyButton *> &buttons, Page::Room room);

RunLabel *headingLabel(const QString &text, QWidget *parent = nullptr);
RunLabel *textLabel(const QString &text, Type type = Type::Text, Role role = Role::Ink, QWidget *parent = nullptr);
QWidget *noteBox(Runs runs, QWidget *parent = nullptr); // an inset with an ink bar at its left
QWidget *ruleLine(QWidget *parent = nullptr);

} // namespace app
