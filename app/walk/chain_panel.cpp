#include "app/walk/chain_panel.h"

#include "app/draw/chain_view.h"
#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/walk/chain_state.h"
#include "app/walk/page_parts.h"
#include "app/walk/words.h"

#include <QHBoxLayout>

namespace app {

ChainPanel::ChainPanel(QWidget *parent)
    : Sheet(Role::Sheet, parent), m_head(headingLabel(tr("The chain"))), m_claim(textLabel({}, Type::Quiet, Role::Ink2)),
      m_why(new KeyButton(tr("Why?"), QStringLiteral("F4"))), m_chain(new ChainView), m_rule(ruleLine()), m_foot(new RunLabel)
{
    auto *layout = new QVBoxLayout(this);
    auto *head = new QHBoxLayout;
    m_why->setFace(KeyButton::Face::Link);
    m_why->setSize(KeyButton::Size::Row);
    m_why->setObjectName(QStringLiteral("why"));
    head->addWidget(m_head, 1);
    head->addWidget(m_why);
    layout->addLayout(head);
    layout->addWidget(m_claim);
    layout->addWidget(m_chain, 1);
    layout->addWidget(m_rule);
    layout->addWidget(m_foot);
    connect(m_why, &QPushButton::clicked, this, [this] { Q_EMIT wantsWhy({}); });
    connect(m_chain, &ChainView::activated, this, [this](const QString &id) { Q_EMIT wantsWhy(utf8(id)); });
    dress();
    connect(&Theme::current(), &Theme::changed, this, &ChainPanel::dress);
}

void ChainPanel::dress()
{
    const Theme &theme = Theme::current();
    layout()->setContentsMargins(theme.spx(14), theme.spx(10), theme.spx(12), theme.spx(12));
    layout()->setSpacing(theme.spx(3));
}

void ChainPanel::show(const core::StateView &view, const core::Session &session)
{
    ChainState state = chainOf(view, session);
    m_head->setText(state.rungs.empty() ? tr("The machine, by place") : tr("The chain"), Type::Title);
    m_claim->setText(ChainTexts::subtitle(state), Type::Quiet, Role::Ink2);
    m_chain->setState(std::move(state));
    const ChainTexts::Foot foot = ChainTexts::foot(view, session);
    m_rule->setVisible(!foot.head.isEmpty());
    m_foot->setVisible(!foot.head.isEmpty());
    m_foot->setRuns({{foot.head + QLatin1Char('\n'), Type::Title}, {foot.text, Type::Text}});
}

} // namespace app
