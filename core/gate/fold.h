#pragma once
// What each event does to the gate's state: one overload an event. Internal to this folder.
#include "core/gate/inside.h"

#include <algorithm>
#include <utility>

namespace core {

struct Fold
{
    GateState &state;
    Instant at;
    const Rules &rules;

    void veto(Veto found) const // found once more, it is not repaired any more
    {
        const auto same = [&](const Veto &v) { return v.reason == found.reason && v.test == found.test; };
        if (const auto known = std::ranges::find_if(state.vetoes, same); known != state.vetoes.end())
            known->repaired = false;
        else
            state.vetoes.push_back(std::move(found));
    }
    void heats() const
    {
        if (rules.powerHeats)
            state.heat = {at, true, {}, {}};
    }
    void nothingOnScreen() const
    {
        state.up.reset();
        state.shown.reset();
    }
    void dead(Power power) const
    {
        state.power = power;
        state.deadSince = at;
        state.stillOut = false;
    }
    void show(const StepRequest &request) const;
    void touched(const StepRequest &request) const;
    void madeOff(const Confirmed &event) const;
    void putBack() const;
    void runs() const;
    void proofStarts(const StepRequest &request) const;

    void operator()(const GateStarted &event) const;
    void operator()(const ScreenShown &event) const;
    void operator()(const StepShown &event) const;
    void operator()(const StartAnswered &event) const;
    void operator()(const Confirmed &event) const;
    void operator()(const Acknowledged &) const;
    void operator()(const Declined &event) const;
    void operator()(const DetourTaken &event) const;
    void operator()(const ProofReading &event) const;
    void operator()(const ChargeReading &event) const;
    void operator()(const ReadingTaken &event) const;
    void operator()(const Skipped &event) const;
    void operator()(const Chosen &) const;
    void operator()(const Undone &) const { nothingOnScreen(); }
    void operator()(const Amended &event) const;
    void operator()(const Reported &) const {}
    void operator()(const WentAway &event) const;
    void operator()(const MeterChanged &event) const;
    void operator()(const Alarm &event) const;
    void operator()(const NotGas &event) const;
    void operator()(const PressedByMistake &) const { state.danger.gasPage = false; }
    void operator()(const VetoFound &event) const { veto(event.veto); }
    void operator()(const RepairTold &event) const;
    void operator()(const NeverTakenBack &) const { state.refused.never = false; }
    void operator()(const EnergizedTurned &event) const;
};

} // namespace core
