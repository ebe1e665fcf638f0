#include "core/session/facts.h"

#include <algorithm>

namespace core {
namespace {

constexpr int kMostTakes = 4;

// A loop that stands for a part's own test convicts like it; any other loop names no part.
bool canConvict(const Library::Found &found)
{
    return found.kind != nullptr || !found.test->standsFor.empty();
}

struct Tally
{
    int out = 0, good = 0, near = 0;
    bool jumps = false;
    ReadingName lastOut = ReadingName::Unnamed, last = ReadingName::Unnamed;
};

Tally tallied(const Facts &facts, const Library::Found &found, const Measured &measured)
{
    Tally tally;
    const bool mayConvict = canConvict(found) && onceGoodHolds(facts, *found.test, found.component);
    for (const Take &take : measured.takes) {
        const auto limits = limitsFor(facts.machine, measured.test, measured.placement, take.reading.with);
        const Judgement judgement = judge(take.reading, limits.value_or(Limits{}), found.test->measure, facts.machine.meter);
        tally.last = judgement.name;
        if (!limits)
            continue;
        tally.jumps = tally.jumps || take.reading.what == Reading::What::Jumps;
        if (judgement.convicts && mayConvict) {
            ++tally.out;
            tally.lastOut = judgement.name;
        } else if (judgement.pGood >= .5) {
            ++tally.good;
        }
        tally.near += judgement.near ? 1 : 0;
    }
    return tally;
}

// Names from good to bad, so that the worst of several placements names the test.
int badness(ReadingName name)
{
    switch (name) {
    case ReadingName::Unnamed:
    case ReadingName::Good:
    case ReadingName::Tone:
        return 0;
    case ReadingName::High:
    case ReadingName::Low:
        return 1;
    case ReadingName::Jumps:
        return 2;
    case ReadingName::Open:
    case ReadingName::NoTone:
    case ReadingName::StaysClosed:
    case ReadingName::None:
        return 3;
    }
    return 0;
}

bool fails(const PlacementState &placement)
{
    return placement.jumps || placement.out >= placement.good;
}

} // namespace

bool canDo(const Facts &facts, const Abilities &abilities, const Library::Found &found)
{
    const Test &test = *found.test;
    const std::string_view owner = found.kind == nullptr ? std::string_view(test.id) : std::string_view(found.component);
    if (!isOn(facts.machine, owner) || !holds(test.only, facts.machine.answers))
        return false;
    if (const Component *c = facts.machine.appliance->component(found.component))
        if (const auto skip = c->skips.find(test.id); skip != c->skips.end() && holds(skip->second, facts.machine.answers))
            return false;
    if (isEnergized(test.measure)) {
        // volts that this supply has no limits for are of another supply: there is nothing to compare them with
        const std::string id = found.kind == nullptr ? test.id : found.component + "." + test.id;
        return abilities.energized && abilities.running && facts.machine.meter.can(test.measure) &&
               limitsFor(facts.machine, id, 0, {}).has_value();
    }
    if (test.byEye()) {
        const bool power = test.appliance == ApplianceState::InUse || !test.touches.empty();
        return power ? abilities.running : test.appliance != ApplianceState::NoPower || abilities.dead;
    }
    if (!abilities.dead)
        return false;
    // a tone tells open from closed, so a meter that only beeps still serves where a contact is read, and the other way round
    if (test.measure == Measure::Continuity && facts.machine.meter.can(Measure::Resistance))
        return true;
    if (test.measure == Measure::OpensAt)
        return facts.machine.meter.can(Measure::Resistance) || facts.machine.meter.can(Measure::Continuity);
    return facts.machine.meter.can(test.measure);
}

bool onceGoodHolds(const Facts &facts, const Test &test, std::string_view component)
{
    return std::ranges::all_of(test.onceGood, [&](const std::string &needed) {
        const std::string id = qualified(needed, component);
        const Library::Found found = facts.machine.library->test(*facts.machine.appliance, id);
        if (found.test == nullptr || !isOn(facts.machine, found.kind == nullptr ? id : found.component))
            return true; // not on this machine
        if (found.test->byEye()) {
            const Looked *looked = lookedAt(facts, id);
            const auto proves = looked == nullptr ? found.test->proves.end() : found.test->proves.find(looked->answers.back());
            return looked != nullptr && (proves == found.test->proves.end() || proves->second.empty());
        }
        const TestState state = testState(facts, id);
        return state.done && state.name != ReadingName::Unnamed && badness(state.name) == 0;
    });
}

PlacementState placementState(const Facts &facts, const Library::Found &found, std::string_view test, std::size_t placement)
{
    PlacementState state;
    const Measured *measured = measuredAt(facts, test, placement);
    if (measured == nullptr || measured->takes.empty())
        return state;
    const Tally tally = tallied(facts, found, *measured);
    const int total = static_cast<int>(measured->takes.size());
    state.out = tally.out;
    state.good = tally.good;
    state.jumps = tally.jumps;
    state.name = tally.out > 0 && tally.out >= tally.good ? tally.lastOut : tally.last;
    state.next = PlacementState::Next::Settled;
    if (!isDead(found.test->measure) || total >= kMostTakes)
        return state; // one acknowledgement, one reading: an energized test is never repeated by itself
    if (tally.out == 1 && total == 1)
        state.next = PlacementState::Next::Reseat;
    else if (tally.out > 0 && tally.good > 0 && tally.out == tally.good)
        state.next = PlacementState::Next::Reseat;
    else if (tally.near == 1 && total == 1)
        state.next = PlacementState::Next::Again;
    return state;
}

PlacementState pastState(const Facts &facts, const Library::Found &found, std::string_view test)
{
    PlacementState worst;
    for (const Measured &m : facts.measured) {
        if (!m.past || m.test != test)
            continue;
        const Tally tally = tallied(facts, found, m);
        if (tally.out <= worst.out && worst.next != PlacementState::Next::Unread)
            continue;
        worst = {PlacementState::Next::Settled, tally.out > 0 ? tally.lastOut : tally.last, tally.out, tally.good, tally.jumps};
    }
    return worst;
}

TestState testState(const Facts &facts, std::string_view id)
{
    TestState state;
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, id);
    if (found.test == nullptr || found.test->byEye())
        return state;
    const std::size_t count = std::max<std::size_t>(1, found.test->placements.size());
    std::optional<PlacementState> worst; // good readings of other placements are no excuse for it
    bool first = true;
    for (std::size_t n = 0; n < count; ++n) {
        const PlacementState placement = placementState(facts, found, id, n);
        state.begun = state.begun || placement.next != PlacementState::Next::Unread;
        state.jumps = state.jumps || placement.jumps;
        state.good += placement.good;
        if (placement.out > 0 && (!worst || placement.out - placement.good > worst->out - worst->good)) {
            worst = placement;
            state.worstPlacement = n;
        }
        if (placement.out >= 2 && placement.next == PlacementState::Next::Settled && fails(placement)) {
            state.nextPlacement.reset(); // failed, twice: what the other placements read changes nothing
            state.name = placement.name;
            break;
        }
        if (placement.next != PlacementState::Next::Settled && !state.nextPlacement) {
            state.nextPlacement = n;
            state.why = placement.next;
        }
        if (placement.next != PlacementState::Next::Unread && (first || badness(placement.name) > badness(state.name))) {
            state.name = placement.name;
            first = false;
        }
    }
    if (worst) {
        state.out = worst->out;
        state.good = worst->good;
    }
    state.done = !state.nextPlacement.has_value();
    return state;
}

} // namespace core
