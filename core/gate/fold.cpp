// The fold: what each event does to the gate. What is not said here leaves power as it is or lowers it; undo and amend
// change what is believed and never what was done.
#include "core/gate/fold.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace core {
namespace {

bool isReset(const std::string &touches) { return touches == "breaker" || touches == "gfci"; }

} // namespace

void Fold::operator()(const GateStarted &event) const
{
    state.facts = event.facts;
    state.meter = event.meter;
}

// From here the person may already be doing what the screen says.
void Fold::operator()(const ScreenShown &event) const
{
    state.up = ScreenUp{event.screen, event.request};
    state.shown.reset();
    if (!rules.holdFlags)
        return;
    if (event.screen == Screen::S4 || event.screen == Screen::S6)
        reachIn(state.inside, event.request, Clips::Live);
    else if (event.screen == Screen::Eo)
        reachIn(state.inside, event.request, state.inside.clips);
    else if (event.screen == Screen::S10 && event.request.store == Store::Motor)
        reachIn(state.inside, event.request, Clips::Dead);
}

void Fold::show(const StepRequest &request) const
{
    if (isDeadWork(request.stepClass))
        reachIn(state.inside, request, Clips::Dead);
    else if (request.stepClass == StepClass::EO)
        reachIn(state.inside, request, state.inside.clips);
    else if (isLive(request.stepClass))
        reachIn(state.inside, request, Clips::Live);
}

void Fold::operator()(const StepShown &event) const
{
    const StepRequest &request = event.request;
    state.up.reset();
    state.shown = request;
    if (rules.shownFlags)
        show(request);
    touched(request);
}

// Whatever the plug, breaker or switch was before, it is unknown now.
void Fold::touched(const StepRequest &request) const
{
    if (request.stepClass != StepClass::AP)
        return;
    if (isReset(request.touches))
        state.resets.insert(request.touches);
    if (!isOn(state.power) && state.power != Power::Stopped) {
        state.power = Power::Unknown;
        state.ack.reset();
    }
}

void Fold::operator()(const StartAnswered &event) const
{
    state.asked = true;
    nothingOnScreen();
    if (event.answer == StartAnswer::Alarm) {
        (*this)(Alarm{AlarmKind::Unsaid});
        return;
    }
    Inside &inside = state.inside;
    if (inside.covers != Covers::Unknown)
        return;
    const bool closed = event.answer == StartAnswer::Closed;
    inside.covers = closed ? Covers::Closed : Covers::Open;
    inside.coversKnown = closed;
    if (closed)
        inside.opened.clear();
    if (closed && (inside.untouched || !rules.dailyOnlyUntouched)) {
        inside.wiresKnown = true;
        inside.pulled.clear();
        inside.clips = Clips::None;
    } else if (!closed) {
        inside.untouched = false;
    }
}

void Fold::madeOff(const Confirmed &event) const
{
    const bool clipsOff = std::ranges::find(event.boxes, "clips_off") != event.boxes.end();
    if (clipsOff) {
        state.inside.clips = Clips::None;
        state.inside.clipsFor.reset();
    }
    state.ack.reset();
    state.proof.reset();
    state.notDead = false;
    state.refused.off = false;
    state.heat.on = false;
    if (event.way == Way::Plug)
        dead(Power::Isolated);
    else
        state.power = event.way == Way::Breaker ? Power::OffUnproven : Power::Unknown;
    if (event.way == Way::Breaker && !state.facts.hardWired)
        state.plugOutOfReach = true;
}

void Fold::putBack() const
{
    const StepRequest &live = state.up->request;
    Inside &inside = state.inside;
    const bool except = isLive(live.stepClass) && live.stepClass != StepClass::E2;
    std::set<std::string> off;
    for (const std::string &wire : live.pulls)
        if (except && (!inside.wiresKnown || inside.pulled.contains(wire)))
            off.insert(wire);
    const bool open = except && live.coverOff && inside.covers != Covers::Closed;
    inside.pulled = std::move(off);
    inside.wiresKnown = true;
    inside.coversKnown = true;
    inside.opened.clear();
    if (open)
        inside.opened.insert(live.place);
    inside.covers = open ? Covers::Open : Covers::Closed;
    inside.clips = Clips::None;
    inside.clipsFor.reset();
}

void Fold::runs() const
{
    const StepRequest request = state.up->request;
    state.ack = Acknowledgement{request, state.meter.id, at, state.events, true};
    if (request.stepClass == StepClass::AP && !request.inUse) {
        state.ack->run = false;
        return;
    }
    state.power = Power::Running;
    heats();
}

void Fold::operator()(const Confirmed &event) const
{
    switch (event.screen) {
    case Screen::S1:
        dead(Power::Isolated);
        state.refused.isolation = false;
        break;
    case Screen::S2: state.power = Power::OffUnproven; break;
    case Screen::S7: runs(); break;
    case Screen::S8: putBack(); break;
    case Screen::S9: madeOff(event); break;
    case Screen::S10:
        state.stored.discharged.insert(state.up->request.storeName);
        state.stored.checking.clear();
        state.stored.good = 0;
        break;
    case Screen::S11:
        if (state.up->request.wantsHot || event.way == Way::Connector)
            state.heat.connectorFor = placedKey(state.up->request);
        else
            state.heat.cooled.insert(state.up->request.hotPart);
        break;
    case Screen::S14: state.danger.alarm.reset(); break;
    default: break;
    }
    state.up.reset();
}

// Its second step is to open the cover.
void Fold::proofStarts(const StepRequest &request) const
{
    state.power = Power::Energized;
    state.proof = Proof{request.place, state.meter.id, pairsOf(request.conductors), 0, at};
    state.provenPlace.clear();
    StepRequest open = request;
    open.pulls.clear();
    reachIn(state.inside, open, Clips::Dead);
    if (!request.coverOff) { // to measure somewhere a cover comes off, and which one was not said
        state.inside.covers = Covers::Open;
        state.inside.coversKnown = false;
    }
}

void Fold::operator()(const Acknowledged &) const
{
    const ScreenUp up = *state.up;
    if (up.screen == Screen::S3) {
        proofStarts(up.request);
        return;
    }
    state.ack = Acknowledgement{up.request, state.meter.id, at, state.events, false};
    state.power = Power::Energized;
    if (up.screen != Screen::S5) // at the outlet's face the machine itself is unplugged
        heats();
    state.up.reset();
}

void Fold::operator()(const Declined &event) const
{
    if (state.up) {
        const Screen screen = state.up->screen;
        if (screen == Screen::S0)
            (*this)(StartAnswered{StartAnswer::Open});
        if (screen == Screen::S1 || screen == Screen::S2 || screen == Screen::S3)
            state.refused.isolation = true;
        if (screen == Screen::S9)
            state.refused.off = true;
        if (screen == Screen::S14 && state.danger.alarm) {
            state.danger.stopped = state.danger.alarm;
            state.danger.alarm.reset();
            state.power = Power::Stopped;
        }
    }
    state.refused.never = state.refused.never || event.never;
    nothingOnScreen();
}

void Fold::operator()(const DetourTaken &event) const
{
    if (event.detour == Detour::NotInSight)
        state.stillOut = false;
    else
        state.plugOutOfReach = event.detour == Detour::CannotReachPlug;
    state.up.reset();
}

void Fold::operator()(const ProofReading &event) const
{
    Proof &proof = *state.proof;
    const std::size_t count = proof.pairs.size();
    const bool known = proof.done == 0 || proof.done > 2 * count;
    const double limit = proof.done <= count ? kDeadAcV : kDeadDcV;
    const bool source = isKnownSource(std::abs(event.volts)) || !rules.knownSourceInBand;
    const bool below = std::abs(event.volts) < limit || !rules.pairsBelowLimit;
    if (event.settled && (known ? source : below)) {
        if (++proof.done < 2 * count + 2)
            return;
        state.provenPlace = proof.place;
        state.proof.reset();
        state.up.reset();
        dead(Power::ProvenDead);
        state.proofsFailed = 0;
        return;
    }
    if (proof.done == 0)
        return; // meter or source unfit: another outlet, or leave it
    if (!known) {
        ++state.proofsFailed;
        state.notDead = true;
    }
    state.proof.reset();
    state.up.reset();
}

void Fold::operator()(const ChargeReading &event) const
{
    const StepRequest &request = state.up->request;
    Stored &stored = state.stored;
    if (event.settled && (std::abs(event.volts) < kChargeLimitV || !rules.chargeBelowLimit)) {
        stored.good = stored.checking == request.storeName ? stored.good + 1 : 1;
        stored.checking = request.storeName;
        stored.checkedAt = at;
        return;
    }
    stored.good = 0;
    stored.checking.clear();
    veto({VetoReason::StaysCharged, {}, false});
    nothingOnScreen();
}

void Fold::operator()(const ReadingTaken &event) const
{
    const StepRequest &request = event.request;
    show(request);
    touched(request);
    nothingOnScreen(); // the next look at it is a step shown anew
    const auto &frame = state.facts.frameTests;
    const bool ofFrame = std::ranges::find(frame, request.test) != frame.end();
    if (ofFrame && event.outcome != Outcome::Part)
        state.frameRead[request.test] = event.outcome == Outcome::Good;
    if (event.outcome == Outcome::Good)
        std::erase_if(state.vetoes, [&](const Veto &v) { return v.repaired && !v.test.empty() && v.test == request.test; });
    if (event.veto)
        veto({*event.veto, request.test, false});
    if (isLive(request.stepClass) && rules.oneReading)
        spend(state);
}

namespace {

// What may stand between an acknowledgement and its reading. Everything else spends it.
bool keepsAck(const GateState &state, const GateEvent &event)
{
    if (const auto *screen = std::get_if<ScreenShown>(&event))
        return state.power == Power::Running || (state.proof && screen->screen == Screen::S3);
    if (const auto *step = std::get_if<StepShown>(&event))
        return state.power == Power::Running || (state.ack && sameStep(state.ack->request, step->request));
    if (std::holds_alternative<ReadingTaken>(event) || std::holds_alternative<Confirmed>(event) ||
        std::holds_alternative<ProofReading>(event))
        return true; // they say themselves what becomes of it
    return std::holds_alternative<WentAway>(event) || std::holds_alternative<MeterChanged>(event) ||
           std::holds_alternative<Alarm>(event) || std::holds_alternative<Acknowledged>(event);
}

} // namespace

GateState apply(GateState state, const GateEvent &event, Instant at, const Rules &rules)
{
    state = asOf(std::move(state), at, rules);
    if (mayAnswer(state, event, at, rules))
        return state;
    const bool heats = state.heat.on; // until this event, whatever it is
    const bool wasDead = isDead(state.power);
    if (rules.otherEventsSpend && !keepsAck(state, event))
        spend(state);
    ++state.events;
    std::visit(Fold{state, at, rules}, event);
    if (heats)
        state.heat.at = at;
    if (wasDead && !isDead(state.power) && rules.powerCharges)
        state.stored = {}; // whatever was discharged may be charged again
    state.last = at;
    return state;
}

} // namespace core
