#pragma once
// The rest of the player: what an accepted event means to the person, and what must be so after it.
#include "tests/core/gate_player.h"

namespace gatetest {

inline void Player::puttingBack(const Confirmed &event)
{
    const auto ticked = [&](std::string_view id) { return std::ranges::find(event.boxes, id) != event.boxes.end(); };
    for (const std::string name : {"w1", "w2"})
        if (ticked("wire:" + name) || ticked("every_wire"))
            worlds.clear(wireNamed(name));
    for (const std::string place : {"p", "q"})
        if (ticked("cover:" + place) || ticked("covers_on") || (ticked("other_covers_on") && state.inside.opened.count(place) == 0))
            worlds.clear(coverAt(place));
    if (ticked("meter_off"))
        for (const Fact fact : {Ohms, Clip, Clamp})
            worlds.clear(fact);
}

inline void Player::confirmed(const Confirmed &event, const GateState &before, const Screening &up)
{
    switch (event.screen) {
    case Screen::S1:
        require(!state.facts.hardWired, "I3 hard-wired and isolated by a plug");
        worlds.clear(Mains);
        told.off = true;
        told.offSince = now;
        told.offAt.clear();
        break;
    case Screen::S2: worlds.mayBeClear(Mains); break; // the label can be wrong
    case Screen::S7:
        told.ack = before.up->request.test;
        told.run = up.form == "run";
        told.ackAt = now;
        if (told.run) {
            told.machineOn = true;
            told.off = false;
            told.discharged.clear();
        }
        break;
    case Screen::S8: puttingBack(event); break;
    case Screen::S9:
        endAck();
        told.onAt = told.machineOn ? now : told.onAt;
        told.machineOn = false;
        told.off = event.way == Way::Plug;
        told.offSince = now;
        told.offAt.clear();
        if (event.way == Way::Plug)
            worlds.clear(Mains);
        if (event.way == Way::Breaker)
            worlds.mayBeClear(Mains);
        if (event.way == Way::Control)
            require(!worlds.can(CoverP) && !worlds.can(Wire1) && !worlds.can(Clip), "I14 off at the control with something open");
        if (std::ranges::find(event.boxes, "clips_off") != event.boxes.end())
            for (const Fact fact : {Ohms, Clip, Clamp})
                worlds.clear(fact);
        break;
    case Screen::S10: told.discharged.insert(before.up->request.storeName); break;
    case Screen::S14: told.alarm = false; break;
    default: break;
    }
}

// ---- what the person now knows, said and did: event by event ----
inline void Player::heard(const StartAnswered &event, const GateState &)
{
    told.asked = true;
    if (event.answer != StartAnswer::Alarm)
        return;
    told.alarm = told.veto = true;
    told.off = false;
}

inline void Player::heard(const Acknowledged &, const GateState &before)
{
    told.off = false;
    told.discharged.clear();
    if (before.up->screen != Screen::S3) {
        told.machineOn = told.machineOn || before.up->screen != Screen::S5;
        told.ack = before.up->request.test;
        told.ackAt = now;
        return;
    }
    told.proof = 0;
    told.proofAt = now;
    told.proofMeter = state.meter.id;
    worlds.mayBeSet(coverAt(before.up->request.place));
}

inline void Player::heard(const Declined &event, const GateState &before)
{
    endAck();
    told.never = told.never || event.never;
    if (before.up && before.up->screen == Screen::S14) {
        told.stopped = true;
        told.alarm = false;
    }
    if (before.up && before.up->screen == Screen::S0)
        told.asked = true;
}

inline void Player::heard(const ProofReading &event, const GateState &before)
{
    const int pairs = static_cast<int>(before.proof->pairs.size()), proof = told.proof;
    const double volts = std::abs(event.volts);
    const bool known = proof == 0 || proof > 2 * pairs;
    const bool source = (volts >= 104 && volts <= 132) || (volts >= 207 && volts <= 253);
    const bool good = event.settled && (known ? source : volts < (proof <= pairs ? 2 : 5));
    told.proof = good ? proof + 1 : proof == 0 ? 0 : -1;
    if (state.power != Power::ProvenDead)
        return;
    require(told.proof == 2 * pairs + 2 && told.proofMeter == state.meter.id, "I5 proven dead without the whole proof");
    told.off = true;
    told.offSince = now;
    told.offAt = before.proof->place;
    told.proof = -1;
}

inline void Player::heard(const ReadingTaken &event, const GateState &before)
{
    if (isLive(event.request.stepClass))
        endAck();
    if (event.request.test == "frame" && event.outcome != Outcome::Part) {
        told.frame.insert("frame");
        told.frameBad = event.outcome == Outcome::Failed;
    }
    told.veto = told.veto || event.veto.has_value();
    if (event.veto || !state.vetoes.empty() || before.vetoes.empty())
        return;
    const auto mended = [&](const Veto &v) { return v.repaired && v.test == event.request.test; };
    require(event.outcome == Outcome::Good && std::ranges::all_of(before.vetoes, mended), "I12 a veto lifted by itself");
    told.veto = false;
}

inline void Player::heard(const Amended &event, const GateState &before)
{
    endAck();
    told.veto = told.veto || event.veto.has_value();
    if (event.ofProof && event.fails && state.facts.hardWired)
        told.off = false;
    if (event.test == "frame" && event.fails)
        told.frameBad = true;
    lowerOnly(before);
}

inline void Player::heard(const MeterChanged &event, const GateState &)
{
    told.fit = !whyUnfit(event.meter, kWallMark);
    told.proofMeter = event.meter.id;
    const bool again = told.proof >= 0 && told.fit;
    endAck();
    told.proof = again ? 0 : -1;
    told.proofAt = now;
    require(!state.ack, "I4 an acknowledgement outlived its meter");
}

inline void Player::anybodyDidAnything()
{
    for (std::size_t fact = 0; fact < kFacts; ++fact)
        if (fact != Hot && fact != SecondFeed)
            worlds.free(static_cast<Fact>(fact));
}

inline void Player::heard(const WentAway &, const GateState &before)
{
    endAck();
    told.off = false;
    told.discharged.clear();
    require(!isDead(state.power) && !state.ack && !state.proof, "I15 dead, or acknowledged, after a break");
    require(!isOn(before.power) || state.power == Power::Energized, "I15 on was forgotten");
    anybodyDidAnything();
}

inline void Player::heard(const Alarm &event, const GateState &)
{
    endAck();
    const bool gas = event.kind == AlarmKind::Gas || event.kind == AlarmKind::CarbonMonoxide;
    told.stopped = told.stopped || gas;
    told.alarm = !told.stopped;
    told.veto = told.veto || !gas;
    told.off = false;
    told.discharged.clear();
}

inline void Player::heard(const NotGas &, const GateState &)
{
    endAck();
    require(told.stopped && !told.outOnce, "I13 a second way out of stopped");
    told.outOnce = told.alarm = told.veto = true;
    told.stopped = false;
}

inline void Player::after(const GateEvent &event, const GateState &before, const Screening &up)
{
    const bool live = isOn(before.power) && !told.run && !told.ack.empty();
    const bool proving = told.proof >= 0;
    std::visit([&](const auto &e) {
        if constexpr (std::is_same_v<std::decay_t<decltype(e)>, Confirmed>)
            confirmed(e, before, up);
        else
            heard(e, before);
    }, event);
    const bool own = std::holds_alternative<Acknowledged>(event) || std::holds_alternative<Confirmed>(event);
    require(!live || own || !state.ack || (state.proof && proving), "I4 an acknowledgement outlived another event");
    require(!told.stopped || state.power == Power::Stopped, "I13 stopped was left");
    const bool madeOff = std::holds_alternative<Confirmed>(event) && up.screen == Screen::S9;
    const bool gone = madeOff || told.stopped || state.power == Power::ProvenDead || std::holds_alternative<NotGas>(event);
    require(!isOn(before.power) || isOn(state.power) || gone, "I14 on was left without S9");
    require(!state.facts.hardWired || state.power != Power::Isolated, "I3 hard-wired and isolated");
    require(told.alarm == state.danger.alarm.has_value(), "I13 an alarm was lost");
}

inline void Player::wait(double wallS, double steadyS)
{
    now.wallMs += static_cast<std::int64_t>(wallS * 1000);
    now.steadyMs += static_cast<std::int64_t>(steadyS * 1000);
    if (!told.machineOn && secondsSince(told.onAt, now) >= 900)
        worlds.clear(Hot);
    if (wallS > 1800 || std::abs(wallS - steadyS) > 60) { // nobody looked: anybody may have done anything
        anybodyDidAnything();
        return;
    }
    Worlds off = worlds, on = worlds;
    off.keep(Mains, false);
    on.keep(Mains, true);
    if (told.off && secondsSince(told.offSince, now) >= 600)
        off.clear(ChargeB);
    off.mayBeClear(ChargeM);
    worlds = off;
    worlds.add(on);
}

// Leaving everything undone ends in a verdict: after every screen that comes before it was declined, nothing is left to come.
inline void Player::checkWayOn()
{
    Player left = *this;
    for (int i = 0; i < 6; ++i) {
        const Screening s = endOfWalk(left.state, verdictRequest(), left.now, m_rules);
        if (s.what == Screening::What::Show || left.state.power == Power::Stopped)
            return;
        left.state = apply(left.state, ScreenShown{s.screen, verdictRequest()}, left.now, m_rules);
        const bool taken = !mayAnswer(left.state, Declined{}, left.now, m_rules);
        require(taken, "I19 a screen that cannot be declined");
        if (!taken)
            return;
        left.state = apply(left.state, Declined{}, left.now, m_rules);
    }
    require(false, "I19 no way on");
}

} // namespace gatetest
