// What comes up when a step is wanted: the questions are asked in the order of danger, and the first that stands in the way
// is what the person sees.
#include "core/gate/inside.h"

#include <algorithm>
#include <utility>

namespace core {
namespace {

using Maybe = std::optional<Screening>;

struct Question
{
    const GateState &state;
    const StepRequest &wanted;
    Instant now;
    const Rules &rules;

    Screening insert(Screen screen) const { return inserted(screen, state, wanted, now); }
    Screening refuse(RefusalCode code) const { return refuse(refusal(code)); }
    Screening refuse(Refusal why) const
    {
        Screening out;
        out.what = Screening::What::Refuse;
        out.stepClass = wanted.stepClass;
        out.refusal = std::move(why);
        return out;
    }
    Screening show() const
    {
        Screening out;
        out.stepClass = wanted.stepClass;
        out.params = wanted.params;
        out.notes = wanted.notes;
        return out;
    }

    bool holdsRun() const { return state.power == Power::Running && state.ack && state.ack->run && ofThisProcess(); }
    bool ofThisProcess() const { return state.ack->request.process == wanted.process && state.ack->meter == state.meter.id; }
    bool ownAck() const
    {
        return state.ack && !state.ack->run && ofThisProcess() && (sameStep(state.ack->request, wanted) || !rules.ownHold);
    }

    Maybe danger() const;
    Maybe whileOn() const;
    Maybe notAtAll() const;
    Maybe isolate() const;
    Maybe prove() const;
    Maybe deadHere() const;
    Maybe powerAllowed() const;
    Maybe closeUp(bool exceptForThis) const;
    Screening look() const;
    Screening touch() const;
    Screening deadWork() const;
    Screening run() const;
    Maybe liveAllowed() const;
    Screening live() const;
    Screening answer() const;
};

Maybe Question::danger() const
{
    if (!rules.dangerFirst)
        return std::nullopt;
    if (state.power == Power::Stopped) {
        const AlarmKind why = state.danger.stopped.value_or(AlarmKind::Unsaid);
        return insert(why == AlarmKind::Gas || why == AlarmKind::CarbonMonoxide ? Screen::S12 : Screen::S14);
    }
    if (state.danger.alarm)
        return insert(Screen::S14);
    return std::nullopt;
}

// On: its own step, or S9.
Maybe Question::whileOn() const
{
    if (!isOn(state.power) || !rules.offFirst)
        return std::nullopt;
    if (state.proof)
        return insert(Screen::S3);
    const bool ownReset = wanted.stepClass == StepClass::AP && state.ack && sameStep(state.ack->request, wanted) &&
                          (isShown(state, wanted) || !state.resets.contains(wanted.touches) || !rules.oneReset);
    const bool mayRun = (wanted.stepClass == StepClass::R || ownReset) && !powerAllowed(); // nothing alarming was seen meanwhile
    if (holdsRun() && mayRun && !wanted.coverOff)
        return show();
    if (state.power == Power::Energized && isLive(wanted.stepClass) && ownAck())
        return show();
    if (state.refused.off)
        return refuse(RefusalCode::MayBeOn);
    return insert(Screen::S9);
}

// What is shown to nobody, and what contradicts itself.
Maybe Question::notAtAll() const
{
    if (wanted.stepClass == StepClass::X && rules.refuseZones) {
        Screening out = refuse(RefusalCode::NotForYou);
        out.screen = Screen::S13;
        out.form = wanted.zone;
        return out;
    }
    constexpr StepClass kOutside[] = {StepClass::A, StepClass::AP, StepClass::R, StepClass::E2};
    const bool outside = std::ranges::find(kOutside, wanted.stepClass) != std::end(kOutside);
    if (wanted.stepClass == StepClass::P || (outside && wanted.coverOff))
        return refuse(RefusalCode::Unclear);
    return std::nullopt;
}

// The way to dead: the cord, or the breaker and then a proof. nullopt never: there is always a screen or a refusal.
Maybe Question::isolate() const
{
    if (state.refused.isolation)
        return refuse(RefusalCode::IsolationDeclined);
    const bool byCord = !state.facts.hardWired && !state.plugOutOfReach;
    if (byCord || !rules.plugOnlyWithCord)
        return insert(Screen::S1);
    if (state.proofsFailed >= 2)
        return refuse(RefusalCode::NotDead);
    if (const Maybe no = prove(); no->what == Screening::What::Refuse)
        return no;
    return state.power == Power::OffUnproven || state.power == Power::ProvenDead ? prove() : insert(Screen::S2);
}

// Proving dead is itself work on what may be live, with a hold point of its own.
Maybe Question::prove() const
{
    if (state.refused.never && rules.neverHolds)
        return refuse(RefusalCode::Never);
    if (!state.facts.provingOn)
        return refuse(RefusalCode::ProvingOff);
    if (!state.facts.textsChecked)
        return refuse(RefusalCode::Untranslated);
    if (const auto why = whyUnfit(state.meter, kWallMark); why && rules.meterMustFit)
        return refuse(refusal(RefusalCode::MeterUnfit, *why));
    if (wanted.conductors.size() < 2)
        return refuse(RefusalCode::Unclear);
    return insert(Screen::S3);
}

Maybe Question::deadHere() const
{
    if (!isDead(state.power) && rules.deadWorkNeedsDead)
        return isolate();
    const bool otherPlace = state.power == Power::ProvenDead && wanted.coverOff && wanted.place != state.provenPlace;
    if (otherPlace && rules.proofIsOfThePlace)
        return isolate();
    return std::nullopt;
}

Maybe Question::powerAllowed() const
{
    if (!state.vetoes.empty() && rules.noPowerAfterVeto)
        return refuse(RefusalCode::Veto);
    return std::nullopt;
}

Maybe Question::closeUp(bool exceptForThis) const
{
    if (exceptForThis ? closedExceptFor(state.inside, wanted, rules) : closedUp(state.inside, rules))
        return std::nullopt;
    return isDead(state.power) ? insert(Screen::S8) : isolate();
}

Screening Question::look() const
{
    if (isDead(state.power) || state.inside.covers == Covers::Closed || !rules.lookNeedsClosedOrDead)
        return show();
    return state.inside.covers == Covers::Unknown ? insert(Screen::S0) : *isolate();
}

Screening Question::touch() const
{
    if (const Maybe no = powerAllowed())
        return *no;
    if (isShown(state, wanted))
        return show();
    if (state.refused.isolation)
        return refuse(RefusalCode::IsolationDeclined);
    if (state.resets.contains(wanted.touches) && rules.oneReset)
        return refuse(RefusalCode::OneReset);
    if (const Maybe first = closeUp(false))
        return *first;
    return !wanted.inUse && ownAck() ? show() : insert(Screen::S7);
}

Screening Question::deadWork() const
{
    if (const Maybe first = deadHere())
        return *first;
    if (wanted.stepClass == StepClass::DS && rules.chargeFirst && !state.stored.discharged.contains(wanted.storeName)) {
        const auto staysCharged = [](const Veto &veto) { return veto.reason == VetoReason::StaysCharged; };
        const bool stays = std::ranges::any_of(state.vetoes, staysCharged);
        return stays ? refuse(RefusalCode::StillCharged) : insert(Screen::S10);
    }
    const bool hot = !wanted.hotPart.empty() && state.heat.at && !state.heat.cooled.contains(wanted.hotPart) &&
                     state.heat.connectorFor != placedKey(wanted);
    return hot && rules.heatFirst ? insert(Screen::S11) : show();
}

Screening Question::run() const
{
    if (const Maybe no = powerAllowed())
        return *no;
    if (state.refused.isolation)
        return refuse(RefusalCode::IsolationDeclined);
    if (const Maybe first = closeUp(false))
        return *first;
    return insert(Screen::S7);
}

Maybe Question::liveAllowed() const
{
    if (const Maybe no = powerAllowed())
        return no;
    if (state.refused.never && rules.neverHolds)
        return refuse(RefusalCode::Never);
    if (!state.facts.energizedOn && rules.energizedIsTurnedOn)
        return refuse(RefusalCode::EnergizedOff);
    if (!state.facts.textsChecked)
        return refuse(RefusalCode::Untranslated);
    const bool atWall = wanted.stepClass == StepClass::E2 || state.facts.hardWired;
    const MeterMark needed = atWall ? kWallMark : wanted.needs;
    const auto why = wanted.stepClass == StepClass::EO ? std::nullopt : whyUnfit(state.meter, needed);
    if (why && rules.meterMustFit)
        return refuse(refusal(RefusalCode::MeterUnfit, *why));
    if (wanted.stepClass == StepClass::E2 && (state.facts.hardWired || state.plugOutOfReach) && rules.faceOnlyUnplugged)
        return refuse(RefusalCode::NotUnplugged);
    return std::nullopt;
}

Screening Question::live() const
{
    if (const Maybe no = liveAllowed())
        return *no;
    const bool face = wanted.stepClass == StepClass::E2;
    Screening tests;
    for (const std::string &test : state.facts.frameTests) {
        const auto read = state.frameRead.find(test);
        if (!wanted.needsFrameCheck || face || !rules.frameFirst)
            break;
        if (std::ranges::find(wanted.frameNotHere, test) != wanted.frameNotHere.end())
            continue;
        if (state.refused.frame || (read != state.frameRead.end() && !read->second))
            return refuse(RefusalCode::FrameCheck);
        if (read == state.frameRead.end())
            tests.tests.push_back(test);
    }
    if (!tests.tests.empty()) {
        tests.what = Screening::What::Tests;
        tests.stepClass = StepClass::D;
        return tests;
    }
    if (face && state.power != Power::Isolated && rules.faceOnlyUnplugged)
        return *isolate();
    if (const Maybe first = !face && rules.holdOnlyDead ? deadHere() : std::nullopt)
        return *first;
    if (const Maybe first = closeUp(!face))
        return *first;
    switch (wanted.stepClass) {
    case StepClass::E1: return insert(Screen::S4);
    case StepClass::E2: return insert(Screen::S5);
    case StepClass::E3: return insert(Screen::S6);
    default: return insert(Screen::Eo);
    }
}

Screening Question::answer() const
{
    if (const Maybe first = danger())
        return *first;
    if (const Maybe first = whileOn())
        return *first;
    if (!state.asked && rules.startFirst)
        return insert(Screen::S0);
    if (const Maybe no = notAtAll())
        return *no;
    switch (wanted.stepClass) {
    case StepClass::A: return look();
    case StepClass::AP: return touch();
    case StepClass::R: return run();
    case StepClass::E1:
    case StepClass::E2:
    case StepClass::E3:
    case StepClass::EO: return live();
    default: return deadWork();
    }
}

} // namespace

Screening screenFor(const GateState &state, const StepRequest &wanted, Instant now, const Rules &rules)
{
    const Present present(state, now, rules);
    return Question{present.state(), wanted, now, rules}.answer();
}

Screening endOfWalk(const GateState &state, const StepRequest &verdict, Instant now, const Rules &rules)
{
    const Present asIs(state, now, rules);
    const GateState &present = asIs.state();
    const Question question{present, verdict, now, rules};
    if (const Maybe first = question.danger())
        return *first;
    const bool leaveIt = present.refused.off || present.refused.isolation;
    if (const Maybe first = leaveIt ? std::nullopt : question.whileOn())
        return *first;
    if (leaveIt || !present.asked || isDead(present.power) || putBackList(present).empty())
        return question.show();
    const Screening first = *question.isolate();
    return first.what == Screening::What::Refuse ? question.show() : first;
}

StepRequest verdictRequest()
{
    StepRequest request;
    request.step = "verdict";
    return request;
}

bool isUp(const GateState &state, const Screening &screening, const StepRequest &wanted)
{
    return state.up && state.up->screen == screening.screen && sameStep(state.up->request, wanted);
}

bool isShown(const GateState &state, const StepRequest &wanted)
{
    return state.shown && sameStep(*state.shown, wanted);
}

} // namespace core
