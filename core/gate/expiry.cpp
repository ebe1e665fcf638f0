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

GateState asOf(GateState state, Instant now, const Rules &rules)
{
    if (state.events == 0)
        return state;
    if (rules.clocksAgree && clocksDisagree(state.last, now)) {
        goAway(state, rules);
        return state;
    }
    const bool silent = longestSince(state.last, now) > kSilenceS;
    const bool stale = state.power == Power::ProvenDead && longestSince(state.deadSince, now) > kProofLastsS;
    if (rules.deadExpires && (silent || stale)) {
        const bool inKeeping = state.power == Power::Isolated;
        goAway(state, rules);
        state.stillOut = inKeeping;
    }
    const double granted = state.ack && state.ack->run ? kRunS : kAckS;
    const bool ackOver = state.ack && longestSince(state.ack->at, now) > granted;
    const bool proofOver = state.proof && longestSince(state.proof->since, now) > kProofWithinS;
    if (rules.ackExpires && (ackOver || proofOver))
        spend(state);
    return state;
}

bool lapsed(const GateState &state, Instant now)
{
    return asOf(state, now, kAllRules) != state;
}

} // namespace core
