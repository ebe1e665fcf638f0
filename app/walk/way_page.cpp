#include "app/walk/way_page.h"

#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QKeyEvent>

namespace app {

WayPage::WayPage(const JobController &job, QWidget *parent) : Page(parent), m_sheet(new ScrollSheet)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(new SaySentence(tr("The way so far")));
    m_sheet->body()->addWidget(textLabel(tr("Press a step to change what was said or read. What was done at the machine stays done."), Type::Text, Role::Ink2));
    for (const core::WayView &way : job.view().way) {
        const QString title = qs(way.title), said = qs(way.said);
        const QString words = said.isEmpty() ? title : tr("%1: %2").arg(title, said);
        if (!way.amendable) {
            m_sheet->body()->addWidget(new RunLabel({{Words::time(way.wallMs) + QStringLiteral("   "), Type::Quiet, Role::Ink2}, {words, Type::Text, Role::Ink2}}));
            continue;
        }
        auto *button = new KeyButton(words, Words::time(way.wallMs));
        button->setObjectName(QStringLiteral("way:%1").arg(way.event));
        button->setSpread(true);
        connect(button, &QPushButton::clicked, this, [this, event = way.event] { Q_EMIT wantsAmend(event); });
        m_sheet->body()->addWidget(button);
    }
    m_sheet->body()->addStretch(1);
    m_back = new KeyButton(tr("Back to the step"), QStringLiteral("Esc"));
    m_back->setObjectName(QStringLiteral("back"));
    connect(m_back, &QPushButton::clicked, this, &Page::closed);
    m_sheet->dock()->addWidget(m_back, 0, Qt::AlignLeft);
}

QWidget *WayPage::firstFocus()
{
    return m_back;
}

QString WayPage::help() const
{
    return tr("Every step of this job in order. Tab walks it, Enter opens one to be changed; what would fall away is shown before anything changes.");
}

bool WayPage::key(QKeyEvent *event)
{
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

} // namespace app
