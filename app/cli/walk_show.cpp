#include "app/cli/walk_show.h"

#include <cmath>
#include <fmt/format.h>

namespace app {
namespace {

using core::StepView;

void showSafety(Terminal &terminal, const core::Session &session, const StepView &step)
{
    const auto text = session.content().safety->screens.find(step.screen);
    if (text == session.content().safety->screens.end())
        return;
    const std::string word = core::wordOf(text->second, step.conditions);
    if (!word.empty())
        terminal.say("\n*** " + word + " ***");
    for (const core::SafetyLine &line : core::linesOf(text->second, step.conditions, step.params))
        terminal.say("  " + line.text);
    const bool alone =
        step.screen == "S0" || step.screen == "S9" || step.screen == "S12" || step.screen == "S14"; // no second voice
    if (!step.caution.empty() && !alone)
        terminal.say("  from the tree: " + step.caution);
    if (step.waitS > 0)
        terminal.say(fmt::format("  wait: {:.0f} min {:02.0f} s more", std::floor(step.waitS / 60), std::fmod(step.waitS, 60)));
    if (!step.pair.empty())
        terminal.say("  Measure: " + step.pair);
    for (const core::Named &box : step.boxes)
        terminal.say("  [ ] " + box.text);
    std::size_t n = 0;
    for (const core::Named &way : step.ways)
        if (way.id != "reading" && step.answers.empty())
            terminal.say(step.unit.empty() ? fmt::format("  {}. {}", ++n, way.text) : "  no: " + way.text);
}

void showStep(Terminal &terminal, const core::Session &session, const StepView &step)
{
    if (!step.placeSay.empty())
        terminal.say(step.placeSay + ".");
    if (!step.title.empty())
        terminal.say("[" + step.title + "]");
    if (!step.text.empty())
        terminal.say(step.text);
    if (step.reseat)
        terminal.say(session.content().phrases->say("test.reseat"));
    if (step.near)
        terminal.say(session.content().phrases->say("test.near"));
    if (step.good)
        terminal.say("A good one reads " + core::goodInWords(*step.good) + ".");
    if (!step.why.empty())
        terminal.say("(" + step.why + ")");
}

void list(Terminal &terminal, std::string_view title, const std::vector<std::string> &lines)
{
    if (!lines.empty() && !title.empty())
        terminal.say(title);
    for (const std::string &line : lines)
        terminal.say("  - " + line);
}

void showVerdict(Terminal &terminal, const core::StateView &view)
{
    const core::VerdictView &v = *view.verdict;
    terminal.say("\n== " + v.headline + " ==");
    if (!v.sentence.empty())
        terminal.say(v.sentence);
    if (!v.basis.empty())
        terminal.say("Basis: " + v.basis);
    for (const core::ProofLine &p : v.proofs)
        terminal.say(fmt::format("  {} {}: {}{}", p.failed ? "[x]" : "[v]", p.title, p.said,
                                 p.good.empty() ? "" : " (good: " + p.good + ")"));
    list(terminal, {}, v.notes);
    list(terminal, "Also found:", v.alsoFound);
    list(terminal, {}, v.refused);
    list(terminal, "After the repair (type `prove`):", v.prove);
    if (!v.wouldChange.empty())
        terminal.say(v.wouldChange);
    if (!v.putBack.empty())
        terminal.say("Put it together (type `together`):");
    for (const core::Named &item : v.putBack)
        terminal.say("  [ ] " + item.text);
    if (!view.offers.empty())
        terminal.say("Tests that are still open:");
    for (std::size_t n = 0; n < view.offers.size(); ++n)
        terminal.say(
            fmt::format("  {}. {} ({:.0f} min, {})", n + 1, view.offers[n].title, view.offers[n].minutes, view.offers[n].why));
}

} // namespace

void showState(Terminal &terminal, const core::Session &session, const core::StateView &view)
{
    const StepView &step = view.step;
    terminal.say(fmt::format("\n-- power: {}{}", word(view.power),
                             step.minutes > 0 ? fmt::format(" - about {:.0f} min", step.minutes) : ""));
    if (!view.saved)
        terminal.say("!! The last answer could not be kept on the disk. The walk goes on.");
    if (!step.screen.empty())
        showSafety(terminal, session, step);
    else
        showStep(terminal, session, step);
    for (std::size_t n = 0; n < step.answers.size(); ++n)
        terminal.say(fmt::format("  {}. {}", n + 1, step.answers[n].text));
    if (view.verdict)
        showVerdict(terminal, view);
}

std::string aboutOneIn(double probability)
{
    if (probability >= .95)
        return "almost certain, our estimate";
    if (probability >= .85)
        return "about 9 in 10, our estimate";
    if (probability >= .70)
        return "about 3 in 4, our estimate";
    if (probability >= .58)
        return "about 2 in 3, our estimate";
    if (probability < .02)
        return "less than 1 in 50, our estimate";
    return fmt::format("about 1 in {:.0f}, our estimate", 1 / probability);
}

} // namespace app
