// A safety screen filled in: which form of it, which boxes, which ways on, how long to wait, which words.
#include "core/base/text.h"
#include "core/gate/inside.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

using Ids = std::vector<std::string>;

void boxes(Screening &out, const Ids &ids)
{
    for (const std::string &id : ids)
        out.boxes.push_back({id, {}});
}

void named(Screening &out, std::string_view sort, const Ids &names)
{
    for (const std::string &name : names)
        out.boxes.push_back({fmt::format("{}:{}", sort, name), name});
}

void note(Screening &out, bool holds, std::string_view name)
{
    if (holds)
        out.notes.emplace_back(name);
}

void unplug(Screening &out, const GateState &state)
{
    out.form = state.stillOut ? "still_out" : "full";
    note(out, state.stillOut, "still_out");
    boxes(out, state.stillOut ? Ids{"still_out"} : Ids{"plug_out", "in_sight"});
    out.ways = state.stillOut ? Ids{"confirm", "not_in_sight", "decline"} : Ids{"confirm", "cannot_reach_plug", "decline"};
}

void breakerOff(Screening &out, const GateState &state)
{
    boxes(out, {"off", "taped", "told"});
    out.ways = {"confirm", "decline"};
    if (!state.facts.hardWired)
        out.ways.insert(out.ways.begin() + 1, "can_reach_plug");
}

// hold, then readings: known source, every pair in V~, every pair in V with the straight line, known source.
void proveDead(Screening &out, const GateState &state, const StepRequest &wanted)
{
    const Ids pairs = state.proof ? state.proof->pairs : pairsOf(wanted.conductors);
    out.params["pairs"] = joined(pairs, ", ");
    if (!state.proof) {
        out.phase = "hold";
        boxes(out, {"have_all", "within_call"});
        out.ways = {"acknowledge", "decline"};
        return;
    }
    const std::size_t done = state.proof->done, count = pairs.size();
    out.phase = done == 0 ? "known_before" : done <= 2 * count ? "work_point" : "known_after";
    out.ways = {"reading", "decline"};
    if (out.phase == "work_point") {
        out.pair = pairs[(done - 1) % count];
        out.dc = done > count;
    }
}

void hold(Screening &out, std::string_view secondBox, const GateState &state, const StepRequest &wanted)
{
    boxes(out, {"have_all", std::string(secondBox)});
    out.ways = {"acknowledge", "decline", "never"};
    note(out, state.facts.frameIsNeutral, "frame_is_neutral");
    note(out, !wanted.pulls.empty(), "left_off");
    out.params["left_off"] = joined(wanted.pulls, ", ");
}

void putBack(Screening &out, const GateState &state, const StepRequest &wanted)
{
    const StepRequest *live = isLive(wanted.stepClass) && wanted.stepClass != StepClass::E2 ? &wanted : nullptr;
    const PutBack back = putBackExceptFor(state, live);
    out.form = live ? "except" : "full";
    named(out, "wire", back.wires);
    if (back.everyWire)
        boxes(out, {"every_wire"});
    boxes(out, {"meter_off", "nothing_trapped"});
    named(out, "cover", back.covers);
    if (back.everyCover)
        boxes(out, {live && live->coverOff ? "other_covers_on" : "covers_on"});
    out.ways = {"confirm", "decline"};
    out.params["wires"] = joined(back.wires, ", ");
    out.params["covers"] = joined(back.covers, ", ");
    note(out, !back.wires.empty(), "wires");
    note(out, back.everyWire, "every_wire");
    note(out, !back.covers.empty(), "covers");
    note(out, back.everyCover, "every_cover");
    note(out, live && live->coverOff, "except_cover");
    note(out, live && !live->pulls.empty(), "except_wires");
    if (live) {
        out.params["cover"] = live->place;
        out.params["left_off"] = joined(live->pulls, ", ");
    }
}

void makeOff(Screening &out, const GateState &state)
{
    const bool closed = state.power == Power::Running && closedUp(state.inside, kAllRules);
    const bool cord = !state.facts.hardWired;
    // an outlet was measured: the machine itself was not on
    const bool outlet = state.power == Power::Energized && !state.heat.on && cord && !state.plugOutOfReach && !state.notDead;
    boxes(out, outlet ? Ids{"probes_down", "still_out"} : Ids{"off"});
    if (state.inside.clips != Clips::None)
        boxes(out, {"clips_off"});
    if (closed)
        out.ways.emplace_back("control");
    if (cord)
        out.ways.emplace_back("plug");
    if (!outlet)
        out.ways.emplace_back("breaker");
    out.ways.emplace_back("decline");
    note(out, closed, "closed_up");
    note(out, outlet, "at_outlet");
    note(out, cord, "cord");
    note(out, !cord, "hard_wired");
    note(out, state.notDead, "not_dead");
    out.form = state.notDead ? "not_dead" : "";
}

void charge(Screening &out, const GateState &state, const StepRequest &wanted, Instant now)
{
    const bool motor = wanted.store == Store::Motor;
    const std::size_t good = state.stored.checking == wanted.storeName ? state.stored.good : 0;
    out.form = motor ? "motor" : "board";
    out.phase = !motor ? "wait" : good == 0 ? "reading" : good == 1 ? "again" : "confirm";
    const double wait = !motor ? kBoardWaitS : good == 0 ? kMotorWaitS : good == 1 ? kAgainWaitS : 0;
    out.waitS = std::max(0., wait - secondsSince(good == 1 ? state.stored.checkedAt : state.deadSince, now));
    out.ways = out.phase == "reading" || out.phase == "again" ? Ids{"reading", "decline"} : Ids{"confirm", "decline"};
    out.params["part"] = wanted.storeName;
    note(out, motor, "motor");
    note(out, !motor, "board");
}

void hotPart(Screening &out, const GateState &state, const StepRequest &wanted, Instant now)
{
    out.form = wanted.wantsHot ? "connector" : "wait";
    boxes(out, {wanted.wantsHot ? "only_connector" : "cool"});
    out.ways = {"confirm"};
    if (!wanted.wantsHot && !wanted.hotConnector.empty())
        out.ways.emplace_back("connector");
    out.ways.emplace_back("decline");
    if (!wanted.wantsHot && state.heat.at)
        out.waitS = std::max(0., wanted.hotWaitS - secondsSince(*state.heat.at, now));
    out.params["part"] = wanted.hotPart;
    out.params["connector"] = wanted.hotConnector;
    out.params["minutes"] = fmt::format("{:.0f}", wanted.hotWaitS / 60);
    out.params["time"] = state.heat.at ? isoTime(state.heat.at->wallMs).substr(11, 5) : "";
    if (!state.heat.at || longestSince(*state.heat.at, now) > kVeryHotS)
        std::erase(out.notes, "very_hot");
    note(out, wanted.wantsHot, "connector");
    note(out, !wanted.wantsHot, "wait");
}

void danger(Screening &out, const GateState &state)
{
    const bool over = state.power == Power::Stopped;
    const bool monoxide = state.danger.stopped == AlarmKind::CarbonMonoxide;
    if (out.screen == Screen::S12) {
        out.form = monoxide ? "co" : "gas";
        note(out, monoxide, "co");
        note(out, state.facts.proxy, "clerk");
        if (state.danger.gasPage)
            out.ways = {"not_gas", "mistake"};
        return;
    }
    out.form = over ? "over" : "";
    if (over)
        return;
    note(out, state.danger.alarm == AlarmKind::Shock, "shock");
    boxes(out, {"dry_unhurt_out"});
    out.ways = {"confirm", "decline"};
}

} // namespace

Screening inserted(Screen screen, const GateState &state, const StepRequest &wanted, Instant now)
{
    Screening out;
    out.what = Screening::What::Insert;
    out.stepClass = wanted.stepClass;
    out.screen = screen;
    out.params = wanted.params;
    out.notes = wanted.notes;
    const bool wall = screen == Screen::S3 || screen == Screen::S5 || state.facts.hardWired;
    if (isHold(screen) || screen == Screen::S3)
        out.params["category"] = shown(wall ? kWallMark : wanted.needs);
    switch (screen) {
    case Screen::S0:
        out.ways = {"alarm", "open", "closed"};
        break;
    case Screen::S1:
        unplug(out, state);
        break;
    case Screen::S2:
        breakerOff(out, state);
        break;
    case Screen::S3:
        proveDead(out, state, wanted);
        break;
    case Screen::S4:
        hold(out, "clips_on", state, wanted);
        break;
    case Screen::S5:
        hold(out, "unplugged", state, wanted);
        break;
    case Screen::S6:
        hold(out, "clamp_on", state, wanted);
        break;
    case Screen::Eo:
        hold(out, "power_off", state, wanted);
        break;
    case Screen::S7:
        out.form = wanted.stepClass == StepClass::AP && !wanted.inUse ? "touch" : "run";
        boxes(out, {"closed_up"});
        out.ways = {"confirm", "decline"};
        note(out, out.form == "run", "run");
        break;
    case Screen::S8:
        putBack(out, state, wanted);
        break;
    case Screen::S9:
        makeOff(out, state);
        break;
    case Screen::S10:
        charge(out, state, wanted, now);
        break;
    case Screen::S11:
        hotPart(out, state, wanted, now);
        break;
    case Screen::S12:
    case Screen::S14:
        danger(out, state);
        break;
    case Screen::S13:
        break;
    }
    return out;
}

} // namespace core
