#include "app/cli/walk.h"

#include "app/cli/danger_word.h"
#include "app/cli/walk_show.h"
#include "core/base/text.h"

#include <fmt/format.h>

namespace app {

using core::Command;
using core::StepView;

Walk::Walk(core::Session &session, Terminal &terminal, std::string goOnWith, Clock clock)
    : m_session(session), m_terminal(terminal), m_goOnWith(std::move(goOnWith)), m_clock(std::move(clock))
{
}

void Walk::run()
{
    while (!m_over) {
        m_session.tick(m_clock());
        const View view = core::viewOf(m_session);
        if (m_shown != m_session.events().size())
            showState(m_terminal, m_session, view);
        m_shown = m_session.events().size();
        if (const auto line = typed(prompt(view)))
            take(view, *line);
    }
}

std::string Walk::prompt(const View &view) const
{
    const StepView &step = view.step;
    if (!step.screen.empty() && step.answers.empty()) {
        if (!step.unit.empty())
            return "volts shown: ";
        return step.ways.empty() ? "q to leave: " : "number: ";
    }
    if (step.kind == StepView::Kind::Verdict)
        return view.offers.empty() ? "help, q to leave: " : "number of a test, help, q to leave: ";
    return step.answers.empty() ? "reading (help: what else can be said): " : "number (help: what else can be said): ";
}

void Walk::take(const View &view, const std::string &line)
{
    const StepView &step = view.step;
    if (line.empty()) { // shown once more, and what waits has waited
        tell(Command::What::State);
        m_shown = 0;
        return;
    }
    if (takeWord(view, line))
        return;
    if (!step.answers.empty()) {
        if (const auto n = numberIn(line, step.answers.size()))
            tell(Command::What::Answer, step.answers[*n].value);
        else
            m_terminal.say(fmt::format("That is not one of the answers: a number from 1 to {}, or `cannot`, or `help`.",
                                       step.answers.size()));
    } else if (!step.screen.empty()) {
        takeOnScreen(view, line);
    } else if (step.kind == StepView::Kind::Verdict) {
        takeAtVerdict(view, line);
    } else {
        takeReading(view, line);
    }
}

void Walk::takeAtVerdict(const View &view, const std::string &line)
{
    const auto n = numberIn(line, view.offers.size());
    if (!n) {
        m_terminal.say("That is not one of the answers. `help` names what can be said.");
        return;
    }
    Command c;
    c.what = Command::What::Choose;
    c.test = view.offers[*n].test;
    tell(c);
}

std::optional<std::string> Walk::typed(std::string_view prompt)
{
    auto line = m_terminal.ask(prompt);
    if (!line) {
        m_over = true;
        return line;
    }
    const std::string low = core::lowered(*line);
    const bool naming = low.starts_with("choose ") || low.starts_with("why ") || low.starts_with("plate ");
    const auto danger = naming ? std::nullopt : dangerIn(*line);
    if (!danger)
        return line;
    stop(*danger);
    return std::nullopt;
}

std::optional<std::size_t> Walk::numbered(std::string_view prompt, std::size_t count)
{
    const auto line = typed(prompt);
    const auto n = line ? numberIn(*line, count) : std::nullopt;
    if (line && !n)
        m_terminal.say("Left as it was.");
    return n;
}

bool Walk::tell(const Command &command)
{
    const auto denial = m_session.handle(command, m_clock());
    if (!denial)
        return true;
    m_terminal.say("Not taken: " + denial->text);
    for (const std::string &suggestion : denial->suggestions)
        m_terminal.say("   did you mean " + suggestion + "?");
    return false;
}

bool Walk::tell(Command::What what, std::string value)
{
    Command c;
    c.what = what;
    c.value = std::move(value);
    return tell(c);
}

} // namespace app
