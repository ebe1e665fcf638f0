#include "app/walk/walk_view.h"

#include "app/draw/stop_button.h"
#include "app/draw/tape_view.h"
#include "app/walk/amend_page.h"
#include "app/walk/chain_page.h"
#include "app/walk/chain_panel.h"
#include "app/walk/chain_state.h"
#include "app/walk/ladder_page.h"
#include "app/walk/meter_profile.h"
#include "app/walk/over_pages.h"
#include "app/walk/page_for.h"
#include "app/walk/reading_page.h"
#include "app/walk/sheet_page.h"
#include "app/walk/start_page.h"
#include "app/walk/stop_page.h"
#include "app/walk/text_page.h"
#include "app/walk/verdict_page.h"
#include "app/walk/way_page.h"
#include "app/walk/why_page.h"
#include "app/walk/words.h"

#include <QApplication>
#include <QKeyEvent>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace app {

WalkView::WalkView(const ContentFiles &content, const std::filesystem::path &jobs, QWidget *parent, JobController::Clock clock)
    : QWidget(parent), m_content(content), m_job(content, jobs, nullptr, std::move(clock)), m_frame(new Frame)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_frame);
    connect(&m_job, &JobController::changed, this, [this] {
        if (!m_saying) // a lapse; what a page says refreshes by itself
            refresh();
    });
    connect(&m_job, &JobController::diskFaultChanged, this, [this] { m_frame->setFault(m_job.diskFault()); });
    connect(m_frame->stop(), &StopButton::stopped, this, [this](StopWord why) {
        stop(why == StopWord::Gas     ? "gas"
             : why == StopWord::Smoke ? "smoke"
             : why == StopWord::Shock ? "shock"
             : why == StopWord::Water ? "water"
                                      : "");
    });
    connect(m_frame->chain(), &ChainPanel::wantsWhy, this, &WalkView::showWhy);
    connect(m_frame->tape(), &TapeView::stubActivated, this, &WalkView::showAmend);
    start();
}

void WalkView::start(const QString &say)
{
    m_job.leave();
    m_landed.reset();
    m_over = false;
    m_atStart = true;
    auto *page = new StartPage(m_content, m_job.folder(), m_energized);
    connect(page, &StartPage::begins, this, &WalkView::begin);
    connect(page, &StartPage::goesOn, this, [this](const QString &file) { open(file.toStdString()); });
    connect(page, &StartPage::wantsMeter, this, [this] { showMeter(); });
    connect(page, &StartPage::wantsFaults, this, [this] { showOver(faultsPage(m_content)); });
    if (!say.isEmpty())
        page->say(say);
    m_frame->showNoJob(tr("Meter First"));
    place(page);
}

void WalkView::begin(const QString &tree)
{
    if (tree.isEmpty())
        return;
    if (loadMeter())
        startJob(tree);
    else
        showMeter(tree);
}

void WalkView::startJob(const QString &tree)
{
    core::Snapshot snapshot;
    snapshot.tree = utf8(tree);
    snapshot.meter = loadMeter().value_or(core::Meter{});
    snapshot.energized = m_energized;
    m_saying = true;
    const auto failed = m_job.begin(std::move(snapshot));
    m_saying = false;
    if (failed) {
        start(*failed);
        return;
    }
    m_energized = false;
    m_atStart = false;
    refresh();
}

void WalkView::open(const std::filesystem::path &file)
{
    m_saying = true;
    const auto failed = m_job.open(file);
    m_saying = false;
    if (failed) {
        start(*failed);
        return;
    }
    m_atStart = false;
    m_landed.reset();
    refresh();
    const bool mayBeOn = m_job.view().step.screen == "S9" || m_job.view().stopped;
    if (!mayBeOn)
        showOver(resumePage(m_job));
}

void WalkView::refresh()
{
    if (!m_job.hasJob())
        return;
    m_over = false;
    m_frame->showJob(m_job);
    place(pageFor(m_job, m_landed));
}

void WalkView::place(Page *page)
{
    connectPage(page);
    if (auto *reading = qobject_cast<ReadingPage *>(page))
        reading->setChain(chainOf(m_job.view(), m_job.session()));
    m_frame->show(page);
    m_frame->orderTabs(m_after);
    Q_EMIT fillsWindow(page->fillsWindow());
    page->firstFocus()->setFocus(Qt::OtherFocusReason);
    // a page that is put in while the old one's key is still being handled is shown only after it: then the focus was lost
    QTimer::singleShot(0, page, [page] {
        if (QApplication::focusWidget() == nullptr)
            page->firstFocus()->setFocus(Qt::OtherFocusReason);
    });
    Q_EMIT pageChanged();
}

void WalkView::connectPage(Page *page)
{
    connect(page, &Page::said, this, &WalkView::say, Qt::QueuedConnection);
    connect(page, &Page::closed, this, &WalkView::back, Qt::QueuedConnection);
    connect(
        page, &Page::wantsStart, this, [this] { start(); }, Qt::QueuedConnection);
    connect(page, &Page::wantsCannot, this, &WalkView::showCannot, Qt::QueuedConnection);
    connect(page, &Page::wantsChainPage, this, &WalkView::showChain, Qt::QueuedConnection);
    connect(page, &Page::wantsWayPage, this, &WalkView::showWay, Qt::QueuedConnection);
    connect(page, &Page::wantsHelp, this, &WalkView::showHelp, Qt::QueuedConnection);
    connect(page, &Page::wantsPrint, this, &WalkView::wantsPrint);
    connect(
        page, &Page::wantsWhere, this, [this] { showOver(wherePage(m_job)); }, Qt::QueuedConnection);
    if (auto *reading = qobject_cast<ReadingPage *>(page))
        connect(
            reading, &ReadingPage::wantsSheet, this, [this] { showOver(new SheetPage(m_job)); }, Qt::QueuedConnection);
    if (auto *reading = qobject_cast<ReadingPage *>(page))
        connect(
            reading, &ReadingPage::goesOn, this,
            [this] {
                m_landed.reset();
                refresh();
            },
            Qt::QueuedConnection);
    if (auto *way = qobject_cast<WayPage *>(page))
        connect(way, &WayPage::wantsAmend, this, &WalkView::showAmend, Qt::QueuedConnection);
    if (auto *chain = qobject_cast<ChainPage *>(page))
        connect(chain->panel(), &ChainPanel::wantsWhy, this, &WalkView::showWhy, Qt::QueuedConnection);
    if (auto *ladder = qobject_cast<LadderPage *>(page))
        connect(ladder, &LadderPage::wantsWhyOf, this, &WalkView::showWhy, Qt::QueuedConnection);
    connectVerdict(page);
}

void WalkView::connectVerdict(Page *page)
{
    auto *verdict = qobject_cast<VerdictPage *>(page);
    if (verdict == nullptr)
        return;
    verdict->setChain(chainOf(m_job.view(), m_job.session()));
    connect(verdict, &VerdictPage::wantsCopy, this, &WalkView::wantsCopy);
    connect(verdict, &VerdictPage::wantsPdf, this, &WalkView::wantsPdf);
    connect(verdict, &VerdictPage::wantsOutcome, this, &WalkView::showOutcome, Qt::QueuedConnection);
}

void WalkView::say(const core::Command &command)
{
    if (!m_job.hasJob())
        return;
    const core::StepView step = m_job.view().step;
    const std::size_t before = m_job.session().events().size();
    m_saying = true;
    const auto denial = m_job.handle(command);
    m_saying = false;
    if (denial) {
        if (m_job.session().events().size() != before)
            refresh();
        if (page() != nullptr)
            page()->showDenial(*denial);
        return;
    }
    m_landed.reset();
    if (command.what == core::Command::What::Park) {
        start(tr("Parked. Put it together first if it is open; the power counts as unknown."));
        return;
    }
    if (command.what == core::Command::What::Stop && command.why == "mistake") {
        start(tr("Pressed by mistake: that job is closed. A new one can be started."));
        return;
    }
    if (command.what == core::Command::What::Reading && step.kind == core::StepView::Kind::Test)
        landReading(step, command);
    refresh();
}

// A dead reading stays on the display with what it means; under voltage the next screen is never held up.
void WalkView::landReading(const core::StepView &step, const core::Command &command)
{
    if (core::isEnergized(step.picture.measure) || core::isOn(m_job.view().power) || m_job.view().stopped)
        return;
    const auto &events = m_job.session().events();
    const auto read = std::find_if(events.rbegin(), events.rend(),
                                   [](const core::Event &event) { return event.what == core::Event::What::Read; });
    if (read != events.rend() && read->reading)
        m_landed = Landed{step, *read->reading, qs(command.value)};
}

void WalkView::stop(const std::string &why)
{
    if (!m_job.hasJob()) {
        m_over = true;
        place(new StopPage(m_content));
        return;
    }
    core::Command command;
    command.what = core::Command::What::Stop;
    command.why = why.empty() ? "gas" : why;
    say(command);
}

void WalkView::undo()
{
    core::Command command;
    command.what = core::Command::What::Undo;
    say(command);
}

void WalkView::prove()
{
    core::Command command;
    command.what = core::Command::What::Prove;
    say(command);
}

void WalkView::showOver(Page *page)
{
    m_over = true;
    place(page);
}

// From a page over the step back to what was there: the step, a landed reading, or the start.
void WalkView::back()
{
    if (m_job.hasJob())
        refresh();
    else
        start();
}

void WalkView::showWhy(const std::string &component)
{
    if (m_job.hasJob() && !m_job.view().stopped)
        showOver(new WhyPage(m_job, component));
}

void WalkView::showChain()
{
    if (m_job.hasJob() && !m_job.view().stopped)
        showOver(new ChainPage(m_job));
}

void WalkView::showLadder()
{
    if (m_job.hasJob() && !m_job.view().stopped)
        showOver(new LadderPage(m_job));
}

void WalkView::showWay()
{
    if (m_job.hasJob() && !m_job.view().stopped)
        showOver(new WayPage(m_job));
}

void WalkView::showAmend(int event)
{
    if (!m_job.hasJob())
        return;
    const auto &way = m_job.view().way;
    const auto at = std::ranges::find(way, event, &core::WayView::event);
    if (at != way.end() && at->amendable)
        showOver(new AmendPage(m_job, *at));
}

void WalkView::showCannot()
{
    if (m_job.hasJob() && !m_job.view().verdict && m_job.view().step.screen.empty())
        showOver(cannotPage(m_job));
}

void WalkView::showOutcome()
{
    if (m_job.hasJob() && m_job.view().verdict)
        showOver(outcomePage(m_job));
}

void WalkView::showHelp()
{
    if (page() != nullptr && !page()->help().isEmpty())
        showOver(helpPage(*page()));
}

Record WalkView::record() const
{
    return recordOf(m_job.session(), utf8(m_job.jobName()));
}

void WalkView::setTabsAfter(const QList<QWidget *> &after)
{
    m_after = after;
    m_frame->orderTabs(m_after);
}

void WalkView::keyPressEvent(QKeyEvent *event)
{
    if (page() != nullptr && event->key() == Qt::Key_Escape && !event->isAutoRepeat()) {
        page()->escape();
        return;
    }
    if (page() == nullptr || !page()->key(event))
        QWidget::keyPressEvent(event);
}

} // namespace app
