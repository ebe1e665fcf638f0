#pragma once
// One job, from complaint to outcome: the log, and the rules for what may be added to it. The screen asks, the session
// decides; everything shown is computed from the events.
#include "core/base/expected.h"
#include "core/gate/texts.h"
#include "core/session/command.h"
#include "core/session/deduction.h"
#include "core/session/safety.h"

#include <functional>

namespace core {

struct Content // outlives every session on it
{
    const Library *library = nullptr;
    const Phrases *phrases = nullptr;
    const SafetyTexts *safety = nullptr;
};

// What is on the display: a wanted step, or what the gate puts before it.
struct Presentation
{
    Wanted wanted;
    StepRequest request;
    Screening screening;
    bool end = false; // the verdict page
};

Denial denialOf(const Refusal &refusal);

class Session
{
public:
    // Commits an event before the screen moves on. False: the disk did not take it; the walk goes on, and says so.
    using Keep = std::function<bool(const Event &)>;

    static Expected<Session, Denial> begin(const Content &content, Snapshot snapshot, std::string process, Instant now, Keep keep);
    // A job from its events, with power unknown: what it last did is not known to hold. At least the first event.
    static Expected<Session, Denial> resume(const Content &content, std::vector<Event> events, std::string process, Instant now, Keep keep);

    // A job as it stands, to be read only: nothing is added to it.
    static Expected<Session, Denial> asItWas(const Content &content, std::vector<Event> events);

    // Takes the command or says why not; then nothing has changed.
    std::optional<Denial> handle(const Command &command, Instant now);
    // Time has passed: what lapses, lapses.
    void tick(Instant now);
    // What would fall away if this were amended: readings and answers that would no longer count, as titles; and the step
    // that would come next.
    struct AmendPreview
    {
        std::vector<std::string> stays, fallsAway;
        std::string next;
    };
    Expected<AmendPreview, Denial> previewAmend(int event, const std::string &value) const;

    const Content &content() const { return m_content; }
    const Snapshot &start() const { return *m_events.front().snapshot; }
    const std::vector<Event> &events() const { return m_events; }
    const Facts &facts() const { return m_facts; }
    const Deduction &deduction() const { return m_deduction; }
    const GateState &gate() const { return m_gate; }
    const Presentation &presentation() const { return m_presentation; }
    bool saved() const { return m_saved; }
    // What the ruling and what was found on the way amount to.
    Verdict verdict() const;
    Instant at() const { return m_events.back().at; }
    Abilities abilities() const { return abilitiesOf(m_gate); }

private:
    Session(const Content &content, std::string process, Keep keep);

    using Maybe = std::optional<Denial>;
    Maybe takeReading(const Command &command, Instant at);
    Maybe takeSafetyReading(const Command &command, Instant at);
    Maybe takeAnswer(const Command &command, Instant at);
    Maybe takePutBack(const Command &command, Instant at);
    Maybe takeConfirm(const Command &command, Instant at);
    Maybe takeDecline(const Command &command, Instant at);
    Maybe takeStop(const Command &command, Instant at);
    Maybe takeAmend(const Command &command, Instant at);
    Maybe takeOther(const Command &command, Instant at);
    void tellRepaired(const std::string &test, Instant at, const Command &command);
    Maybe takeProve(const Command &command, Instant at);
    Maybe takeEnergized(const Command &command, Instant at);
    Expected<Event, Denial> amended(int event, const std::string &value) const;

    Event event(Event::What what, Instant at, const Command &command) const;
    Maybe offer(Event event); // asks the gate, then keeps it
    void append(Event event);
    void recompute();
    void advance(Instant at);
    Presentation present(Instant at) const;
    Wanted frameTestOf(const Screening &screening) const;

    Content m_content;
    std::string m_process;
    Keep m_keep;
    std::vector<Event> m_events;
    Facts m_facts;
    Deduction m_deduction;
    GateState m_gate;
    Presentation m_presentation;
    Instant m_shownAt; // since when the present step is on the display
    bool m_saved = true;
};

} // namespace core
