// What time alone takes away. Computed wherever the state is used, so that no timer has to be trusted.
#include "core/gate/inside.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

double wallSince(Instant then, Instant now) { return static_cast<double>(now.wallMs - then.wallMs) / 1000; }
double steadySince(Instant then, Instant now) { return static_cast<double>(now.steadyMs - then.steadyMs) / 1000; }

// Set back, jumped, slept: the two clocks tell different stories.
bool clocksDisagree(Instant then, Instant now)
{
    const double wall = wallSince(then, now), steady = steadySince(then, now);
    return wall < 0 || steady < 0 || std::abs(wall - steady) > kClockDriftS;
}

// What has run out, and how.
struct Over
{
    bool clocks = false, silent = false, stale = false, granted = false;
    bool any() const { return clocks || silent || stale || granted; }
};

Over overAt(const GateState &state, Instant now, const Rules &rules)
{
    Over over;
    if (state.events == 0)
        return over;
    over.clocks = rules.clocksAgree && clocksDisagree(state.last, now);
    over.silent = rules.deadExpires && longestSince(state.last, now) > kSilenceS;
    over.stale = rules.deadExpires && state.power == Power::ProvenDead && longestSince(state.deadSince, now) > kProofLastsS;
    const double lasts = state.ack && state.ack->run ? kRunS : kAckS;
    const bool ack = state.ack && longestSince(state.ack->at, now) > lasts;
    const bool proof = state.proof && longestSince(state.proof->since, now) > kProofWithinS;
    over.granted = rules.ackExpires && (ack || proof);
    return over;
}

} // namespace

double secondsSince(Instant then, Instant now)
{
    return std::max(0., std::min(wallSince(then, now), steadySince(then, now)));
}

double longestSince(Instant then, Instant now)
{
    return std::max(wallSince(then, now), steadySince(then, now));
}

void spend(GateState &state)
{
    state.ack.reset();
    state.proof.reset();
    if (state.power == Power::Running)
        state.power = Power::Energized;
}

void goAway(GateState &state, const Rules &rules)
{
    if (rules.awayIsUnknown) {
        spend(state);
        if (state.power != Power::Energized && state.power != Power::Stopped)
            state.power = Power::Unknown;
    }
    if (rules.awayForgets) {
        state.inside.covers = Covers::Unknown;
        state.inside.coversKnown = false;
        state.inside.wiresKnown = false;
        state.inside.clips = Clips::Unknown;
        state.inside.clipsFor.reset();
        state.inside.untouched = false;
        state.stored = {};
        state.heat.connectorFor.clear();
    }
    state.provenPlace.clear();
    state.stillOut = false;
    state.up.reset();
    state.shown.reset();
}

Present::Present(const GateState &state, Instant now, const Rules &rules)
    : m_changed(overAt(state, now, rules).any() ? std::optional(asOf(state, now, rules)) : std::nullopt),
      m_state(m_changed ? *m_changed : state)
{
}

GateState asOf(GateState state, Instant now, const Rules &rules)
{
    const Over over = overAt(state, now, rules);
    const bool inKeeping = (state.power == Power::Isolated || state.stillOut) && !over.clocks;
    if (over.clocks || over.silent || over.stale)
        goAway(state, rules);
    if (over.silent)
        state.stillOut = inKeeping;
    if (over.granted)
        spend(state);
    return state;
}

bool lapsed(const GateState &state, Instant now)
{
    return overAt(state, now, kAllRules).any();
}

} // namespace core
