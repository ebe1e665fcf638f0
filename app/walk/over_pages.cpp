#include "app/walk/over_pages.h"

#include "app/draw/drawing.h"
#include "app/draw/test_picture.h"
#include "app/walk/choice_button.h"
#include "app/walk/fact_row.h"
#include "app/walk/page_parts.h"
#include "app/walk/picture_state.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"
#include "core/session/names.h"

#include <QCoreApplication>

namespace app {
namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("app::OverPages", text);
}

core::Command command(core::Command::What what, const std::string &why = {})
{
    core::Command out;
    out.what = what;
    out.why = why;
    return out;
}

QString titleOf(const core::StateView &view)
{
    return qs(view.step.title.empty() ? view.step.text : view.step.title);
}

const core::Kind *kindOf(const JobController &job)
{
    const core::Machine &machine = job.session().facts().machine;
    return machine.library->kindOf(*machine.appliance, job.view().step.picture.component);
}

QString whereWords(const JobController &job)
{
    const core::StepView &step = job.view().step;
    QStringList words;
    if (!step.placeSay.empty())
        words << qs(step.placeSay) + QLatin1Char('.');
    if (const core::Kind *kind = kindOf(job))
        words << qs(kind->does);
    return words.isEmpty() ? tr("Nothing is opened for this step.") : words.join(QLatin1Char(' '));
}

// The component of the step alone, where there is a drawing of it.
std::optional<TestPictureState> lookOf(const JobController &job)
{
    const core::Machine &machine = job.session().facts().machine;
    const std::string &component = job.view().step.picture.component;
    TestPictureState state;
    state.form = TestPictureState::Form::Look;
    state.meter.shown = false;
    state.drawing = drawingOfPart(machine, component);
    state.part = lowerFirst(qs(core::nameOf(machine, component)));
    return component.empty() || !drawingExists(state.drawing) ? std::nullopt : std::optional(std::move(state));
}

// Wires and covers as the log last knew them: to be looked over, not to be trusted.
QStringList lookOver(const JobController &job)
{
    QStringList known;
    const core::GateState &gate = job.session().gate();
    for (const std::string &place : gate.inside.opened)
        known << tr("was open: %1").arg(lowerFirst(qs(core::coverName(job.session().facts().machine, place))));
    QStringList wires;
    for (const std::string &wire : gate.inside.pulled)
        wires << qs(core::wireName(job.session().facts().machine, wire));
    if (!wires.isEmpty())
        known << tr("wires pulled, at least: %1").arg(wires.join(QStringLiteral("; ")));
    if (gate.inside.clips != core::Clips::None)
        known << tr("meter: it may still be on the machine");
    return known;
}

} // namespace

ChoicePage *cannotPage(const JobController &job, QWidget *parent)
{
    const core::StateView &view = job.view();
    auto *page = new ChoicePage(
        PageWords::caption(view, job.session()) + QStringLiteral(" · ") + tr("I cannot"), tr("What is in the way?"),
        tr("%1 Any of these is a good answer; each leads on.").arg(titleOf(view) + QLatin1Char('.')), parent);
    const auto skip = [page](const char *why) {
        return [page, why] { Q_EMIT page->said(command(core::Command::What::Skip, why)); };
    };
    ChoiceButton *where = page->add(tr("Where is it?"), whereWords(job), "where", [page] { Q_EMIT page->wantsWhere(); });
    if (auto look = lookOf(job))
        where->setPicture(std::move(*look));
    page->add(tr("I cannot reach it"),
              tr("The machine cannot be moved, a panel will not come off, a tab is hidden. Then: the next test that can answer, "
                 "or “not proven” with what is left."),
              "reach", skip("cannot reach it"));
    page->add(tr("It looks different here"),
              tr("More tabs, another shape, another place. The drawing is as assumed; the sheet in the cabinet stands above it. "
                 "This test is left out."),
              "different", skip("it looks different here"));
    page->add(tr("I am not sure"),
              tr("Of the place, of the dial, of what it shows. The step comes once more, with help. Nothing is counted against "
                 "anyone."),
              "unsure", [page] { Q_EMIT page->wantsHelp(); });
    page->addQuiet(tr("Enough for today"), "park", [page] { Q_EMIT page->said(command(core::Command::What::Park)); });
    page->setBack(tr("Back to the step"));
    return page;
}

ChoicePage *wherePage(const JobController &job, QWidget *parent)
{
    auto *page = new ChoicePage(titleOf(job.view()), tr("Where is it?"), whereWords(job), parent);
    if (auto look = lookOf(job)) {
        look->captions.push_back({look->part, {}});
        auto *picture = new TestPicture;
        picture->setState(std::move(*look));
        yieldHeight(picture, 240);
        page->sheet()->body()->insertWidget(3, picture, 1);
    }
    page->setBack(tr("Back to the step"));
    return page;
}

ChoicePage *outcomePage(const JobController &job, QWidget *parent)
{
    auto *page = new ChoicePage(
        tr("Say how it went"), tr("How did it go?"),
        tr("After it was put together and run. Silence is not success: what you say here is kept with the job."), parent);
    for (const QString &value : OutcomeWords::values()) {
        core::Command told = command(core::Command::What::Outcome);
        told.value = utf8(value);
        page->add(OutcomeWords::said(value), {}, value.toLatin1().constData(), [page, told] { Q_EMIT page->said(told); });
    }
    (void)job;
    return page;
}

ChoicePage *resumePage(const JobController &job, QWidget *parent)
{
    const auto &events = job.session().events();
    const std::int64_t last = events.size() > 1 ? events[events.size() - 2].at.wallMs : job.session().at().wallMs;
    const QString name = job.jobName().isEmpty() ? tr("This job") : tr("Job %1").arg(job.jobName());
    auto *page =
        new ChoicePage(tr("%1 · last entry %2").arg(name, Words::day(last)), tr("Welcome back. First: how is the machine now?"),
                       tr("Every answer and reading is here. What was not taken yet is lost."), parent);
    page->sheet()->body()->insertWidget(
        3, noteBox({{tr("The power counts as unknown. "), Type::SafetyStrong},
                    {tr("Somebody may have put the plug back. So it comes first, as if it were new."), Type::Safety}}));
    const QStringList known = lookOver(job);
    if (!known.isEmpty()) {
        Runs runs{{tr("What the log knows, to be looked over"), Type::Title}};
        for (const QString &line : known)
            runs.push_back({QStringLiteral("\n–  ") + line, Type::Text});
        runs.push_back(
            {QLatin1Char('\n') + tr("Before power ever returns in this job, every wire is looked over by eye, not only these."),
             Type::Text, Role::Ink2});
        page->sheet()->body()->insertWidget(4, new RunLabel(std::move(runs)));
    }
    page->add(tr("Nobody touched it"), tr("The plug or the breaker comes next, with empty boxes."), "untouched",
              [page] { Q_EMIT page->closed(); });
    page->add(tr("Somebody may have"), tr("The same, and every wire is looked over."), "touched",
              [page] { Q_EMIT page->closed(); });
    page->add(tr("I am not at the machine"), tr("The job stays parked."), "away", [page] { Q_EMIT page->wantsStart(); });
    page->setMost(3);
    page->setBack(tr("Leave it parked"));
    page->setObjectName(QStringLiteral("resume"));
    return page;
}

} // namespace app
