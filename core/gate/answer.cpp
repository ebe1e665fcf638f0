// Whether a message may be taken now. Readings, answers and skips are judged by their own step's class and the gate as it
// is, never by what happens to be on the screen; an answer to a safety screen needs that screen to be up.
#include "core/gate/inside.h"

#include <algorithm>
#include <utility>

namespace core {
namespace {

using No = std::optional<Refusal>;

// The code for a screen that would have come first.
RefusalCode codeFor(Screen screen)
{
    switch (screen) {
    case Screen::S0: return RefusalCode::StartFirst;
    case Screen::S1:
    case Screen::S2: return RefusalCode::NotIsolated;
    case Screen::S3: return RefusalCode::NotProven;
    case Screen::S7: return RefusalCode::RunFirst;
    case Screen::S8: return RefusalCode::CloseUp;
    case Screen::S9: return RefusalCode::OffFirst;
    case Screen::S10: return RefusalCode::ChargeFirst;
    case Screen::S11: return RefusalCode::HotFirst;
    case Screen::S12: return RefusalCode::Stopped;
    case Screen::S13: return RefusalCode::NotForYou;
    case Screen::S14: return RefusalCode::Alarm;
    default: return RefusalCode::NotAcknowledged;
    }
}

struct Judge
{
    const GateState &state;
    Instant now;
    const Rules &rules;

    bool isScreenUp(Screen screen) const { return state.up && state.up->screen == screen; }
    Screening upNow() const { return inserted(state.up->screen, state, state.up->request, now); }
    No needs(bool holds, RefusalCode code) const { return holds ? No() : No(refusal(code)); }

    No boxesTicked(const Screening &up, const std::vector<std::string> &ticked) const
    {
        const auto has = [&](const Box &box) { return std::ranges::find(ticked, box.id) != ticked.end(); };
        return needs(std::ranges::all_of(up.boxes, has) || !rules.boxesAll, RefusalCode::Boxes);
    }
    No stillAsked() const;
    No waited(const Screening &up) const { return needs(up.waitS <= 0 || !rules.waitsHold, RefusalCode::Wait); }
    No wayOn(const Confirmed &event, const Screening &up) const;
    No onlyIfShown(const StepRequest &request) const;

    // the log itself, and what lowers: always taken
    template<class Event>
    No operator()(const Event &) const { return std::nullopt; }
    No operator()(const GateStarted &) const { return needs(state.events == 0, RefusalCode::NotNow); }
    No operator()(const StartAnswered &) const { return needs(isScreenUp(Screen::S0), RefusalCode::NotNow); }
    No operator()(const Confirmed &event) const;
    No operator()(const Acknowledged &event) const;
    No operator()(const Declined &event) const;
    No operator()(const DetourTaken &event) const;
    No operator()(const ProofReading &event) const;
    No operator()(const ChargeReading &) const;
    No operator()(const ReadingTaken &event) const { return onlyIfShown(event.request); }
    No operator()(const NotGas &event) const;
    No operator()(const PressedByMistake &) const { return needs(state.danger.gasPage, RefusalCode::NotNow); }
};

No Judge::onlyIfShown(const StepRequest &request) const
{
    const Screening first = screenFor(state, request, now, rules);
    switch (first.what) {
    case Screening::What::Show: return std::nullopt;
    case Screening::What::Refuse: return first.refusal;
    case Screening::What::Tests: return refusal(RefusalCode::FrameCheck);
    case Screening::What::Insert: break;
    }
    return refusal(codeFor(first.screen));
}

// The world may have changed since the screen came up: it is asked for once more as if it came up now.
No Judge::stillAsked() const
{
    const StepRequest &wanted = state.up->request;
    const bool atVerdict = wanted.step == verdictRequest().step;
    if ((atVerdict && isScreenUp(Screen::S8)) || !rules.screenStillUp)
        return std::nullopt;
    const Screening again = atVerdict ? endOfWalk(state, wanted, now, rules) : screenFor(state, wanted, now, rules);
    if (again.what == Screening::What::Refuse)
        return again.refusal;
    const bool same = again.what == Screening::What::Insert && again.screen == state.up->screen;
    return needs(same, RefusalCode::LeftScreen);
}

// The way a screen was passed must be one that it offers.
No Judge::wayOn(const Confirmed &event, const Screening &up) const
{
    if (event.screen == Screen::S9) {
        const std::string_view way = event.way == Way::Control ? "control" : event.way == Way::Plug ? "plug" : "breaker";
        const bool loose = event.way == Way::Control && !rules.offAtControlOnlyClosed;
        const bool cord = event.way == Way::Plug && !rules.plugOnlyWithCord;
        const bool known = event.way == Way::Control || event.way == Way::Plug || event.way == Way::Breaker;
        return needs(known && (loose || cord || std::ranges::find(up.ways, way) != up.ways.end()), RefusalCode::NotNow);
    }
    if (event.screen == Screen::S1)
        return needs(!state.facts.hardWired || !rules.plugOnlyWithCord, RefusalCode::NotNow);
    if (event.screen == Screen::S8)
        return needs(isDead(state.power), RefusalCode::NotIsolated);
    const bool connector = event.screen == Screen::S11 && event.way == Way::Connector;
    return needs(event.way == Way::Plain || (connector && !state.up->request.hotConnector.empty()), RefusalCode::NotNow);
}

No Judge::operator()(const Confirmed &event) const
{
    if (isScreenUp(Screen::S3) && event.screen == Screen::S3)
        return refusal(RefusalCode::ReadingNeeded);
    if (!isScreenUp(event.screen) && rules.screenStillUp)
        return refusal(RefusalCode::NotNow);
    if (!state.up || isHold(event.screen) || event.screen == Screen::S0 || event.screen == Screen::S12)
        return refusal(RefusalCode::NotNow);
    if (const No no = stillAsked())
        return no;
    const Screening up = upNow();
    if (const No no = wayOn(event, up))
        return no;
    if (event.screen == Screen::S11 && event.way == Way::Connector)
        return std::nullopt; // it reaches no hot part, so there is nothing to wait for
    if (const No no = boxesTicked(up, event.boxes))
        return no;
    if (event.screen == Screen::S10 && (up.phase == "reading" || up.phase == "again"))
        return refusal(RefusalCode::ReadingNeeded);
    return waited(up);
}

No Judge::operator()(const Acknowledged &event) const
{
    const bool up = state.up && (isHold(state.up->screen) || (isScreenUp(Screen::S3) && !state.proof));
    if (!up)
        return refusal(RefusalCode::LeftScreen);
    if (!event.step.empty() && event.step != state.up->request.step && event.step != state.up->request.test)
        return refusal(RefusalCode::OtherStep);
    if (const No no = stillAsked())
        return no;
    return boxesTicked(upNow(), event.boxes);
}

No Judge::operator()(const Declined &event) const
{
    if (!state.up && !state.shown)
        return refusal(RefusalCode::NotNow);
    const bool holdUp = state.up && (isHold(state.up->screen) || state.up->screen == Screen::S3);
    return needs(!event.never || holdUp, RefusalCode::NotNow);
}

No Judge::operator()(const DetourTaken &event) const
{
    switch (event.detour) {
    case Detour::CannotReachPlug: return needs(isScreenUp(Screen::S1) && !state.stillOut, RefusalCode::NotNow);
    case Detour::CanReachPlug: return needs(isScreenUp(Screen::S2) && !state.facts.hardWired, RefusalCode::NotNow);
    case Detour::NotInSight: return needs(isScreenUp(Screen::S1) && state.stillOut, RefusalCode::NotNow);
    }
    return refusal(RefusalCode::NotNow);
}

No Judge::operator()(const ProofReading &event) const
{
    if (!isScreenUp(Screen::S3) || !state.proof)
        return refusal(RefusalCode::NotNow);
    return needs(event.pair.empty() || event.pair == upNow().pair, RefusalCode::WrongPair);
}

No Judge::operator()(const ChargeReading &) const
{
    if (!isScreenUp(Screen::S10) || state.up->request.store != Store::Motor)
        return refusal(RefusalCode::NotNow);
    const Screening up = upNow();
    return up.phase == "confirm" ? refusal(RefusalCode::NotNow) : waited(up);
}

No Judge::operator()(const NotGas &event) const
{
    const bool another = event.kind != AlarmKind::Gas && event.kind != AlarmKind::CarbonMonoxide;
    return needs(state.danger.gasPage && another, state.power == Power::Stopped ? RefusalCode::Stopped : RefusalCode::NotNow);
}

// While danger is on the page only its own answers count; what merely tells the log is always taken.
bool isAnswer(const GateEvent &event)
{
    return !std::holds_alternative<GateStarted>(event) && !std::holds_alternative<ScreenShown>(event) &&
           !std::holds_alternative<StepShown>(event) && !std::holds_alternative<WentAway>(event);
}

} // namespace

std::optional<Refusal> mayAnswer(const GateState &state, const GateEvent &event, Instant now, const Rules &rules)
{
    const Present asIs(state, now, rules);
    const GateState &present = asIs.state();
    const bool leavesStop = std::holds_alternative<NotGas>(event) || std::holds_alternative<PressedByMistake>(event);
    if (present.power == Power::Stopped && rules.stoppedForGood && isAnswer(event) && !leavesStop)
        return refusal(RefusalCode::Stopped);
    const bool answersAlarm = std::holds_alternative<Alarm>(event) || std::holds_alternative<Declined>(event) ||
                              std::holds_alternative<Confirmed>(event);
    if (present.danger.alarm && rules.dangerFirst && isAnswer(event) && !answersAlarm)
        return refusal(RefusalCode::Alarm);
    return std::visit(Judge{present, now, rules}, event);
}

} // namespace core
