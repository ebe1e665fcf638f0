// What is taken at the verdict and beside the walk: the proof of a repair, and the person's word on energized tests.
#include "core/session/proving.h"
#include "core/session/session.h"

#include <algorithm>

namespace core {

void Session::tellRepaired(const std::string &test, Instant at, const Command &command)
{
    if (std::ranges::none_of(m_gate.vetoes, [&](const Veto &v) { return v.test == test && !v.repaired; }))
        return;
    Event e = event(Event::What::Repaired, at, command);
    e.test = test;
    append(std::move(e));
}

// A veto stands until the reading that found it was repaired and reads good: it is the first thing asked for.
Session::Maybe Session::takeProve(const Command &command, Instant at)
{
    const Verdict verdict = this->verdict();
    const bool repaired = verdict.kind == Verdict::Kind::Replace || verdict.kind == Verdict::Kind::Fix;
    if (!m_presentation.end || m_presentation.screening.what == Screening::What::Insert || !repaired)
        return Denial{"not_now", "A repair is proven once there is a verdict that asks for one.", {}};
    std::vector<std::string> toRead;
    for (const Veto &veto : m_gate.vetoes) {
        if (veto.test.empty() || m_content.library->test(*m_facts.machine.appliance, veto.test).test == nullptr)
            return Denial{"veto", "What was found on the way forbids power in this job. Have it looked at first.", {}};
        toRead.push_back(veto.test);
    }
    for (const std::string &test : toRead)
        tellRepaired(test, at, command);
    Event e = event(Event::What::Proving, at, command);
    e.boxes = std::move(toRead);
    return offer(std::move(e));
}

Session::Maybe Session::takeEnergized(const Command &command, Instant at)
{
    const bool on = command.value == "on";
    if (!on && command.value != "off")
        return Denial{"bad_message", "Energized tests are turned on or off.", {"on", "off"}};
    if (on && m_gate.refused.never)
        append(event(Event::What::NeverTakenBack, at, command));
    Event e = event(Event::What::Energized, at, command);
    e.value = command.value;
    return offer(std::move(e));
}

} // namespace core
