// How a session takes each message: what it would be as an event, whether it fits what is shown, and the gate's word.
#include "core/gate/inside.h"
#include "core/reading/understand.h"
#include "core/session/cursor.h"
#include "core/session/proving.h"
#include "core/session/session.h"

#include <algorithm>

namespace core {
namespace {

using Maybe = std::optional<Denial>;

Denial misreadDenial(const Misread &m)
{
    return {std::string(word(m.code)), m.text, m.suggestions};
}

// Temperatures that must come with a reading: each understood and inside its limits.
Expected<std::map<std::string, Amount>, Denial> withFigures(const Facts &facts, const Test &test, const Command &command)
{
    std::map<std::string, Amount> figures;
    for (const auto &[id, typed] : command.with) {
        const auto understood = understand(typed, Measure::Temperature, facts.machine.meter);
        if (!understood || understood->reading.what != Reading::What::Value)
            return unexpected(Denial{"with_missing", "The temperature `" + typed + "` cannot be understood.", {}});
        figures[id] = understood->reading.amount;
    }
    for (const Condition &condition : test.with) {
        if (!figures.contains(condition.id)) {
            if (condition.limits || !facts.machine.ambient || condition.id != "part_temperature")
                return unexpected(Denial{"with_missing", "This reading needs the " + condition.id + " with it.", {}});
            figures[condition.id] = *facts.machine.ambient;
        }
        const double value = figures[condition.id].value;
        if (condition.limits && (value < condition.limits->lo || value > condition.limits->hi))
            return unexpected(
                Denial{"with_outside", "At " + shown(figures[condition.id]) + " this reading says nothing of the part.", {}});
    }
    return figures;
}

std::string outcomeOf(const Facts &after, const std::string &test)
{
    if (isOfProof(after, test)) {
        const auto due = dueInProof(after);
        const bool lastBad = due && due->test == test && std::ranges::any_of(after.proving->read, [&](const Measured &m) {
                                 return m.test == test && m.placement == due->placement;
                             });
        return readsGoodNow(after, test) ? "good" : lastBad ? "failed" : "part";
    }
    const TestState state = testState(after, test);
    if (!state.done)
        return "part";
    return state.name == ReadingName::Good || state.name == ReadingName::Tone ? "good" : "failed";
}

bool isWayOut(std::string_view way)
{
    constexpr std::string_view kOut[] = {"decline", "never", "cannot_reach_plug", "can_reach_plug", "not_in_sight"};
    return std::ranges::find(kOut, way) != std::end(kOut);
}

bool isOption(const Presentation &p, const Facts &facts, const std::string &value)
{
    const auto among = [&](const std::vector<std::string> &answers) {
        return std::ranges::find(answers, value) != answers.end();
    };
    if (p.wanted.what == Wanted::What::Ask)
        return among(facts.machine.appliance->asked(p.wanted.id)->answers);
    if (p.wanted.what == Wanted::What::Run)
        return std::ranges::find(kProofAnswers, value) != std::end(kProofAnswers);
    if (p.wanted.what == Wanted::What::Step)
        return among(facts.machine.tree->step(p.wanted.id)->answers());
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, p.wanted.id);
    return found.test != nullptr && found.test->byEye() && among(found.test->answers);
}

} // namespace

Maybe Session::takeSafetyReading(const Command &command, Instant at)
{
    const Measure measure =
        m_presentation.screening.dc || m_presentation.screening.screen == Screen::S10 ? Measure::VoltageDc : Measure::VoltageAc;
    const auto understood = understand(command.value, measure, m_facts.machine.meter);
    if (!understood)
        return misreadDenial(understood.error());
    Event e = event(Event::What::Read, at, command);
    e.step = std::string(word(m_presentation.screening.screen));
    e.value = command.value;
    e.reading = understood->reading;
    return offer(std::move(e));
}

Maybe Session::takeReading(const Command &command, Instant at)
{
    const bool inserted = m_presentation.screening.what == Screening::What::Insert;
    const Screen screen = m_presentation.screening.screen;
    if (inserted && command.test.empty() && !command.reported && (screen == Screen::S3 || screen == Screen::S10))
        return takeSafetyReading(command, at);
    const std::string id = command.test.empty() ? m_presentation.wanted.id : command.test;
    const Library::Found found = m_facts.machine.library->test(*m_facts.machine.appliance, id);
    if (found.test == nullptr)
        return Denial{command.test.empty() ? "not_now" : "unknown_test", "No reading is asked for here.", {}};
    if (found.test->byEye()) {
        Command answer = command;
        answer.what = Command::What::Answer;
        return takeAnswer(answer, at);
    }
    const auto understood = understand(command.value, found.test->measure, m_facts.machine.meter);
    if (!understood)
        return misreadDenial(understood.error());
    Event e = event(Event::What::Read, at, command);
    e.test = id;
    e.value = command.value;
    e.reading = understood->reading;
    e.reported = command.reported;
    e.wireLeftOn = command.wireLeftOn;
    if (command.reported)
        return offer(std::move(e));
    const auto figures = withFigures(m_facts, *found.test, command);
    if (!figures)
        return figures.error();
    e.reading->with = *figures;
    if (e.reading->what == Reading::What::StaysClosed) { // it opens above this, or not at all
        const auto reached = e.reading->with.find("reached_temperature");
        if (reached == e.reading->with.end())
            return Denial{"with_missing", "How warm did it get? Give the temperature that was reached.", {}};
        e.reading->amount = reached->second;
    }
    const bool own = id == m_presentation.wanted.id;
    const std::size_t count = std::max<std::size_t>(1, found.test->placements.size());
    const std::size_t placement = command.placement ? *command.placement - 1
                                  : own             ? m_presentation.wanted.placement
                                                    : testState(m_facts, id).nextPlacement.value_or(0);
    if (placement >= count)
        return Denial{"bad_message", "That test has no such placement.", {}};
    if (own && !inserted && found.test->waitS > 0 &&
        static_cast<double>(at.steadyMs - m_shownAt.steadyMs) < found.test->waitS * 1000)
        return Denial{"wait", "The waiting time is not over yet.", {}};
    e.placement = static_cast<int>(placement);
    e.step = isOfProof(m_facts, id) ? std::string(kProofStep) : own ? m_presentation.wanted.step : std::string();
    e.reseated = command.reseated || (own && placement == m_presentation.wanted.placement && m_presentation.wanted.reseat);
    Wanted wanted = own ? m_presentation.wanted : Wanted{};
    if (!own) {
        wanted.what = Wanted::What::Test;
        wanted.id = id;
    }
    wanted.placement = placement;
    e.request = requestFor(m_facts, wanted, m_process, *m_content.phrases);
    std::vector<Event> after = m_events;
    after.push_back(e);
    const Facts then = factsFrom(effective(after), *m_content.library, abilities());
    e.outcome = outcomeOf(then, id);
    if (e.outcome == "failed" || isEnergized(found.test->measure))
        e.veto = vetoOf(m_facts, id, *e.reading, placement);
    if (isOfProof(m_facts, id)) { // it read bad and is read again: something was done in between
        if (const auto refusal = mayAnswer(m_gate, gateEventOf(e).value(), at))
            return denialOf(*refusal);
        tellRepaired(id, at, command);
    }
    return offer(std::move(e));
}

Maybe Session::takeAnswer(const Command &command, Instant at)
{
    Event e = event(Event::What::Answered, at, command);
    e.value = command.value;
    const bool inserted = m_presentation.screening.what == Screening::What::Insert;
    if (inserted && m_presentation.screening.screen == Screen::S0) {
        if (command.value != "alarm" && command.value != "open" && command.value != "closed")
            return Denial{"not_an_answer", "The answers are: alarm, open, closed.", {"alarm", "open", "closed"}};
        e.step = "S0";
        return offer(std::move(e));
    }
    if (!isOption(m_presentation, m_facts, command.value))
        return Denial{"not_an_answer", "That is none of the answers.", {}};
    const Wanted &wanted = m_presentation.wanted;
    if (!command.test.empty() && command.test != wanted.id)
        return Denial{"not_now", "That is not asked now.", {}};
    e.step = wanted.what == Wanted::What::Test ? wanted.step : wanted.id;
    if (wanted.what == Wanted::What::Test)
        e.test = wanted.id;
    e.request = m_presentation.request;
    e.outcome = "good";
    e.veto = vetoOfAnswer(m_facts.machine, wanted.id, command.value);
    if (wanted.what == Wanted::What::Run && command.value == "same")
        e.boxes = replacedBy(m_deduction);
    return offer(std::move(e));
}

// The verdict page carries S8: it is logged as shown, then confirmed.
Maybe Session::takePutBack(const Command &command, Instant at)
{
    const Screening list = inserted(Screen::S8, m_gate, verdictRequest(), at);
    if (!isUp(m_gate, list, verdictRequest())) {
        Event shown = event(Event::What::Shown, at, command);
        shown.step = std::string(word(Screen::S8));
        shown.request = verdictRequest();
        append(std::move(shown));
    }
    Event e = event(Event::What::PutBack, at, command);
    e.boxes = command.boxes.value_or(std::vector<std::string>{});
    if (!command.boxes)
        for (const Box &box : list.boxes)
            e.boxes.push_back(box.id);
    return offer(std::move(e));
}

Maybe Session::takeConfirm(const Command &command, Instant at)
{
    const Screening &screening = m_presentation.screening;
    const bool inserted = screening.what == Screening::What::Insert;
    if (m_presentation.end && !inserted)
        return takePutBack(command, at);
    if (!inserted)
        return Denial{"not_now", "Nothing is to be confirmed here.", {}};
    const bool hold = isHold(screening.screen) || (screening.screen == Screen::S3 && screening.phase == "hold");
    const bool acknowledge = command.what == Command::What::Acknowledge;
    if (hold != acknowledge && (hold || screening.screen != Screen::S7))
        return screening.screen == Screen::S3
                   ? Denial{"reading_needed", "A tick proves nothing here: type what the meter shows.", {}}
                   : Denial{"not_now", hold ? "A hold point is acknowledged." : "This is confirmed, not acknowledged.", {}};
    if (!command.way.empty() && std::ranges::find(screening.ways, command.way) == screening.ways.end())
        return Denial{"bad_message", "This screen has no such way on.", screening.ways};
    if (isWayOut(command.way)) {
        Command out = command;
        out.what = command.way == "decline" || command.way == "never" ? Command::What::Decline : Command::What::Detour;
        out.never = command.way == "never";
        return takeDecline(out, at);
    }
    if (!command.step.empty() && command.step != m_presentation.request.step && command.step != word(screening.screen))
        return Denial{"other_step", "The hold point on the screen is for another step.", {}};
    Event e = event(hold ? Event::What::Acknowledged : Event::What::Confirmed, at, command);
    e.step = std::string(word(screening.screen));
    e.test = m_presentation.request.test;
    e.request = m_presentation.request;
    e.value = command.way == "confirm" || command.way == "acknowledge" ? std::string() : command.way;
    if (screening.screen == Screen::S9 && e.value.empty()) // a plain yes says no more than the least of the ways
        e.value = screening.ways.front();
    e.boxes = command.boxes.value_or(std::vector<std::string>{});
    if (!command.boxes)
        for (const Box &box : screening.boxes)
            e.boxes.push_back(box.id);
    return offer(std::move(e));
}

Maybe Session::takeDecline(const Command &command, Instant at)
{
    const Screening &screening = m_presentation.screening;
    if (screening.what != Screening::What::Insert)
        return Denial{"not_now", "Nothing is to be declined here; a step can be skipped.", {}};
    const bool detour = command.what == Command::What::Detour;
    Event e = event(detour ? Event::What::Detour : Event::What::Declined, at, command);
    e.step = std::string(word(screening.screen));
    if (detour) {
        if (std::ranges::find(screening.ways, command.way) == screening.ways.end())
            return Denial{"bad_message", "This screen has no such way on.", screening.ways};
        e.value = command.way;
        return offer(std::move(e));
    }
    e.never = command.never;
    if (screening.screen != Screen::S1 && screening.screen != Screen::S2 && screening.screen != Screen::S3)
        e.test = m_presentation.wanted.id; // the step this screen stood before is left undone
    return offer(std::move(e));
}

Maybe Session::takeStop(const Command &command, Instant at)
{
    const std::string &why = command.why.empty() ? command.value : command.why;
    if (why == "mistake")
        return offer(event(Event::What::Mistake, at, command));
    const bool notGas = why == "not_gas" || (m_gate.power == Power::Stopped && why != "gas" && why != "co");
    std::string kind = why == "not_gas" ? "alarm" : why;
    if (!alarmNamed(kind)) // danger of a sort nobody knows: the worst case
        kind = notGas ? "alarm" : "gas";
    Event e = event(notGas ? Event::What::NotGas : Event::What::Stopped, at, command);
    e.value = kind;
    return offer(std::move(e));
}

} // namespace core
