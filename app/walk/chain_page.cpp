#include "app/walk/chain_page.h"

#include "app/draw/chain_view.h"
#include "app/shared/key_button.h"
#include "app/walk/chain_panel.h"

#include <QVBoxLayout>

namespace app {

ChainPage::ChainPage(const JobController &job, QWidget *parent) : Page(parent), m_panel(new ChainPanel)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_panel, 1);
    m_panel->show(job.view(), job.session());
    auto *back = new KeyButton(tr("Back to the step"), QStringLiteral("Esc"));
    back->setObjectName(QStringLiteral("back"));
    connect(back, &QPushButton::clicked, this, &Page::closed);
    m_panel->layout()->addWidget(back);
}

QWidget *ChainPage::firstFocus()
{
    return m_panel->chain();
}

QString ChainPage::help() const
{
    return tr("The wiring of this complaint from rail to rail, with what is known of every part. Arrow keys walk it, Enter says why a part stands where it stands.");
}

} // namespace app
