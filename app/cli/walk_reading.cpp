// Readings in the terminal: what is understood is said before it is taken, what it means after.
#include "app/cli/as_typed.h"
#include "app/cli/meaning.h"
#include "app/cli/walk.h"
#include "core/reading/understand.h"

namespace app {

using core::Command;
using core::Measure;

namespace {

Measure measureOf(const core::Session &session, const core::StepView &step)
{
    if (step.screen.empty())
        return step.picture.measure;
    const core::Screening &screening = session.presentation().screening;
    return screening.dc || step.screen == "S10" ? Measure::VoltageDc : Measure::VoltageAc;
}

} // namespace

// The text that is to be taken, once what it means is clear. nullopt: nothing is taken.
std::optional<std::string> Walk::understood(std::string value, Measure measure)
{
    for (;;) {
        const auto reading = core::understand(value, measure, m_session.facts().machine.meter);
        if (!reading) {
            m_terminal.say("Not taken: " + reading.error().text);
            for (const std::string &suggestion : reading.error().suggestions)
                m_terminal.say("   did you mean " + suggestion + "?");
            return std::nullopt;
        }
        if (isAsTyped(value, reading->shownAs))
            return value;
        const auto again = typed(reading->shownAs + ". Enter takes it, or type it again: ");
        if (!again || again->empty())
            return again ? std::optional(value) : std::nullopt;
        if (takeWord(core::viewOf(m_session), *again))
            return std::nullopt;
        value = *again;
    }
}

// Temperatures a reading needs are asked for one by one.
bool Walk::askFigures(const View &view, Command &command)
{
    for (const core::Demanded &d : view.step.with) {
        const bool onlyIfClosed = d.id == "reached_temperature";
        const auto reading = core::understand(command.value, view.step.picture.measure, m_session.facts().machine.meter);
        if (onlyIfClosed && reading &&
            (reading->reading.what != core::Reading::What::StaysClosed || reading->reading.amount.unit != core::Unit::None))
            continue;
        const auto line = typed(d.text + " ");
        const auto figure = line && !line->empty() ? understood(*line, Measure::Temperature) : line;
        if (!figure)
            return false;
        if (!figure->empty())
            command.with[d.id] = *figure;
    }
    return true;
}

void Walk::takeReading(const View &view, const std::string &line)
{
    const core::StepView asked = view.step;
    const auto value = understood(line, measureOf(m_session, asked));
    if (!value)
        return;
    Command c;
    c.what = Command::What::Reading;
    c.value = *value;
    if (asked.screen.empty() && !askFigures(view, c))
        return;
    if (tell(c))
        sayMeaning(asked);
}

void Walk::sayMeaning(const core::StepView &asked)
{
    const std::vector<core::Event> &events = m_session.events();
    for (auto e = events.rbegin(); e != events.rend(); ++e) {
        if (e->what != core::Event::What::Read || !e->reading)
            continue;
        if (asked.screen.empty())
            m_terminal.say("=> " + meaningOf(asked, *e->reading, core::viewOf(m_session), m_session));
        else
            m_terminal.say("=> " + core::saidBack(*e->reading) + " taken.");
        return;
    }
}

} // namespace app
