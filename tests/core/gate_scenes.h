#pragma once
// What is explored together, and everything a client could send.
#include "tests/core/gate_player_after.h"

namespace gatetest {

struct Scene // what is explored together; small enough to be explored whole
{
    std::string name;
    std::vector<StepRequest> steps;
    std::vector<GateEvent> events; // besides the answers to what is on the screen
    bool hardWired = false;
    bool declines = false; // screens and steps are declined, plugs are out of reach
    std::vector<std::pair<double, double>> jumps{}; // seconds of wall and running clock in which nothing is said
    bool frame = false;
    bool energized = true;
};

inline StepRequest step(std::string id, StepClass stepClass, std::string place = {}, std::vector<std::string> pulls = {})
{
    StepRequest r;
    r.step = r.test = std::move(id);
    r.process = "p1";
    r.stepClass = stepClass;
    r.coverOff = !place.empty();
    r.place = std::move(place);
    r.pulls = std::move(pulls);
    r.conductors = {"L", "G"};
    return r;
}

inline StepRequest stored(Store store)
{
    StepRequest r = step(store == Store::Motor ? "cm" : "cb", StepClass::DS, "p", {"w1"});
    r.store = store;
    r.storeName = store == Store::Motor ? "m" : "b";
    return r;
}

inline StepRequest touching(std::string id, bool inUse)
{
    StepRequest r = step(std::move(id), StepClass::AP);
    r.touches = "breaker";
    r.inUse = inUse;
    return r;
}

inline StepRequest hot(std::string id)
{
    StepRequest r = step(std::move(id), StepClass::D, "p");
    r.hotPart = "h";
    r.hotWaitS = 900;
    return r;
}

inline StepRequest nearFrame(std::string id, StepClass stepClass, std::string place)
{
    StepRequest r = step(std::move(id), stepClass, std::move(place));
    r.needsFrameCheck = true;
    return r;
}

inline const StepRequest kLook = step("a", StepClass::A), kD1 = step("d1", StepClass::D, "p", {"w1"}), kD2 = step("d2", StepClass::D, "q", {"w2"});
inline const StepRequest kRun = step("r", StepClass::R), kClips = step("e1", StepClass::E1, "p", {"w1"}), kFace = step("e2", StepClass::E2);

inline std::vector<Scene> scenes()
{
    const GateEvent fault = ReadingTaken{kD1, Outcome::Failed, VetoReason::GroundFault}, gone = WentAway{}, gas = Alarm{AlarmKind::Gas}, smoke = Alarm{AlarmKind::Smoke};
    const StepRequest e3 = step("e3", StepClass::E3), eo = step("eo", StepClass::EO, "q"), x = step("x", StepClass::X, "p"), frame = step("frame", StepClass::D);
    const MeterFit unfit{"m2", {{2, 300}}, true, false, false, false};
    const std::vector<std::pair<double, double>> jumps{{1200, 1200}, {2400, 2400}, {1200, 0}};
    return {
        {"plug", {kLook, kD1, kFace}, {gone, Undone{}}},
        {"two places", {kD1, kD2, kRun}, {}},
        {"one place", {kD1, kRun}, {gone}},
        {"pins", {frame, kRun}, {gone}},
        {"clips", {kD1, kClips, x}, {gone, Amended{}, Skipped{}}},
        {"refuse", {kLook, kD1, kFace}, {Chosen{}}, false, true},
        {"clamp", {kD2, e3, eo}, {gone, Reported{}}},
        {"danger", {kD1, kRun}, {gas, smoke, NotGas{AlarmKind::Smoke}, PressedByMistake{}}},
        {"repair", {kD1, kRun}, {fault, RepairTold{"d1"}, Undone{}}},
        {"touch", {kD1, touching("ap", false), touching("ar", true)}, {gone}},
        {"touch charge", {touching("ap", false), stored(Store::Board)}, {smoke}, false, false, {{1200, 1200}}},
        {"charge", {stored(Store::Motor), stored(Store::Board)}, {gone}, false, false, {{1200, 1200}}},
        {"heat", {hot("h1"), kRun, kLook}, {Undone{}}, false, false, {{1200, 1200}}},
        {"time", {kD1, kClips}, {}, false, false, jumps},
        {"run time", {kLook, kRun}, {}, false, false, {{1200, 1200}, {2400, 2400}}},
        {"frame", {frame, nearFrame("f1", StepClass::E1, "p")}, {Skipped{"frame"}, Chosen{}, Amended{false, true, "frame", {}}}, false, false, {}, true},
        {"not turned on", {kD1, kFace}, {EnergizedTurned{false, true}}, false, false, {}, false, false},
        {"wired", {kD1, kD2}, {gone, Amended{true, true, {}, {}}}, true},
        {"wired refuse", {kLook, kD1}, {Chosen{}}, true, true},
        {"wired break", {kLook, kRun}, {gone}, true},
        {"wired live", {kD1, kClips, kFace}, {MeterChanged{unfit}, MeterChanged{goodMeter()}, MeterChanged{goodMeter("m3")}}, true},
        {"wired time", {kD1}, {}, true, false, jumps},
    };
}

inline std::vector<std::string> allBoxes(const Screening &screening)
{
    std::vector<std::string> ids;
    for (const Box &box : screening.boxes)
        ids.push_back(box.id);
    return ids;
}

// Everything that some client could send now.
inline std::vector<GateEvent> messages(const Player &player, const Scene &scene)
{
    std::vector<GateEvent> out = scene.events;
    for (const StepRequest &r : scene.steps)
        out.push_back(ReadingTaken{r, Outcome::Good, {}});
    if (scene.declines || player.state.danger.alarm)
        out.push_back(Declined{});
    if (!player.state.up)
        return out;
    const Screen screen = player.state.up->screen;
    const std::vector<std::string> boxes = allBoxes(player.upNow());
    out.push_back(Acknowledged{{}, boxes});
    for (const Way way : {Way::Plain, Way::Control, Way::Plug, Way::Breaker, Way::Connector})
        if (way == Way::Plain || screen == Screen::S9 || screen == Screen::S11)
            out.push_back(Confirmed{screen, boxes, way});
    if (!boxes.empty()) {
        out.push_back(Confirmed{screen, {boxes.begin() + 1, boxes.end()}, screen == Screen::S9 ? Way::Plug : Way::Plain});
        out.push_back(Confirmed{screen, {boxes.front()}, screen == Screen::S9 ? Way::Plug : Way::Plain});
        out.push_back(Acknowledged{});
    }
    for (const Screen other : {Screen::S1, Screen::S7, Screen::S8})
        out.push_back(Confirmed{other, {"plug_out", "in_sight", "closed_up", "every_wire", "meter_off", "nothing_trapped"}});
    if (screen == Screen::S0)
        for (const StartAnswer answer : {StartAnswer::Open, StartAnswer::Closed, StartAnswer::Alarm})
            if (answer != StartAnswer::Alarm || scene.declines || scene.name == "danger")
                out.push_back(StartAnswered{answer});
    if (scene.declines && (screen == Screen::S1 || screen == Screen::S2))
        for (const Detour detour : {Detour::CannotReachPlug, Detour::CanReachPlug, Detour::NotInSight})
            out.push_back(DetourTaken{detour});
    if (scene.declines && (isHold(screen) || screen == Screen::S3))
        out.push_back(Declined{true});
    if (screen == Screen::S3)
        for (const double volts : {0., 120., 60.})
            out.push_back(ProofReading{volts});
    if (screen == Screen::S10)
        for (const double volts : {0., 40.})
            out.push_back(ChargeReading{volts});
    return out;
}

inline Player begin(const Scene &scene, const Rules &rules)
{
    GateStarted event = started(scene.hardWired);
    event.facts.energizedOn = scene.energized;
    if (scene.frame)
        event.facts.frameTests = {"frame"};
    return Player(event, rules);
}

} // namespace gatetest
