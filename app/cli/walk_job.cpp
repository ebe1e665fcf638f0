// Words that belong to the job rather than to a step: the plate, the meter, power, the repair and what became of it.
#include "app/cli/outcomes.h"
#include "app/cli/walk.h"
#include "app/cli/walk_begin.h"
#include "app/paper/record.h"
#include "core/base/text.h"
#include "core/session/names.h"

#include <algorithm>
#include <fmt/format.h>

namespace app {

using core::Command;

void Walk::energized(const std::string &word)
{
    if (word != "on" && word != "off")
        m_terminal.say("`energized on` or `energized off`.");
    else if (tell(Command::What::Energized, word))
        m_terminal.say(word == "on" ? "Readings with power on may be offered, each behind its own caution screen."
                                    : "No reading with power on in this job.");
}

namespace {

// Parts with a plate value that could be the one meant: by name, else heaters for watts and the others for a single value.
std::vector<std::string> ratedParts(const core::Machine &machine, const std::string &named, bool watts)
{
    std::vector<std::string> parts;
    for (const core::Component &c : machine.appliance->components) {
        const bool heater = std::ranges::any_of(c.ratings, [](const auto &r) { return r.second.watts > 0; });
        const std::string name = core::lowered(core::nameOf(machine, c.id));
        const bool meant =
            named.empty() ? heater == watts : c.id.find(named) != std::string::npos || name.find(named) != std::string::npos;
        if (!c.ratings.empty() && core::isOn(machine, c.id) && meant)
            parts.push_back(c.id);
    }
    return parts;
}

} // namespace

// "240 V 5400 W", or with the part first where several have a plate value.
void Walk::plate(const std::string &rest)
{
    const core::Machine &machine = m_session.facts().machine;
    const auto digit = rest.find_first_of("0123456789");
    if (digit == std::string::npos) {
        m_terminal.say("Write what the plate says: plate 240 V 5400 W. Of another part: plate, its name, its value.");
        return;
    }
    std::string value = rest.substr(digit);
    const std::vector<std::string> parts =
        ratedParts(machine, std::string(core::trimmed(rest.substr(0, digit))), value.find('w') != std::string::npos);
    if (parts.size() != 1) {
        m_terminal.say(parts.empty() ? "No part of this machine goes by such a plate value."
                                     : "Of which? plate, one of " + core::joined(parts, ", ") + ", then its value.");
        return;
    }
    std::ranges::transform(value, value.begin(),
                           [](char c) { return c == 'v' || c == 'w' ? static_cast<char>(c - 'a' + 'A') : c; });
    Command c;
    c.what = Command::What::Sheet;
    c.test = parts.front() + ".rating";
    c.value = std::move(value);
    if (tell(c))
        m_terminal.say("Taken: " + c.value + ", " + core::nameOf(machine, parts.front()) + ".");
    m_shown = 0;
}

void Walk::prove()
{
    tell(Command::What::Prove);
}

void Walk::outcome(const std::string &word)
{
    std::size_t n = 0;
    for (const std::string_view value : kOutcomes)
        m_terminal.say(fmt::format("  {}. {}", ++n, outcomeSaid(value)));
    std::optional<std::size_t> chosen = numberIn(word, n);
    if (word.empty())
        chosen = numbered("how did it go? number: ", n);
    if (chosen && tell(Command::What::Outcome, std::string(kOutcomes[*chosen])))
        m_terminal.say("Kept: " + std::string(outcomeSaid(kOutcomes[*chosen])));
}

void Walk::together(const View &view)
{
    if (!view.verdict || view.verdict->putBack.empty()) {
        m_terminal.say("There is nothing to put together here.");
        return;
    }
    if (!tickAll(view.verdict->putBack))
        return;
    if (tell(Command::What::Confirm))
        m_terminal.say("Together.");
}

void Walk::changeMeter()
{
    auto meter = askMeter(m_terminal, [this](std::string_view prompt) { return typed(prompt); });
    if (!meter)
        return;
    Command c;
    c.what = Command::What::MeterChanged;
    c.meter = std::move(*meter);
    tell(c);
    m_shown = 0;
}

} // namespace app
