// Safety screens in the terminal: every way of a screen by its number, every box for itself, danger at any moment.
#include "app/cli/walk.h"
#include "core/base/text.h"

#include <algorithm>
#include <array>

namespace app {

using core::Command;
using core::StepView;

namespace {

std::vector<core::Named> waysByNumber(const StepView &step)
{
    std::vector<core::Named> ways = step.ways;
    std::erase_if(ways, [](const core::Named &way) { return way.id == "reading"; });
    return ways;
}

bool offers(const StepView &step, std::string_view way)
{
    return std::ranges::find(step.ways, way, &core::Named::id) != step.ways.end();
}

bool isDetour(std::string_view way)
{
    return way == "cannot_reach_plug" || way == "can_reach_plug" || way == "not_in_sight";
}

} // namespace

void Walk::takeOnScreen(const View &view, const std::string &line)
{
    const StepView &step = view.step;
    const std::vector<core::Named> ways = waysByNumber(step);
    const std::string low = core::lowered(line);
    const bool byWord = low == "yes" || low == "no" || low == "never";
    const auto n = step.unit.empty() ? numberIn(line, ways.size()) : std::nullopt; // beside volts a number is a reading
    if (n)
        takeWay(view, ways[*n].id);
    else if (low == "yes" && offers(step, "confirm"))
        takeWay(view, "confirm");
    else if (low == "yes" && offers(step, "acknowledge"))
        takeWay(view, "acknowledge");
    else if (low == "no" && offers(step, "decline"))
        takeWay(view, "decline");
    else if (low == "never" && offers(step, "never"))
        takeWay(view, "never");
    else if (!step.unit.empty() && !byWord)
        takeReading(view, line);
    else
        m_terminal.say(ways.empty() ? "Nothing is asked here. q leaves." : "Which of them? Type its number.");
}

void Walk::takeWay(const View &view, const std::string &way)
{
    Command c;
    if (way == "not_gas")
        return wasNotGas();
    if (way == "mistake") {
        c.what = Command::What::Stop;
        c.why = way;
        if (tell(c)) {
            m_terminal.say("This job is closed. Begin a new one.");
            m_over = true;
        }
        return;
    }
    if (isDetour(way) || way == "decline" || way == "never") {
        c.what = isDetour(way) ? Command::What::Detour : Command::What::Decline;
        c.way = way;
        c.never = way == "never";
        tell(c);
        return;
    }
    const bool onlyConnector = way == "connector"; // the boxes are of the other way
    if (!onlyConnector && !tickAll(view.step.boxes))
        return;
    c.what = way == "acknowledge" ? Command::What::Acknowledge : Command::What::Confirm;
    c.way = way == "acknowledge" || way == "confirm" ? std::string() : way;
    c.boxes.emplace();
    for (const core::Named &box : view.step.boxes)
        if (!onlyConnector)
            c.boxes->push_back(box.id);
    tell(c);
}

bool Walk::tickAll(const std::vector<core::Named> &boxes)
{
    for (const core::Named &box : boxes) {
        const auto line = typed("  [ ] " + box.text + "? (yes): ");
        if (!line)
            return false;
        const std::string low = core::lowered(*line);
        if (low == "yes" || low == "y")
            continue;
        if (!takeWord(core::viewOf(m_session), *line))
            m_terminal.say("Then not yet.");
        return false;
    }
    return true;
}

void Walk::stop(const std::string &why)
{
    Command c;
    c.what = Command::What::Stop;
    c.why = why;
    tell(c);
    m_shown = 0;
}

void Walk::wasNotGas()
{
    constexpr std::array<std::pair<std::string_view, std::string_view>, 5> kInstead{{{"a shock or tingle", "shock"},
                                                                                     {"smoke or fire", "smoke"},
                                                                                     {"sparks", "spark"},
                                                                                     {"water", "water"},
                                                                                     {"something else", "not_gas"}}};
    std::string text = "What was it?";
    for (std::size_t n = 0; n < kInstead.size(); ++n)
        text += "\n  " + std::to_string(n + 1) + ". " + std::string(kInstead[n].first);
    m_terminal.say(text);
    if (const auto n = numbered("number: ", kInstead.size()))
        stop(std::string(kInstead[*n].second));
}

bool Walk::takeDetour(const View &view, std::string_view way)
{
    if (!offers(view.step, way))
        return false;
    takeWay(view, std::string(way));
    return true;
}

} // namespace app
