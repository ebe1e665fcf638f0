#include "core/session/session.h"

#include "core/session/cursor.h"

#include <algorithm>

namespace core {
namespace {

// Steps that cannot be shown are passed over one by one; more of them than this means a tree the checker has not seen.
constexpr int kMostPassedOver = 200;

// Plug earth pin to frame, each supply pin to frame; an appliance without them has no frame to check.
std::vector<std::string> frameTestsOf(const Library &library, const Appliance &appliance)
{
    if (appliance.hardWired || library.test(appliance, "ground_path.ohm").test == nullptr ||
        library.test(appliance, "power_cord_terminal.iso").test == nullptr)
        return {};
    std::vector<std::string> tests{"ground_path.ohm", "power_cord_terminal.iso"};
    for (const Test &loop : appliance.loops)
        if (loop.frameCheck)
            tests.push_back(loop.id);
    return tests;
}

std::optional<Denial> notUsable(const Content &content, const std::string &tree)
{
    if (content.library->tree(tree) == nullptr)
        return Denial{"unknown_tree", "There is no tree `" + tree + "`.", {}};
    if (content.library->faulty.contains(tree))
        return Denial{"faulty_tree", "The tree `" + tree + "` has faults; `check` names them.", {}};
    return std::nullopt;
}

} // namespace

Denial denialOf(const Refusal &refusal)
{
    return {std::string(word(refusal.code)), refusal.text, {}};
}

Session::Session(const Content &content, std::string process, Keep keep)
    : m_content(content), m_process(std::move(process)), m_keep(std::move(keep))
{
}

Expected<Session, Denial> Session::begin(const Content &content, Snapshot snapshot, std::string process, Instant now, Keep keep)
{
    if (const auto denial = notUsable(content, snapshot.tree))
        return unexpected(*denial);
    const Tree &tree = *content.library->tree(snapshot.tree);
    const Appliance &appliance = *content.library->appliance(tree.appliance);
    snapshot.appliance = tree.appliance;
    snapshot.hardWired = appliance.hardWired;
    snapshot.frameTests = frameTestsOf(*content.library, appliance);
    snapshot.hashes = content.library->hashes.empty()
                          ? snapshot.hashes
                          : std::map<std::string, std::string>(content.library->hashes.begin(), content.library->hashes.end());
    Session session(content, std::move(process), std::move(keep));
    Event started;
    started.what = Event::What::Started;
    started.at = now;
    started.who = snapshot.who;
    started.value = session.m_process;
    started.snapshot = std::move(snapshot);
    session.append(std::move(started));
    session.advance(now);
    return session;
}

Expected<Session, Denial> Session::resume(const Content &content, std::vector<Event> events, std::string process, Instant now,
                                          Keep keep)
{
    if (events.empty() || events.front().what != Event::What::Started || !events.front().snapshot)
        return unexpected(Denial{"bad_message", "This job has no beginning.", {}});
    if (const auto denial = notUsable(content, events.front().snapshot->tree))
        return unexpected(*denial);
    Session session(content, std::move(process), std::move(keep));
    const std::string key = events.front().snapshot->tree;
    const auto then = events.front().snapshot->hashes.find(key);
    const auto today = content.library->hashes.find(key);
    const bool changed =
        then != events.front().snapshot->hashes.end() && today != content.library->hashes.end() && then->second != today->second;
    session.m_events = std::move(events);
    session.recompute();
    if (changed) {
        Event other;
        other.what = Event::What::Lapsed;
        other.at = now;
        other.value = "content";
        session.append(std::move(other));
    }
    Event resumed;
    resumed.what = Event::What::Resumed;
    resumed.at = now;
    resumed.value = session.m_process;
    session.append(std::move(resumed));
    session.advance(now);
    return session;
}

Expected<Session, Denial> Session::asItWas(const Content &content, std::vector<Event> events)
{
    if (events.empty() || events.front().what != Event::What::Started || !events.front().snapshot)
        return unexpected(Denial{"bad_message", "This job has no beginning.", {}});
    if (const auto denial = notUsable(content, events.front().snapshot->tree))
        return unexpected(*denial);
    Session session(content, {}, {});
    session.m_events = std::move(events);
    session.recompute();
    session.m_presentation = session.present(session.at());
    return session;
}

Event Session::event(Event::What what, Instant at, const Command &command) const
{
    Event e;
    e.what = what;
    e.at = at;
    e.who = command.who.empty() ? start().who : command.who;
    return e;
}

void Session::append(Event event)
{
    event.number = m_events.empty() ? 1 : m_events.back().number + 1;
    m_saved = !m_keep || m_keep(event);
    if (const auto g = gateEventOf(event))
        m_gate = apply(std::move(m_gate), *g, event.at);
    m_events.push_back(std::move(event));
    recompute();
}

Session::Maybe Session::offer(Event event)
{
    if (const auto g = gateEventOf(event))
        if (const auto refusal = mayAnswer(m_gate, *g, event.at))
            return denialOf(*refusal);
    append(std::move(event));
    return std::nullopt;
}

// Which events change what is believed; the gate has its own fold.
void Session::recompute()
{
    if (m_gate.events == 0)
        m_gate = gateFrom(m_events);
    const Facts before = std::move(m_facts);
    const Abilities abilities = abilitiesOf(m_gate);
    m_facts = factsFrom(effective(m_events), *m_content.library, abilities);
    m_deduction = deduce(m_facts, abilities, openPlacesOf(m_gate), &m_deduction, &before);
}

Verdict Session::verdict() const
{
    const bool open = std::ranges::any_of(m_deduction.useful,
                                          [](const Useful &u) { return !u.refused && !u.energized && u.gain >= kWorthOffering; });
    return withHazards(verdictOf(m_deduction.ruling), hazardsOf(m_gate), open);
}

Wanted Session::frameTestOf(const Screening &screening) const
{
    for (const std::string &id : screening.tests)
        if (!testState(m_facts, id).done) {
            Wanted w;
            w.what = Wanted::What::Test;
            w.reason = Wanted::Reason::Need;
            w.id = id;
            const TestState state = testState(m_facts, id);
            w.placement = state.nextPlacement.value_or(0);
            w.reseat = state.begun && state.why == PlacementState::Next::Reseat;
            return w;
        }
    return {};
}

Presentation Session::present(Instant at) const
{
    Presentation p;
    p.wanted = next(m_facts, m_deduction);
    p.end = p.wanted.what == Wanted::What::End;
    p.request = requestFor(m_facts, p.wanted, m_process, *m_content.phrases);
    p.screening = p.end ? endOfWalk(m_gate, p.request, at) : screenFor(m_gate, p.request, at);
    if (p.screening.what != Screening::What::Tests)
        return p;
    p.wanted = frameTestOf(p.screening);
    p.end = p.wanted.what == Wanted::What::End;
    p.request = requestFor(m_facts, p.wanted, m_process, *m_content.phrases);
    p.screening = screenFor(m_gate, p.request, at);
    return p;
}

// Finds what is on the display now, and logs it before it is shown.
void Session::advance(Instant at)
{
    for (int passed = 0; passed < kMostPassedOver; ++passed) {
        const Presentation p = present(at);
        if (p.screening.what == Screening::What::Refuse && !p.end) {
            Event skipped;
            skipped.what = Event::What::Skipped;
            skipped.at = at;
            (p.wanted.what == Wanted::What::Test ? skipped.test : skipped.step) = p.wanted.id;
            skipped.value = p.screening.refusal ? p.screening.refusal->text : "refused";
            append(std::move(skipped));
            continue;
        }
        const bool insert = p.screening.what == Screening::What::Insert;
        const bool logged = insert ? isUp(m_gate, p.screening, p.request) : p.end || isShown(m_gate, p.request);
        if (!(p.wanted == m_presentation.wanted) || !logged)
            m_shownAt = at;
        m_presentation = p;
        if (!logged) {
            Event shown;
            shown.what = Event::What::Shown;
            shown.at = at;
            shown.step = insert ? std::string(word(p.screening.screen)) : p.request.step;
            shown.request = p.request;
            append(std::move(shown));
        }
        return;
    }
}

void Session::tick(Instant now)
{
    if (start().toldClock || !lapsed(m_gate, now))
        return;
    Event e;
    e.what = Event::What::Lapsed;
    e.at = now;
    e.value = "lapsed";
    append(std::move(e));
    advance(now);
}

std::optional<Denial> Session::handle(const Command &command, Instant now)
{
    const Instant at = start().toldClock ? later(m_events.back().at, std::max(command.afterS, 0.)) : now;
    if (lapsed(m_gate, at)) {
        Event e = event(Event::What::Lapsed, at, command);
        e.value = "lapsed";
        append(std::move(e));
        advance(at);
    }
    Maybe denial;
    switch (command.what) {
    case Command::What::State:
        break;
    case Command::What::Reading:
        denial = takeReading(command, at);
        break;
    case Command::What::Answer:
        denial = takeAnswer(command, at);
        break;
    case Command::What::Confirm:
    case Command::What::Acknowledge:
        denial = takeConfirm(command, at);
        break;
    case Command::What::Decline:
    case Command::What::Detour:
        denial = takeDecline(command, at);
        break;
    case Command::What::Stop:
        denial = takeStop(command, at);
        break;
    case Command::What::Amend:
        denial = takeAmend(command, at);
        break;
    case Command::What::Prove:
        denial = takeProve(command, at);
        break;
    case Command::What::Energized:
        denial = takeEnergized(command, at);
        break;
    case Command::What::Choose:
    case Command::What::Skip:
    case Command::What::Undo:
    case Command::What::Park:
    case Command::What::Outcome:
    case Command::What::Sheet:
    case Command::What::MeterChanged:
        denial = takeOther(command, at);
        break;
    }
    if (!denial)
        advance(at);
    return denial;
}

} // namespace core
