#include "app/walk/ladder_page.h"

#include "app/draw/chain_view.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/chain_state.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QKeyEvent>

namespace app {

LadderPage::LadderPage(const JobController &job, QWidget *parent)
    : Page(parent), m_sheet(new ScrollSheet), m_back(new KeyButton(tr("Back to the step"), QStringLiteral("Esc")))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(new SaySentence(tr("The whole ladder")));
    m_sheet->body()->addWidget(
        textLabel(tr("Wiring as assumed for this machine. The sheet in the cabinet stands above it."), Type::Text, Role::Ink2));
    auto *box = new QWidget;
    auto *flow = new FlowLayout(box, Theme::current().spx(20));
    for (ChainState &state : ladderOf(job.view(), job.session())) {
        auto *column = new QWidget;
        auto *rows = new QVBoxLayout(column);
        rows->setContentsMargins(0, 0, 0, 0);
        rows->addWidget(headingLabel(capital(state.rungs.front().title)));
        auto *rung = new ChainView;
        rung->setState(std::move(state));
        rung->setMinimumHeight(rung->sizeHint().height());
        connect(rung, &ChainView::activated, this, [this](const QString &id) { Q_EMIT wantsWhyOf(utf8(id)); });
        rows->addWidget(rung);
        flow->addWidget(column);
        m_rungs.push_back(rung);
    }
    m_sheet->body()->addWidget(box);
    m_sheet->body()->addStretch(1);
    m_back->setObjectName(QStringLiteral("back"));
    connect(m_back, &QPushButton::clicked, this, &Page::closed);
    m_sheet->dock()->addWidget(m_back, 0, Qt::AlignLeft);
}

QWidget *LadderPage::firstFocus()
{
    return m_rungs.empty() ? static_cast<QWidget *>(m_back) : m_rungs.front();
}

QString LadderPage::help() const
{
    return tr(
        "Every rung of this machine, from rail to rail. Tab goes from rung to rung, arrow keys walk one, Enter says why a part "
        "stands where it stands.");
}

bool LadderPage::key(QKeyEvent *event)
{
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

} // namespace app
