// The pages of the person's meter: what it can do, its check, and how it goes without one.
#include "app/walk/meter_check.h"
#include "app/walk/meter_page.h"
#include "app/walk/meter_profile.h"
#include "app/walk/no_meter_page.h"
#include "app/walk/walk_view.h"
#include "app/walk/words.h"

namespace app {

void WalkView::showMeter(const QString &tree)
{
    showMeterPage(tree, m_job.hasJob() ? m_job.session().facts().machine.meter : loadMeter().value_or(usualMeter()));
}

void WalkView::showMeterPage(const QString &tree, const core::Meter &meter)
{
    const core::Tree *wanted = m_content.library.tree(utf8(tree));
    const QString what = wanted == nullptr ? QString() : lowerFirst(qs(wanted->complaint));
    auto *page = new MeterPage(meter, m_job.hasJob() ? m_job.session().start().energized : m_energized, what);
    const auto keep = [this, tree, page] {
        if (this->page() == page) // a second press on its way
            keepMeter(tree, page->meter(), page->energized());
    };
    connect(page, &MeterPage::described, this, keep, Qt::QueuedConnection);
    connect(
        page, &MeterPage::wantsNone, this, [this, tree] { showNoMeter(tree); }, Qt::QueuedConnection);
    const auto check = [this, tree, page] {
        if (this->page() != page)
            return;
        m_energized = page->energized();
        showCheck(tree, page->meter());
    };
    connect(page, &MeterPage::wantsCheck, this, check, Qt::QueuedConnection);
    showOver(page);
}

// Back to the meter page with what the check found.
void WalkView::showCheck(const QString &tree, const core::Meter &meter)
{
    auto *page = new MeterCheck(meter);
    const auto back = [this, tree, page] {
        if (this->page() == page)
            showMeterPage(tree, page->meter());
    };
    connect(page, &MeterCheck::checked, this, back, Qt::QueuedConnection);
    showOver(page);
}

void WalkView::showNoMeter(const QString &tree)
{
    auto *page = new NoMeterPage(m_content.library, m_content.library.tree(utf8(tree)));
    const auto without = [this, tree] {
        core::Meter none = loadMeter().value_or(usualMeter());
        none.functions.clear();
        keepMeter(tree, none, false);
    };
    connect(page, &NoMeterPage::goesWithout, this, without, Qt::QueuedConnection);
    showOver(page);
}

void WalkView::keepMeter(const QString &tree, const core::Meter &meter, bool energized)
{
    if (!saveMeter(meter))
        m_frame->setFault(tr("the meter could not be written to the settings."));
    if (m_job.hasJob()) {
        core::Command command;
        command.what = core::Command::What::MeterChanged;
        command.meter = meter;
        say(command);
        return;
    }
    m_energized = energized;
    if (tree.isEmpty())
        start();
    else
        startJob(tree);
}

} // namespace app
