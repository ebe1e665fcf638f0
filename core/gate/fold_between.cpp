// The fold, second half: what comes between the steps. Skips and choices, breaks, other meters, alarms.
#include "core/gate/fold.h"

#include <cmath>

namespace core {

void Fold::operator()(const Skipped &event) const
{
    const auto &frame = state.facts.frameTests;
    if (std::ranges::find(frame, event.test) != frame.end())
        state.refused.frame = true;
    nothingOnScreen();
}

void Fold::operator()(const Chosen &) const
{
    state.refused.isolation = false;
    state.refused.off = false;
    state.refused.frame = false;
    nothingOnScreen();
}

void Fold::operator()(const Amended &event) const
{
    if (event.ofProof && event.fails && state.power == Power::ProvenDead) {
        state.power = Power::Unknown;
        state.provenPlace.clear();
    }
    if (event.fails && state.frameRead.contains(event.test))
        state.frameRead[event.test] = false;
    if (event.veto)
        veto({*event.veto, event.test, false});
    nothingOnScreen();
}

void Fold::operator()(const WentAway &event) const
{
    const bool stillOut = state.stillOut && event.why == Away::Lapsed;
    goAway(state, rules);
    state.stillOut = stillOut;
    if (event.why != Away::Resumed)
        return;
    state.facts.process = event.process;
    // the running clock is another process's: what it measured is carried over by the wall clock
    const auto rebased = [&](Instant then) {
        return Instant{then.wallMs, at.steadyMs - std::max<std::int64_t>(0, at.wallMs - then.wallMs)};
    };
    if (state.heat.at)
        state.heat.at = rebased(*state.heat.at);
}

void Fold::operator()(const MeterChanged &event) const
{
    state.meter = event.meter;
    if (!rules.meterChangeVoids)
        return;
    state.ack.reset();
    if (state.proof && !whyUnfit(event.meter, kWallMark))
        state.proof = Proof{state.proof->place, event.meter.id, state.proof->pairs, 0, at};
    else
        state.proof.reset();
    if (!state.proof)
        state.up.reset();
}

void Fold::operator()(const Alarm &event) const
{
    const bool on = isOn(state.power);
    nothingOnScreen();
    state.ack.reset();
    state.proof.reset();
    if (event.kind == AlarmKind::Gas || event.kind == AlarmKind::CarbonMonoxide) {
        state.danger.stopped = event.kind;
        state.danger.alarm.reset();
        state.danger.gasPage = event.kind == AlarmKind::Gas && !state.danger.gasPageUsed;
        state.danger.wasOn = on;
        state.power = Power::Stopped;
        return;
    }
    constexpr auto reason = [](AlarmKind kind) {
        return kind == AlarmKind::Shock ? VetoReason::Shock : kind == AlarmKind::Smoke ? VetoReason::Smoke
             : kind == AlarmKind::Sparks ? VetoReason::Sparks : kind == AlarmKind::Water ? VetoReason::Water : VetoReason::Unsaid;
    };
    veto({reason(event.kind), {}, false});
    state.danger.alarm = event.kind;
    if (rules.alarmLowers)
        state.power = on ? Power::Energized : Power::Unknown;
}

void Fold::operator()(const NotGas &event) const
{
    state.power = state.danger.wasOn ? Power::Energized : Power::Unknown;
    state.danger = {};
    state.danger.gasPageUsed = true;
    (*this)(Alarm{event.kind});
}

void Fold::operator()(const RepairTold &event) const
{
    for (Veto &found : state.vetoes)
        found.repaired = found.repaired || (!found.test.empty() && found.test == event.test);
}

void Fold::operator()(const EnergizedTurned &event) const
{
    state.facts.energizedOn = event.energized;
    state.facts.provingOn = event.proving;
}

} // namespace core
