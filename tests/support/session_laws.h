#pragma once
// What must hold of any session after any message, whoever sends it and in whatever order.
#include "core/session/event_text.h"
#include "core/session/session.h"
#include "core/session/view_of.h"

#include <algorithm>
#include <string>

namespace core {

// On the display is a step of the tree or a test, no screen of the gate.
inline bool showsStep(const Session &session)
{
    return !session.presentation().end && session.presentation().screening.what == Screening::What::Show;
}

// No energized step without its own acknowledgement; none inside unless dead; a run only while it runs.
inline std::string brokenPower(const Session &session)
{
    if (!showsStep(session))
        return {};
    const GateState &gate = session.gate();
    const StepRequest &shown = session.presentation().request;
    if (isLive(shown.stepClass) && (gate.power != Power::Energized || !gate.ack || !sameStep(gate.ack->request, shown)))
        return "an energized step without its hold point: " + shown.step;
    if (isDeadWork(shown.stepClass) && !isDead(gate.power))
        return "hands inside and not dead: " + shown.step;
    if (shown.stepClass == StepClass::R && gate.power != Power::Running)
        return "a run that was not held: " + shown.step;
    if ((isLive(shown.stepClass) || shown.stepClass == StepClass::R) && !gate.vetoes.empty())
        return "power after a veto: " + shown.step;
    if (isLive(shown.stepClass) && !session.abilities().energized)
        return "an energized step that was never allowed: " + shown.step;
    return {};
}

// No part without a failed reading or look of its own, or all else found good.
inline std::string brokenVerdict(const Session &session)
{
    if (!session.presentation().end)
        return {};
    const VerdictView verdict = verdictView(session, componentViews(session));
    if (verdict.kind == Verdict::Kind::NotProven && !verdict.parts.empty())
        return "not proven, and a part all the same";
    for (const std::string &part : verdict.parts) {
        const bool read = std::ranges::any_of(session.events(), [&](const Event &e) {
            return (e.what == Event::What::Read || e.what == Event::What::Answered) && !e.reported && componentOf(e.test) == part;
        });
        if (!read && verdict.proof != "elimination" && verdict.proof != "look")
            return "bought and never looked at: " + part;
    }
    return {};
}

// The log says all there is: read back from its lines, it leads to the same state.
inline std::string brokenReplay(const Session &session)
{
    std::vector<Event> read;
    for (const Event &event : session.events()) {
        const auto again = eventFrom(toLine(event));
        if (!again)
            return "an event that cannot be read back: " + again.error();
        read.push_back(*again);
    }
    const auto replayed = Session::asItWas(session.content(), std::move(read));
    if (!replayed)
        return "a log that cannot be replayed: " + replayed.error().text;
    if (!(replayed->gate() == session.gate()))
        return "another gate after a replay";
    if (!(replayed->presentation().wanted == session.presentation().wanted))
        return "another step after a replay: " + replayed->presentation().wanted.id + " for " + session.presentation().wanted.id;
    return {};
}

inline std::string brokenLaw(const Session &session)
{
    if (std::string law = brokenPower(session); !law.empty())
        return law;
    return brokenVerdict(session);
}

} // namespace core
