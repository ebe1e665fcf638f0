#pragma once
// A client that may send anything, a person who does what the screens say, and a second, much simpler account of what the
// person has said and done. Every screen and every event is held against the invariants:
//   I1 live or running step only with its own fresh acknowledgement      I2 hands inside only when dead
//   I3 hard-wired is dead by proof alone                                 I4 one acknowledgement, one reading, nothing between
//   I5 a proof is all its readings, in order, of one meter, in 15 min    I6 clips go on dead, the outlet only unplugged
//   I7 no power with a wire off or a meter on                            I8 running only closed up
//   I9 stored charge and heat are waited for                             I10 flags fall when a step is shown
//   I11 undo and amend never raise                                       I12 no power after a veto
//   I13 stopped stays stopped                                            I14 from on only S9
//   I15 away is never dead                                               I17 X is never shown
//   I18 never holds                                                      I19 there is always a way on
//   I21 a refused event changes nothing, folding is pure
// I16 (a tree lowers nothing) is the classes' and the texts' test, I22 (no word "safe") the texts'; I20 (a parts-only verdict
// never depends on a declined reading) needs verdicts and is held by the session's tests, as is I21 over stored logs.
#include "core/gate/inside.h"
#include "tests/core/gate_fixture.h"
#include "tests/core/gate_world.h"

#include <algorithm>
#include <cstdlib>

namespace gatetest {

// What the person has said and done, told without a gate: the other account.
struct Told
{
    bool off = false;                // and nothing since that could have put power on
    std::string offAt;               // the place that was proved; "" any
    std::string ack;                 // step acknowledged, and nothing since
    bool machineOn = false;          // a run or a live reading began, and no "off" was said since
    bool run = false;                // S7 passed, and nothing since but steps that run
    Instant ackAt, last, proofAt, onAt, offSince;
    int proof = -1;                  // readings of the proof that were good; -1 none
    std::string proofMeter;
    bool asked = false, veto = false, never = false, stopped = false, alarm = false, outOnce = false, energized = true, fit = true;
    std::set<std::string> resets, frame, discharged;
    bool frameBad = false;
    friend bool operator==(const Told &, const Told &) = default;
};

inline Fact coverAt(const std::string &place) { return place == "q" ? CoverQ : CoverP; }
inline Fact wireNamed(const std::string &name) { return name == "w2" ? Wire2 : Wire1; }

class Player
{
public:
    Player(const GateStarted &event, const Rules &rules);

    GateState state;
    Told told;
    Worlds worlds;
    Instant now{1'700'000'000'000, 5'000'000};
    std::string broken; // the first invariant that broke

    Screening want(const StepRequest &wanted);    // what is wanted comes on the screen, and the person acts
    bool takes(const GateEvent &event) const { return !mayAnswer(state, event, now, m_rules); }
    bool take(const GateEvent &event);            // that it takes; false: it would be a lie in every world
    bool send(const GateEvent &event);            // false: refused, or a lie
    void wait(double wallS, double steadyS);      // nothing happens, or anything does
    void checkWayOn();                            // I19
    Screening upNow() const { return screenFor(state, state.up->request, now, m_rules); }

private:
    void require(bool holds, const char *why)
    {
        if (!holds && broken.empty())
            broken = why;
    }
    void expire();
    void checkStep(const StepRequest &step);
    void checkLive(const StepRequest &step);
    void checkClosed(const StepRequest &step, bool exceptForIt);
    void checkScreen(const Screening &screening, const StepRequest &wanted);
    void act(const StepRequest &step);
    void actOnScreen(Screen screen, const StepRequest &wanted);
    bool possible(const GateEvent &event, const Screening &up); // false: an honest person would not say so
    void after(const GateEvent &event, const GateState &before, const Screening &up);
    template<class Event>
    void heard(const Event &, const GateState &) { endAck(); } // whatever else is told ends an acknowledgement
    void heard(const StartAnswered &event, const GateState &before);
    void heard(const Acknowledged &event, const GateState &before);
    void heard(const Declined &event, const GateState &before);
    void heard(const ProofReading &event, const GateState &before);
    void heard(const ReadingTaken &event, const GateState &before);
    void heard(const Amended &event, const GateState &before);
    void heard(const MeterChanged &event, const GateState &before);
    void heard(const WentAway &event, const GateState &before);
    void heard(const Alarm &event, const GateState &before);
    void heard(const NotGas &event, const GateState &before);
    void heard(const Undone &, const GateState &before)
    {
        endAck();
        lowerOnly(before);
    }
    void heard(const VetoFound &, const GateState &)
    {
        endAck();
        told.veto = true;
    }
    void heard(const ChargeReading &event, const GateState &) { told.veto = told.veto || std::abs(event.volts) >= 5; }
    void heard(const NeverTakenBack &, const GateState &)
    {
        endAck();
        told.never = false;
    }
    void heard(const EnergizedTurned &event, const GateState &)
    {
        endAck();
        told.energized = event.energized;
    }
    void anybodyDidAnything();
    void confirmed(const Confirmed &event, const GateState &before, const Screening &up);
    void puttingBack(const Confirmed &event);
    void lowerOnly(const GateState &before);
    void endAck()
    {
        told.ack.clear();
        told.run = false;
        told.proof = -1;
    }

    Rules m_rules;
};

inline Player::Player(const GateStarted &event, const Rules &rules) : m_rules(rules)
{
    state = apply(state, event, now, rules);
    told.last = now;
    told.energized = event.facts.energizedOn;
    told.fit = !whyUnfit(event.meter, kWallMark);
    // in daily use, or a panel off and anything done behind it
    worlds = Worlds::one();
    worlds.set(Mains);
    worlds.set(ChargeM);
    worlds.set(ChargeB);
    if (event.facts.hardWired)
        worlds.mayBeSet(SecondFeed);
    Worlds open = worlds;
    open.set(CoverP);
    for (const Fact fact : {CoverQ, Wire1, Wire2, Ohms})
        open.mayBeSet(fact);
    worlds.add(open);
}

inline void Player::expire()
{
    const double wall = static_cast<double>(now.wallMs - told.last.wallMs) / 1000, steady = static_cast<double>(now.steadyMs - told.last.steadyMs) / 1000;
    const bool away = std::max(wall, steady) > 1800 || std::abs(wall - steady) > 60 || wall < 0;
    const auto older = [&](Instant then, double seconds) { return static_cast<double>(now.wallMs - then.wallMs) / 1000 > seconds; };
    if (away) {
        told.off = false;
        told.discharged.clear();
        endAck();
    }
    if ((!told.ack.empty() && older(told.ackAt, 600)) || (told.run && older(told.ackAt, 900)) || (told.proof >= 0 && older(told.proofAt, 900)))
        endAck();
}

inline void Player::checkClosed(const StepRequest &step, bool exceptForIt)
{
    for (const Fact cover : {CoverP, CoverQ})
        if (!(exceptForIt && step.coverOff && coverAt(step.place) == cover))
            require(!worlds.can(cover), "I8 power with another cover off");
    for (const Fact wire : {Wire1, Wire2})
        if (!(exceptForIt && std::ranges::any_of(step.pulls, [&](const auto &name) { return wireNamed(name) == wire; })))
            require(!worlds.can(wire), "I7 power with a wire off its terminal");
    require(!worlds.can(Ohms), "I7 power with the meter left on in ohms");
    if (step.stepClass != StepClass::E1)
        require(!worlds.can(Clip), "I7 power with clips on");
    if (step.stepClass != StepClass::E3)
        require(!worlds.can(Clamp), "I7 power with a clamp on");
}

inline void Player::checkLive(const StepRequest &step)
{
    require(told.ack == step.test && state.power == Power::Energized, "I1 live step without its own acknowledgement");
    require(!told.veto, "I12 power after a veto");
    require(!told.never, "I18 live step after never");
    require(told.energized, "I18 live step that was not turned on");
    require(told.fit || step.stepClass == StepClass::EO, "a meter that is not fit");
    require(!step.needsFrameCheck || state.facts.frameTests.empty() || (told.frame.contains("frame") && !told.frameBad), "a hand near a frame that was not checked");
    if (step.stepClass == StepClass::E2)
        require(!worlds.can(Mains) && !state.facts.hardWired, "I6 outlet measured with the machine plugged in");
    checkClosed(step, step.stepClass != StepClass::E2);
}

// Before the person acts on a step that is on the screen, or whose reading was taken.
inline void Player::checkStep(const StepRequest &step)
{
    require(!told.stopped && !told.alarm, "I13 a step after an alarm");
    require(told.asked, "a step before the first question");
    switch (step.stepClass) {
    case StepClass::A:
        require(!isOn(state.power), "I14 a look while it counts as on");
        require(!(worlds.can(Mains, CoverP) || worlds.can(Mains, CoverQ)), "I2 look from outside with a cover off and power on");
        break;
    case StepClass::D:
    case StepClass::DS:
        require(told.off && isDead(state.power), "I2 hands inside before power was said to be off");
        require(!state.facts.hardWired || (state.power == Power::ProvenDead && (told.offAt == step.place || !step.coverOff)), "I3 hard-wired and not proved there");
        require(!worlds.can(Mains) && !(step.place == "q" && worlds.can(SecondFeed)), "I2 hands inside a live machine");
        if (step.store == Store::Motor)
            require(told.discharged.contains(step.storeName) && !worlds.can(ChargeM), "I9 motor capacitor still charged");
        if (step.store == Store::Board)
            require(told.discharged.contains(step.storeName) && !worlds.can(ChargeB), "I9 board still charged");
        require(step.hotPart.empty() || !worlds.can(Hot), "I9 hands on a hot part");
        break;
    case StepClass::R:
    case StepClass::AP:
        require(!told.veto, "I12 power after a veto");
        require(step.stepClass == StepClass::AP || (told.run && state.power == Power::Running), "I1 running step without S7");
        require(step.stepClass == StepClass::R || told.run || told.ack == step.test || isShown(state, step), "I1 touched without S7");
        require(!told.resets.contains(step.touches) || isShown(state, step), "a second reset");
        checkClosed(step, false);
        break;
    case StepClass::X:
    case StepClass::P: require(false, "I17 a step that is never shown"); break;
    default: checkLive(step); break;
    }
}

inline void Player::checkScreen(const Screening &screening, const StepRequest &wanted)
{
    const Screen screen = screening.screen;
    const bool hold = isHold(screen);
    if (told.stopped)
        require(screen == Screen::S12 || screen == Screen::S14, "I13 something else than the stop page");
    else if (told.alarm)
        require(screen == Screen::S14, "I13 something else than S14");
    if (isOn(state.power) && !told.alarm)
        require(screen == Screen::S9 || (screen == Screen::S3 && told.proof >= 0), "I14 something else than S9 while it counts as on");
    if (hold) {
        require(isDead(state.power) && told.off && !worlds.can(Mains), "I6 a hold point shown while not dead");
        require(screen != Screen::S5 || state.power == Power::Isolated, "I6 outlet while not unplugged");
        require(!told.veto, "I12 hold point after a veto");
        require(!told.never, "I18 hold point after never");
    }
    if (screen == Screen::S3)
        require(!told.never && told.fit, "I18 proving after never, or with an unfit meter");
    if (screen == Screen::S7)
        require(!told.veto, "I12 a run offered after a veto");
    if (screen == Screen::S8 || (screen == Screen::S10 && wanted.store == Store::Motor))
        require(!worlds.can(Mains) && isDead(state.power), "I2 hands inside to put back or discharge");
    if (screen == Screen::S1)
        require(!state.facts.hardWired, "I3 a plug that is not there");
    if (!told.asked && !told.stopped && !told.alarm && !isOn(state.power))
        require(screen == Screen::S0, "something before the first question");
}

inline Screening Player::want(const StepRequest &wanted)
{
    expire();
    state = asOf(std::move(state), now, m_rules);
    const Screening screening = screenFor(state, wanted, now, m_rules);
    if (screening.what == Screening::What::Show) {
        checkStep(wanted);
        state = apply(state, StepShown{wanted}, now, m_rules);
        act(wanted);
        told.last = now;
    } else if (screening.what == Screening::What::Insert && !isUp(state, screening, wanted)) {
        const bool run = state.power == Power::Running;
        checkScreen(screening, wanted);
        state = apply(state, ScreenShown{screening.screen, wanted}, now, m_rules);
        if (!run && screening.screen != Screen::S3)
            endAck();
        actOnScreen(screening.screen, wanted);
        told.last = now;
    }
    return screening;
}

// The person does what the step says, or has not done it yet.
inline void Player::act(const StepRequest &step)
{
    Worlds done = worlds;
    const bool machineOn = step.stepClass != StepClass::E2 && (isLive(step.stepClass) || step.stepClass == StepClass::R || step.stepClass == StepClass::AP);
    if (isDeadWork(step.stepClass) || (isLive(step.stepClass) && step.stepClass != StepClass::E2)) {
        if (step.coverOff)
            done.set(coverAt(step.place));
        for (const std::string &wire : step.pulls)
            done.set(wireNamed(wire));
    }
    if (isDeadWork(step.stepClass))
        done.set(Ohms);
    if (machineOn)
        for (const Fact fact : {Mains, ChargeM, ChargeB})
            done.set(fact);
    if (machineOn && (step.stepClass != StepClass::AP || step.inUse)) // a breaker pushed with the controls off heats nothing
        done.set(Hot);
    worlds.add(done);
    if (step.stepClass == StepClass::AP) {
        if (!step.touches.empty() && step.touches != "plug")
            told.resets.insert(step.touches);
        told.off = false;
        told.discharged.clear();
        told.ack.clear();
    }
}

inline void Player::actOnScreen(Screen screen, const StepRequest &wanted)
{
    if (screen != Screen::S4 && screen != Screen::S6 && screen != Screen::Eo && !(screen == Screen::S10 && wanted.store == Store::Motor))
        return;
    Worlds done = worlds;
    if (wanted.coverOff)
        done.set(coverAt(wanted.place));
    for (const std::string &wire : wanted.pulls)
        done.set(wireNamed(wire));
    if (screen == Screen::S4)
        done.set(Clip);
    if (screen == Screen::S6)
        done.set(Clamp);
    if (screen == Screen::S10)
        done.set(Ohms);
    worlds.add(done);
}

// What an honest person would not say is not said: the worlds in which it would be a lie drop out.
inline bool Player::possible(const GateEvent &event, const Screening &up)
{
    if (const auto *start = std::get_if<StartAnswered>(&event)) {
        if (start->answer == StartAnswer::Closed)
            for (const Fact cover : {CoverP, CoverQ})
                worlds.keep(cover, false);
        if (start->answer == StartAnswer::Open) {
            Worlds q = worlds;
            worlds.keep(CoverP, true);
            q.keep(CoverQ, true);
            worlds.add(q);
        }
    }
    if (const auto *reading = std::get_if<ProofReading>(&event); reading && up.phase == "work_point") {
        Worlds fed = worlds; // some pair of this place shows the volts; the first does for the test
        fed.keep(Mains, true);
        Worlds second = worlds;
        second.keep(SecondFeed, true);
        const bool atQ = state.proof && state.proof->place == "q";
        if (std::abs(reading->volts) < 2) {
            worlds.keep(Mains, false);
            if (atQ)
                worlds.keep(SecondFeed, false);
        } else {
            worlds = fed;
            if (atQ)
                worlds.add(second);
        }
    }
    if (const auto *charge = std::get_if<ChargeReading>(&event))
        worlds.keep(ChargeM, std::abs(charge->volts) >= 5);
    return !worlds.none();
}

inline bool Player::send(const GateEvent &event)
{
    if (takes(event))
        return take(event);
    state = asOf(std::move(state), now, m_rules);
    require(apply(state, event, now, m_rules) == state, "I21 a refused event changed something");
    return false;
}

inline bool Player::take(const GateEvent &event)
{
    expire();
    state = asOf(std::move(state), now, m_rules);
    const GateState before = state;
    const Screening up = state.up ? upNow() : Screening();
    const Worlds honest = worlds;
    if (!possible(event, up)) {
        worlds = honest;
        return false;
    }
    if (const auto *reading = std::get_if<ReadingTaken>(&event)) { // done without ever being on the screen
        checkStep(reading->request);
        act(reading->request);
    }
    state = apply(std::move(state), event, now, m_rules);
    after(event, before, up);
    told.last = now;
    return true;
}

inline void Player::lowerOnly(const GateState &before)
{
    const bool same = state.power == before.power, off = !isOn(before.power) && state.power == Power::Unknown;
    require(same || off || (isOn(before.power) && state.power == Power::Energized), "I11 undo or amend raised power");
    require(state.vetoes.size() >= before.vetoes.size(), "I11 undo or amend lifted a veto");
    require(!state.ack, "I11 an acknowledgement outlived undo or amend");
    const bool discharged = state.stored == before.stored || state.stored.discharged.empty();
    require(state.inside == before.inside && discharged, "I11 undo or amend changed what is inside");
}

} // namespace gatetest
