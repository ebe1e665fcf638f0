// Messages that steer a job rather than answer it: choose, skip, undo, amend, park, outcome, plate values.
#include "core/base/text.h"
#include "core/reading/understand.h"
#include "core/session/cursor.h"
#include "core/session/names.h"
#include "core/session/proving.h"
#include "core/session/session.h"

#include <algorithm>

namespace core {
namespace {

using Maybe = std::optional<Denial>;

// "240 V 5400 W", or a value in ohm: what is printed on a plate or sheet.
std::optional<Amount> plateOhm(std::string_view typed)
{
    double volts = 0, watts = 0;
    std::vector<std::string_view> words;
    for (const std::string_view w : split(trimmed(typed), ' '))
        if (!w.empty())
            words.push_back(w);
    for (std::size_t i = 0; i + 1 < words.size(); i += 2) {
        const auto number = numberIn(words[i]);
        const auto unit = unitNamed(words[i + 1]);
        if (!number || !unit || *number <= 0)
            return std::nullopt;
        if (unit->unit == Unit::Volt)
            volts = *number * unit->factor;
        else if (unit->unit == Unit::Watt)
            watts = *number * unit->factor;
        else if (unit->unit == Unit::Ohm && words.size() == 2)
            return Amount{*number * unit->factor, Unit::Ohm};
    }
    if (words.size() != 4 || volts <= 0 || watts <= 0)
        return std::nullopt;
    return Amount{volts * volts / watts, Unit::Ohm};
}

bool isKnown(const Facts &facts, const std::string &id)
{
    const Step *step = facts.machine.tree == nullptr ? nullptr : facts.machine.tree->step(id);
    return facts.machine.library->test(*facts.machine.appliance, id).test != nullptr ||
           (step != nullptr && step->what != Step::What::Test);
}

Maybe notPossible(const Facts &facts, const Abilities &abilities, const std::string &id)
{
    const Step *step = facts.machine.tree == nullptr ? nullptr : facts.machine.tree->step(id);
    const bool can = step != nullptr && step->what != Step::What::Test
                         ? canDoStep(facts, abilities, *step)
                         : canDo(facts, abilities, facts.machine.library->test(*facts.machine.appliance, id));
    if (can)
        return std::nullopt;
    return Denial{"not_possible", "With this meter, on this machine and in this job that test cannot be done.", {}};
}

std::vector<std::string> answersTo(const Machine &machine, const Event &answered)
{
    if (answered.step == kProofStep)
        return {std::begin(kProofAnswers), std::end(kProofAnswers)};
    if (!answered.test.empty()) {
        const Library::Found found = machine.library->test(*machine.appliance, answered.test);
        return found.test == nullptr ? std::vector<std::string>() : found.test->answers;
    }
    if (const Ask *ask = machine.appliance->asked(answered.step))
        return ask->answers;
    const Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(answered.step);
    return step == nullptr ? std::vector<std::string>() : step->answers();
}

std::vector<std::string> titles(const Facts &facts)
{
    std::vector<std::string> known;
    for (const Measured &m : facts.measured)
        known.push_back(titleOf(facts.machine, m.test));
    for (const Looked &l : facts.looked)
        known.push_back(titleOf(facts.machine, l.id));
    for (const WayStop &w : facts.cursor.way)
        if (std::ranges::find(known, titleOf(facts.machine, w.step)) == known.end() && !w.result.empty())
            known.push_back(titleOf(facts.machine, w.step));
    return known;
}

} // namespace

Maybe Session::takeOther(const Command &command, Instant at)
{
    const std::string shown = m_presentation.wanted.id;
    switch (command.what) {
    case Command::What::Choose: {
        if (!isKnown(m_facts, command.test))
            return Denial{"unknown_test", "There is no such test on this machine.", {}};
        if (const auto denial = notPossible(m_facts, abilities(), command.test))
            return denial;
        Event e = event(Event::What::Chosen, at, command);
        e.test = command.test;
        return offer(std::move(e));
    }
    case Command::What::Skip: {
        if (m_presentation.end || m_presentation.wanted.what == Wanted::What::Ask)
            return Denial{"not_now", "This cannot be skipped.", {}};
        Event e = event(Event::What::Skipped, at, command);
        (m_presentation.wanted.what == Wanted::What::Test ? e.test : e.step) = command.test.empty() ? shown : command.test;
        e.value = command.why.empty() ? "skipped" : command.why;
        return offer(std::move(e));
    }
    case Command::What::Undo: {
        Event e = event(Event::What::Undone, at, command);
        e.target = lastUndoable(m_events);
        if (e.target == 0)
            return Denial{"nothing_to_undo", "There is nothing to take back.", {}};
        return offer(std::move(e));
    }
    case Command::What::Park:
        return offer(event(Event::What::Left, at, command));
    case Command::What::Outcome: {
        Event e = event(Event::What::Outcome, at, command);
        e.value = command.value;
        if (command.value == "not_fixed")
            e.boxes = replacedBy(m_deduction);
        return offer(std::move(e));
    }
    case Command::What::Sheet: {
        const auto ohm = plateOhm(command.value);
        const std::string component = componentOf(command.test);
        if (m_facts.machine.appliance->component(component) == nullptr)
            return Denial{"unknown_test", "There is no such part on this machine.", {}};
        if (!ohm)
            return Denial{"not_understood", "A plate value is written like 240 V 5400 W.", {"240 V 5400 W"}};
        Event e = event(Event::What::Sheet, at, command);
        e.step = command.test;
        e.value = command.value;
        Reading reading;
        reading.amount = *ohm;
        e.reading = reading;
        return offer(std::move(e));
    }
    case Command::What::MeterChanged: {
        Event e = event(Event::What::MeterChanged, at, command);
        e.meter = command.meter;
        return offer(std::move(e));
    }
    case Command::What::State:
    case Command::What::Reading:
    case Command::What::Answer:
    case Command::What::Confirm:
    case Command::What::Acknowledge:
    case Command::What::Decline:
    case Command::What::Detour:
    case Command::What::Amend:
    case Command::What::Prove:
    case Command::What::Energized:
    case Command::What::Stop:
        break;
    }
    return Denial{"bad_message", "That is not understood.", {}};
}

Expected<Event, Denial> Session::amended(int number, const std::string &value) const
{
    const std::vector<Event> counted = effective(m_events);
    const auto target = std::ranges::find(counted, number, &Event::number);
    if (target == counted.end())
        return unexpected(Denial{"unknown_event", "There is no such entry, or it was taken back.", {}});
    Event e;
    e.what = Event::What::Amended;
    e.target = number;
    e.value = value;
    e.step = target->step;
    e.test = target->test;
    if (target->what == Event::What::Answered && target->step != "S0") {
        const std::vector<std::string> answers = answersTo(m_facts.machine, *target);
        if (std::ranges::find(answers, value) == answers.end())
            return unexpected(Denial{"not_an_answer", "That is none of the answers.", answers});
        e.veto = vetoOfAnswer(m_facts.machine, target->test.empty() ? target->step : target->test, value);
        return e;
    }
    if (target->what != Event::What::Read || target->step == "S10" || target->reported)
        return unexpected(Denial{"cannot_amend", "Only answers and readings can be changed.", {}});
    Measure measure = Measure::VoltageAc;
    if (target->step != "S3") {
        const Library::Found found = m_facts.machine.library->test(*m_facts.machine.appliance, target->test);
        if (found.test == nullptr)
            return unexpected(Denial{"cannot_amend", "That test is not on this machine any more.", {}});
        measure = found.test->measure;
    }
    const auto understood = understand(value, measure, m_facts.machine.meter);
    if (!understood)
        return unexpected(
            Denial{std::string(word(understood.error().code)), understood.error().text, understood.error().suggestions});
    e.reading = understood->reading;
    if (target->reading)
        e.reading->with = target->reading->with;
    if (target->step == "S3")
        e.outcome = e.reading->what == Reading::What::Value && e.reading->amount.value < kDeadAcV ? "good" : "failed";
    else
        e.veto = vetoOf(m_facts, target->test, *e.reading, static_cast<std::size_t>(target->placement));
    return e;
}

Maybe Session::takeAmend(const Command &command, Instant at)
{
    auto e = amended(command.event, command.value);
    if (!e)
        return e.error();
    e->at = at;
    e->who = command.who.empty() ? start().who : command.who;
    return offer(std::move(*e));
}

Expected<Session::AmendPreview, Denial> Session::previewAmend(int number, const std::string &value) const
{
    auto e = amended(number, value);
    if (!e)
        return unexpected(e.error());
    std::vector<Event> events = m_events;
    e->number = events.back().number + 1;
    e->at = events.back().at;
    events.push_back(std::move(*e));
    const Facts after = factsFrom(effective(events), *m_content.library, abilities());
    const Deduction deduced = deduce(after, abilities(), openPlacesOf(m_gate), nullptr, nullptr);
    AmendPreview preview;
    const std::vector<std::string> still = titles(after);
    for (const std::string &title : titles(m_facts))
        (std::ranges::find(still, title) == still.end() ? preview.fallsAway : preview.stays).push_back(title);
    const Wanted then = next(after, deduced);
    preview.next = then.what == Wanted::What::End ? m_content.phrases->say("verdict") : titleOf(m_facts.machine, then.id);
    return preview;
}

} // namespace core
