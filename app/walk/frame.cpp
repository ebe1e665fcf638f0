#include "app/walk/frame.h"

#include "app/draw/chain_view.h"
#include "app/draw/hold_bar.h"
#include "app/draw/power_rail.h"
#include "app/draw/stop_button.h"
#include "app/draw/tape_view.h"
#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/walk/chain_panel.h"
#include "app/walk/page_parts.h"
#include "app/walk/rail_state.h"
#include "app/walk/tape_state.h"
#include "app/walk/words.h"

#include <QAccessible>
#include <QGridLayout>
#include <QHBoxLayout>

namespace app {
namespace {

// Below these the rail lies down, and chain and tape are buttons. px, and percent of text.
constexpr int kLyingBelow = 1100, kLyingFrom = 150;
constexpr int kButtonsBelow = 900, kButtonsFrom = 175;
constexpr double kTapeNeeds = 700; // px of height at 100 %
constexpr int kPortrait = 1000;    // px of height: tall enough to keep the chain below the step

} // namespace

Frame::Frame(QWidget *parent)
    : QWidget(parent), m_grid(new QGridLayout(this)), m_railBox(new QWidget(this)), m_railLayout(new QVBoxLayout(m_railBox)), m_rail(new PowerRail), m_stop(new StopButton),
      m_head(new RunLabel), m_saved(new RunLabel), m_fault(new RunLabel), m_hold(new HoldBar), m_bodyBox(new QWidget), m_body(new QHBoxLayout(m_bodyBox)),
      m_chain(new ChainPanel), m_tape(new TapeView)
{
    m_stop->setObjectName(QStringLiteral("stop"));
    m_tape->setObjectName(QStringLiteral("tape"));
    m_saved->setAlignment(Qt::AlignRight);
    m_railLayout->setContentsMargins(0, 0, 0, 0);
    m_railLayout->addWidget(m_rail, 1);
    m_railLayout->addWidget(m_stop);
    m_body->setContentsMargins(0, 0, 0, 0);
    m_body->addWidget(m_chain);
    auto *head = new QHBoxLayout;
    head->addWidget(m_head, 3);
    head->addWidget(m_saved, 2);
    m_grid->addLayout(head, 0, 1);
    m_grid->addWidget(m_fault, 2, 1); // row 1: the lying rail
    m_grid->addWidget(m_hold, 3, 1);
    m_grid->addWidget(m_bodyBox, 4, 1);
    m_grid->addWidget(m_tape, 5, 1);
    m_grid->setRowStretch(4, 1);
    m_grid->setColumnStretch(1, 1);
    m_hold->hide();
    m_fault->hide();
    dress();
    connect(&Theme::current(), &Theme::changed, this, &Frame::dress);
}

void Frame::dress()
{
    const Theme &theme = Theme::current();
    m_grid->setContentsMargins(8, theme.spx(6), 16, 12);
    m_grid->setHorizontalSpacing(8);
    m_grid->setVerticalSpacing(theme.spx(10));
    m_body->setSpacing(12);
    arrange();
}

Page::Room Frame::room() const
{
    const int percent = Theme::current().textPercent();
    const bool tall = height() >= kPortrait * percent / 100;
    const bool buttons = width() < kButtonsBelow || percent >= kButtonsFrom;
    return {!buttons || tall, !buttons && height() >= Theme::current().px(kTapeNeeds) - 60};
}

// Standing at the left over the whole height, or lying as one line over the page.
void Frame::arrangeRail(bool lying, bool bare)
{
    m_railBox->setVisible(!bare);
    if (m_lying == lying)
        return;
    m_lying = lying;
    const Qt::Orientation way = lying ? Qt::Horizontal : Qt::Vertical;
    m_rail->setOrientation(way);
    m_stop->setOrientation(way);
    m_railLayout->setDirection(lying ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_grid->removeWidget(m_railBox);
    if (lying)
        m_grid->addWidget(m_railBox, 1, 1);
    else
        m_grid->addWidget(m_railBox, 0, 0, 6, 1);
}

void Frame::arrange()
{
    const int percent = Theme::current().textPercent();
    const bool bare = m_page && m_page->fillsWindow();
    const bool lying = width() < kLyingBelow || percent >= kLyingFrom;
    const Page::Room room = this->room();
    arrangeRail(lying, bare);
    for (QWidget *widget : {static_cast<QWidget *>(m_head), static_cast<QWidget *>(m_saved)})
        widget->setVisible(!bare && percent < kButtonsFrom);
    const bool below = room.chain && (width() < kButtonsBelow || percent >= kButtonsFrom);
    m_body->setDirection(below ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    const bool chain = m_hasJob && m_page && m_page->wantsChain() && room.chain;
    m_chain->setVisible(chain);
    const int beside = std::min(Theme::current().spx(368), width() / 3 + 20);
    m_chain->setMinimumWidth(below ? 0 : beside);
    m_chain->setMaximumWidth(below ? QWIDGETSIZE_MAX : beside);
    m_tape->setVisible(m_hasJob && m_page && m_page->wantsTape() && room.tape);
    m_grid->setContentsMargins(bare ? 0 : lying ? 16 : 8, bare ? 0 : Theme::current().spx(6), bare ? 0 : 16, bare ? 0 : 12);
    if (m_page)
        m_page->setRoom(m_hasJob ? room : Page::Room{});
}

void Frame::show(Page *page)
{
    if (m_page && m_page != page) {
        m_body->removeWidget(m_page);
        m_page->hide();
        m_page->deleteLater();
    }
    m_page = page;
    m_body->insertWidget(0, page, 1);
    const QString hold = page->holdSentence();
    m_hold->setSentence(hold);
    m_hold->setVisible(!hold.isEmpty());
    arrange();
    page->show();
}

void Frame::showJob(const JobController &job)
{
    const core::StateView &view = job.view();
    m_hasJob = true;
    m_rail->setState(railOf(view, job.session().gate()));
    m_head->setRuns({{qs(view.applianceName) + QStringLiteral("  "), Type::Title}, {qs(view.complaint), Type::Safety}});
    const QString name = job.jobName().isEmpty() ? tr("not kept") : tr("Job %1").arg(job.jobName());
    const QString saved = view.saved && job.diskFault().isEmpty() ? tr("saved %1").arg(Words::time(job.session().at().wallMs)) : tr("not saved");
    m_saved->setText(name + QStringLiteral(" · ") + saved, Type::Quiet, Role::Ink2);
    m_chain->show(view, job.session());
    m_tape->setStubs(tapeOf(view, job.session()));
    arrange();
}

void Frame::showNoJob(const QString &title)
{
    m_hasJob = false;
    m_rail->setState({PowerPlace::Unknown, tr("no job\nopen"), false});
    m_head->setText(title, Type::Title);
    m_saved->setText({}, Type::Quiet);
    arrange();
}

void Frame::setFault(const QString &fault)
{
    m_fault->setRuns({{tr("Not saved: "), Type::Strong}, {fault + QLatin1Char(' ') + tr("The walk goes on; what is not on the disk is lost if the program ends."), Type::Text}});
    m_fault->setAccessibleName(fault.isEmpty() ? QString() : m_fault->text());
    m_fault->setVisible(!fault.isEmpty());
    if (fault.isEmpty())
        return;
    QAccessibleEvent event(m_fault, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void Frame::orderTabs(const QList<QWidget *> &after)
{
    QList<QWidget *> order;
    if (m_page)
        for (QWidget *widget : m_page->findChildren<QWidget *>())
            if (widget->focusPolicy() & Qt::TabFocus)
                order << widget;
    order << m_chain->chain() << m_chain->why() << m_tape << m_stop << after;
    for (qsizetype i = 0; i + 1 < order.size(); ++i)
        QWidget::setTabOrder(order[i], order[i + 1]);
}

void Frame::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    arrange();
}

} // namespace app
