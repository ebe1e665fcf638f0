#include "core/session/event.h"

#include <algorithm>
#include <array>

namespace core {
namespace {

bool canBeUndone(Event::What what)
{
    return what == Event::What::Answered || what == Event::What::Read || what == Event::What::Skipped ||
           what == Event::What::Chosen || what == Event::What::Sheet;
}

} // namespace

std::string_view word(Event::What what)
{
    static constexpr std::array<std::string_view, 27> kWords{
        "started", "answered", "read",    "confirmed", "acknowledged", "declined", "detour",  "skipped",   "chosen",
        "shown",   "undone",   "amended", "sheet",     "meter",        "left",     "resumed", "lapsed",    "stopped",
        "not_gas", "mistake",  "verdict", "put_back",  "outcome",      "repaired", "proving", "energized", "never_taken_back"};
    return kWords[static_cast<std::size_t>(what)];
}

std::vector<Event> effective(const std::vector<Event> &events)
{
    std::set<int> undone;
    for (auto e = events.rbegin(); e != events.rend(); ++e)
        if (e->what == Event::What::Undone && !undone.contains(e->number))
            undone.insert(e->target);
    std::vector<Event> counted;
    for (const Event &e : events) {
        if (undone.contains(e.number) || e.what == Event::What::Undone)
            continue;
        if (e.what != Event::What::Amended) {
            counted.push_back(e);
            continue;
        }
        const auto target = std::ranges::find(counted, e.target, &Event::number);
        if (target != counted.end()) {
            target->value = e.value;
            target->reading = e.reading;
        }
    }
    return counted;
}

int lastUndoable(const std::vector<Event> &events)
{
    const std::vector<Event> counted = effective(events);
    const auto last =
        std::find_if(counted.rbegin(), counted.rend(), [](const Event &e) { return canBeUndone(e.what) && e.step != "S0"; });
    return last == counted.rend() ? 0 : last->number;
}

} // namespace core
