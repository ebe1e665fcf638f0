#include "app/walk/page_for.h"

#include "app/walk/answer_page.h"
#include "app/walk/live_page.h"
#include "app/walk/prove_page.h"
#include "app/walk/reading_page.h"
#include "app/walk/safety_page.h"
#include "app/walk/stop_page.h"
#include "app/walk/verdict_page.h"

namespace app {

Page *pageFor(const JobController &job, const std::optional<Landed> &landed)
{
    const core::StateView &view = job.view();
    const core::StepView &step = view.step;
    if (step.screen == "S12")
        return new StopPage(job);
    if (landed)
        return new ReadingPage(job, landed);
    if (step.screen == "S0")
        return new AnswerPage(job);
    if (step.kind == core::StepView::Kind::ProveDead && step.phase != "hold")
        return new ProvePage(job);
    if (!step.screen.empty())
        return new SafetyPage(job);
    if (view.verdict)
        return new VerdictPage(job);
    if (step.kind == core::StepView::Kind::Test)
        return core::isEnergized(step.picture.measure) ? static_cast<Page *>(new LivePage(job)) : new ReadingPage(job, std::nullopt);
    return new AnswerPage(job);
}

} // namespace app
