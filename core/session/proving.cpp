#include "core/session/proving.h"

#include <algorithm>

namespace core {
namespace {

bool readsGood(const Facts &facts, const std::string &test, std::size_t placement)
{
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, test);
    const auto at =
        std::ranges::find_if(facts.proving->read, [&](const Measured &m) { return m.test == test && m.placement == placement; });
    if (at == facts.proving->read.end() || at->takes.empty())
        return false;
    const Reading &reading = at->takes.back().reading;
    const auto limits = limitsFor(facts.machine, test, placement, reading.with);
    return !limits || judge(reading, *limits, found.test->measure, facts.machine.meter).clears;
}

std::size_t placementsOf(const Facts &facts, const std::string &test)
{
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, test);
    return found.test == nullptr ? 0 : std::max<std::size_t>(1, found.test->placements.size());
}

} // namespace

bool isOfProof(const Facts &facts, std::string_view test)
{
    return facts.proving && std::ranges::find(facts.proving->toRead, test) != facts.proving->toRead.end();
}

bool readsGoodNow(const Facts &facts, const std::string &test)
{
    for (std::size_t n = 0; n < placementsOf(facts, test); ++n)
        if (!readsGood(facts, test, n))
            return false;
    return true;
}

std::optional<DueReading> dueInProof(const Facts &facts)
{
    if (!facts.proving)
        return std::nullopt;
    for (const std::string &test : facts.proving->toRead)
        for (std::size_t n = 0; n < placementsOf(facts, test); ++n)
            if (!readsGood(facts, test, n))
                return DueReading{test, n};
    return std::nullopt;
}

} // namespace core
