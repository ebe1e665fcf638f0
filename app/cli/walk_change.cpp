// Words that change a walk: undo, amend, choose, cannot, skip, and what belongs to the job.
#include "app/cli/walk.h"
#include "core/base/text.h"
#include "core/session/names.h"

#include <algorithm>
#include <fmt/format.h>

namespace app {

using core::Command;

namespace {

std::string stubText(const core::WayView &stub)
{
    return stub.title + (stub.said.empty() ? "" : ": " + stub.said);
}

// The answers an entry could have been given instead; empty: it is a reading.
std::vector<std::string> answersOf(const core::Session &session, const core::WayView &stub)
{
    const core::Machine &machine = session.facts().machine;
    if (const core::Ask *ask = machine.appliance->asked(stub.id))
        return ask->answers;
    if (const core::Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(stub.id);
        step != nullptr && step->what != core::Step::What::Test)
        return step->answers();
    const core::Library::Found found = machine.library->test(*machine.appliance, stub.id);
    return found.test != nullptr && found.test->byEye() ? found.test->answers : std::vector<std::string>{};
}

// What the last undo took back, where it left no stub on the way.
std::string undoneText(const core::Session &session)
{
    const std::vector<core::Event> &events = session.events();
    const auto undo =
        std::find_if(events.rbegin(), events.rend(), [](const core::Event &e) { return e.what == core::Event::What::Undone; });
    if (undo == events.rend())
        return {};
    const auto target = std::ranges::find(events, undo->target, &core::Event::number);
    if (target == events.end() || target->what != core::Event::What::Sheet)
        return "the choice of another test";
    return "the plate, " + target->value;
}

struct Choice
{
    std::string id, title;
};

// What can be chosen: what still tells something first, then every other test of the machine.
std::vector<Choice> choicesOf(const core::Session &session)
{
    std::vector<Choice> choices;
    const auto add = [&](const std::string &id) {
        if (std::ranges::find(choices, id, &Choice::id) == choices.end())
            choices.push_back({id, core::titleOf(session.facts().machine, id)});
    };
    for (const core::Offer &offer : core::offersOf(session, true))
        add(offer.test);
    const core::Machine &machine = session.facts().machine;
    for (const core::Component &c : machine.appliance->components)
        if (const core::Kind *kind = machine.library->kindOf(*machine.appliance, c.id);
            kind != nullptr && core::isOn(machine, c.id))
            for (const core::Test &test : kind->tests)
                add(c.id + "." + test.id);
    for (const core::Test &loop : machine.appliance->loops)
        if (core::isOn(machine, loop.id))
            add(loop.id);
    return choices;
}

} // namespace

void Walk::undo(const View &view)
{
    if (!tell(Command::What::Undo))
        return;
    const View now = core::viewOf(m_session);
    const auto kept = [&](const core::WayView &stub) {
        return std::ranges::any_of(now.way,
                                   [&](const core::WayView &left) { return left.event == stub.event && left.said == stub.said; });
    };
    std::string gone;
    for (const core::WayView &stub : view.way)
        if (!stub.safety && !kept(stub))
            gone += (gone.empty() ? "" : "; ") + stubText(stub);
    m_terminal.say("Taken back: " + (gone.empty() ? undoneText(m_session) : gone) + ".");
    m_shown = 0;
}

void Walk::amend(const View &view, const std::string &rest)
{
    std::vector<core::WayView> stubs;
    std::ranges::copy_if(view.way, std::back_inserter(stubs), &core::WayView::amendable);
    if (stubs.empty()) {
        m_terminal.say("Nothing can be changed yet.");
        return;
    }
    for (std::size_t n = 0; n < stubs.size() && rest.empty(); ++n)
        m_terminal.say(fmt::format("  {}. {}", n + 1, stubText(stubs[n])));
    const auto n = rest.empty() ? numbered("which was wrong? number: ", stubs.size()) : numberIn(rest, stubs.size());
    if (!n) {
        if (!rest.empty())
            m_terminal.say("`amend` alone lists what can be changed, with its numbers.");
        return;
    }
    const core::WayView &stub = stubs[*n];
    const std::vector<std::string> answers = answersOf(m_session, stub);
    std::optional<std::string> value;
    for (std::size_t a = 0; a < answers.size(); ++a)
        m_terminal.say(fmt::format("  {}. {}", a + 1, answers[a]));
    if (answers.empty()) {
        const core::Library::Found found = m_session.facts().machine.library->test(*m_session.facts().machine.appliance, stub.id);
        const auto line = typed("what did it really read? ");
        value = line && !line->empty() && found.test != nullptr ? understood(*line, found.test->measure) : std::nullopt;
    } else if (const auto a = numbered("what was it really? number: ", answers.size())) {
        value = answers[*a];
    }
    if (!value)
        return;
    const auto preview = m_session.previewAmend(stub.event, *value);
    if (!preview) {
        m_terminal.say("Not taken: " + preview.error().text);
        return;
    }
    m_terminal.say(preview->fallsAway.empty() ? "Nothing falls away."
                                              : "This would no longer count: " + core::joined(preview->fallsAway, "; ") + ".");
    m_terminal.say("Then comes: " + preview->next + ".");
    const auto sure = typed("yes changes it, anything else leaves it as it was: ");
    Command c;
    c.what = Command::What::Amend;
    c.event = stub.event;
    c.value = *value;
    if (sure && core::lowered(*sure) == "yes")
        tell(c);
    else if (sure)
        m_terminal.say("Left as it was.");
}

void Walk::choose(const View &view, const std::string &name)
{
    std::vector<Choice> choices = choicesOf(m_session);
    if (name.empty()) {
        choices.clear();
        for (const core::Offer &offer : core::offersOf(m_session, true))
            choices.push_back({offer.test, fmt::format("{} ({:.0f} min, {})", offer.title, offer.minutes, offer.why)});
    } else if (const auto exact = std::ranges::find(choices, name, &Choice::id); exact != choices.end()) {
        choices = {*exact};
    } else {
        std::erase_if(choices, [&](const Choice &c) {
            return core::lowered(c.title).find(name) == std::string::npos && c.id.find(name) == std::string::npos;
        });
    }
    (void)view;
    if (choices.empty()) {
        m_terminal.say(name.empty() ? "No test is left that could change anything." : "No test of this machine is called so.");
        return;
    }
    for (std::size_t n = 0; n < choices.size() && (name.empty() || choices.size() > 1); ++n)
        m_terminal.say(fmt::format("  {}. {}", n + 1, choices[n].title));
    const auto n =
        !name.empty() && choices.size() == 1 ? std::optional<std::size_t>(0) : numbered("which? number: ", choices.size());
    if (!n)
        return;
    Command c;
    c.what = Command::What::Choose;
    c.test = choices[*n].id;
    if (tell(c))
        m_terminal.say("Chosen: " + core::titleOf(m_session.facts().machine, c.test) + ".");
}

void Walk::cannot(const View &view, const std::string &rest)
{
    const core::StepView &step = view.step;
    if (rest.find("plug") != std::string::npos && takeDetour(view, "cannot_reach_plug"))
        return;
    if (!step.screen.empty()) {
        m_terminal.say("Which of these is it? Type its number; `no` leaves it.");
        m_shown = 0;
        return;
    }
    if (step.kind == core::StepView::Kind::Verdict) {
        m_terminal.say("Nothing is asked here.");
        return;
    }
    m_terminal.say("What is in the way? Any of these is a good answer; each leads on.\n"
                   "  1. Where is it?\n"
                   "  2. I cannot reach it: the machine cannot be moved, a panel will not come off, a tab is hidden\n"
                   "  3. It looks different here: more tabs, another shape, another place\n"
                   "  4. I am not sure: of the place, of the dial, of what it shows\n"
                   "  5. Enough for today");
    const auto n = numbered("number: ", 5);
    const core::Library::Found found = m_session.facts().machine.library->test(*m_session.facts().machine.appliance, step.test);
    if (n == 0 || n == 3) {
        m_terminal.say(step.placeSay.empty() ? "Nothing is opened for this step." : step.placeSay + ".");
        if (found.kind != nullptr && !found.kind->does.empty())
            m_terminal.say(found.kind->does);
    }
    if (n == 3)
        m_terminal.say("First the meter: the two probes together read 0.1 to 0.6 ohm, apart OL. If not: its battery, its leads, "
                       "the dial on \u03a9.\n"
                       "Then the step once more. Nothing is counted against anyone; `cannot` 2 leaves it out.");
    if (n == 1 || n == 2)
        skip(view, *n == 1 ? "cannot reach it" : "it looks different here");
    if (n == 4)
        park();
}

void Walk::skip(const View &, const std::string &why)
{
    Command c;
    c.what = Command::What::Skip;
    c.why = why;
    if (tell(c))
        m_terminal.say("Left out. It is offered again at the end.");
}

void Walk::notInSight(const View &view)
{
    if (takeDetour(view, "not_in_sight"))
        return;
    if (tell(Command::What::Park)) // whoever plugs it in meanwhile is not seen: nothing is known to be dead
        m_terminal.say("Then nobody knows whether it is off: it counts as unknown from now on.");
    m_shown = 0;
}

void Walk::park()
{
    const View view = core::viewOf(m_session);
    const bool closed = view.stopped || view.verdict.has_value();
    if (!closed && !core::isDead(view.power))
        m_terminal.say("It may be on. Switch it off and pull the plug before you leave it.");
    if (!closed)
        tell(Command::What::Park);
    for (const core::Named &wire : view.wiresPulled)
        m_terminal.say("  still off: " + wire.text);
    for (const core::Named &cover : view.coversOpen)
        m_terminal.say("  still open: " + cover.text);
    if (!closed && !m_goOnWith.empty())
        m_terminal.say("Parked. To go on: " + m_goOnWith);
    m_over = true;
}

} // namespace app
