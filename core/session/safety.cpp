#include "core/session/safety.h"

#include <algorithm>
#include <array>

namespace core {
namespace {

template<class T>
struct Word
{
    std::string_view text;
    T value;
};

constexpr auto kAlarms = std::to_array<Word<AlarmKind>>({{"alarm", AlarmKind::Unsaid},
                                                         {"gas", AlarmKind::Gas},
                                                         {"co", AlarmKind::CarbonMonoxide},
                                                         {"shock", AlarmKind::Shock},
                                                         {"smoke", AlarmKind::Smoke},
                                                         {"spark", AlarmKind::Sparks},
                                                         {"water", AlarmKind::Water}});
constexpr auto kWays = std::to_array<Word<Way>>(
    {{"control", Way::Control}, {"plug", Way::Plug}, {"breaker", Way::Breaker}, {"connector", Way::Connector}});
constexpr auto kDetours = std::to_array<Word<Detour>>({{"cannot_reach_plug", Detour::CannotReachPlug},
                                                       {"can_reach_plug", Detour::CanReachPlug},
                                                       {"not_in_sight", Detour::NotInSight}});
constexpr auto kAways = std::to_array<Word<Away>>({{"lapsed", Away::Lapsed},
                                                   {"other_person", Away::OtherPerson},
                                                   {"content", Away::ContentChanged},
                                                   {"plug_out_of_sight", Away::PlugOutOfSight},
                                                   {"breaker_touched", Away::BreakerTouched}});

constexpr auto kVetoes = std::to_array<Word<VetoReason>>({{"damaged_cord", VetoReason::DamagedCord},
                                                          {"trips_again", VetoReason::TripsAgain},
                                                          {"hot_when_off", VetoReason::HotWhenOff},
                                                          {"water", VetoReason::Water},
                                                          {"smoke", VetoReason::Smoke},
                                                          {"sparks", VetoReason::Sparks},
                                                          {"shock", VetoReason::Shock},
                                                          {"door_latch", VetoReason::DoorLatch},
                                                          {"ground", VetoReason::GroundFault},
                                                          {"open_earth", VetoReason::OpenEarth},
                                                          {"bad_supply", VetoReason::BadSupply},
                                                          {"stays_charged", VetoReason::StaysCharged}});

template<class T, std::size_t N>
std::optional<T> named(const std::array<Word<T>, N> &words, std::string_view text)
{
    const auto at = std::ranges::find(words, text, &Word<T>::text);
    return at == words.end() ? std::nullopt : std::optional(at->value);
}

std::optional<Screen> screenNamed(std::string_view text)
{
    for (int i = 0; i <= static_cast<int>(Screen::Eo); ++i)
        if (word(static_cast<Screen>(i)) == text)
            return static_cast<Screen>(i);
    return std::nullopt;
}

GateEvent started(const Event &e)
{
    const Snapshot &s = e.snapshot.value();
    JobFacts facts;
    facts.job = s.tree;
    facts.appliance = s.appliance;
    facts.process = e.value;
    facts.hardWired = s.hardWired;
    facts.proxy = s.who == "proxy";
    facts.energizedOn = s.energized;
    facts.provingOn = s.who != "proxy" || s.energized;
    facts.frameTests = s.frameTests;
    return GateStarted{facts, meterFitOf(s.meter)};
}

GateEvent readingTaken(const Event &e)
{
    const Outcome outcome = e.outcome == "part" ? Outcome::Part : e.outcome == "failed" ? Outcome::Failed : Outcome::Good;
    return ReadingTaken{e.request.value_or(StepRequest{}), outcome, e.veto};
}

GateEvent read(const Event &e)
{
    if (e.reported)
        return Reported{};
    const double value = e.reading && e.reading->what == Reading::What::Value ? e.reading->amount.value : 1e9;
    if (e.step == "S3")
        return ProofReading{value, true, e.test};
    if (e.step == "S10")
        return ChargeReading{value, true};
    return readingTaken(e);
}

std::optional<GateEvent> answered(const Event &e)
{
    if (e.step == "S0")
        return StartAnswered{e.value == "closed" ? StartAnswer::Closed
                             : e.value == "open" ? StartAnswer::Open
                                                 : StartAnswer::Alarm};
    return readingTaken(e);
}

} // namespace

std::optional<AlarmKind> alarmNamed(std::string_view why)
{
    return named(kAlarms, why);
}

std::optional<GateEvent> gateEventOf(const Event &e)
{
    const auto screen = screenNamed(e.step);
    switch (e.what) {
    case Event::What::Started:
        return e.snapshot ? std::optional(started(e)) : std::nullopt;
    case Event::What::Answered:
        return answered(e);
    case Event::What::Read:
        return read(e);
    case Event::What::Confirmed:
        return screen ? std::optional<GateEvent>(Confirmed{*screen, e.boxes, named(kWays, e.value).value_or(Way::Plain)})
                      : std::nullopt;
    case Event::What::Acknowledged:
        return Acknowledged{e.request ? e.request->step : std::string(), e.boxes};
    case Event::What::Declined:
        return Declined{e.never};
    case Event::What::Detour:
        return DetourTaken{named(kDetours, e.value).value_or(Detour::NotInSight)};
    case Event::What::Skipped:
        return Skipped{e.test.empty() ? e.step : e.test};
    case Event::What::Chosen:
        return Chosen{e.test};
    case Event::What::Shown:
        if (!e.request)
            return std::nullopt;
        return screen ? GateEvent(ScreenShown{*screen, *e.request}) : GateEvent(StepShown{*e.request});
    case Event::What::Undone:
        return Undone{};
    case Event::What::Amended:
        return Amended{e.step == "S3", e.outcome == "failed", e.test, e.veto};
    case Event::What::MeterChanged:
        return e.meter ? std::optional<GateEvent>(MeterChanged{meterFitOf(*e.meter)}) : std::nullopt;
    case Event::What::Left:
        return WentAway{Away::Left, {}};
    case Event::What::Resumed:
        return WentAway{Away::Resumed, e.value};
    case Event::What::Lapsed:
        return WentAway{named(kAways, e.value).value_or(Away::Lapsed), {}};
    case Event::What::Stopped:
        return Alarm{alarmNamed(e.value).value_or(AlarmKind::Unsaid)};
    case Event::What::NotGas:
        return NotGas{alarmNamed(e.value).value_or(AlarmKind::Unsaid)};
    case Event::What::Mistake:
        return PressedByMistake{};
    case Event::What::PutBack:
        return Confirmed{Screen::S8, e.boxes, Way::Plain};
    case Event::What::Repaired:
        return RepairTold{e.test};
    case Event::What::Energized:
        return EnergizedTurned{e.value == "on", e.value == "on" || e.who != "proxy"};
    case Event::What::NeverTakenBack:
        return NeverTakenBack{};
    case Event::What::Sheet:
    case Event::What::Proving:
    case Event::What::VerdictShown:
    case Event::What::Outcome:
        return std::nullopt;
    }
    return std::nullopt;
}

GateState gateFrom(const std::vector<Event> &events)
{
    GateState gate;
    for (const Event &e : events)
        if (const auto g = gateEventOf(e))
            gate = apply(std::move(gate), *g, e.at);
    return gate;
}

MeterFit meterFitOf(const Meter &meter)
{
    MeterFit fit;
    fit.id = meter.category;
    fit.marks = {markIn(meter.category)};
    fit.voltsAc = meter.can(Measure::VoltageAc);
    return fit;
}

std::optional<VetoReason> vetoNamed(std::string_view danger)
{
    return named(kVetoes, danger);
}

std::optional<VetoReason> vetoOfAnswer(const Machine &machine, std::string_view id, const std::string &answer)
{
    if (const Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(id);
        step != nullptr && step->what != Step::What::Test) {
        const auto at = step->danger.find(answer);
        return at == step->danger.end() ? std::nullopt : vetoNamed(at->second);
    }
    const Library::Found found = machine.library->test(*machine.appliance, id);
    if (found.test == nullptr || found.kind == nullptr)
        return std::nullopt;
    const auto proves = found.test->proves.find(answer);
    if (proves == found.test->proves.end())
        return std::nullopt;
    for (const std::string &name : proves->second)
        if (const FailureMode *mode = found.kind->mode(name); mode != nullptr && !mode->danger.empty())
            return vetoNamed(mode->danger);
    return std::nullopt;
}

std::vector<Hazard> hazardsOf(const GateState &gate)
{
    std::vector<Hazard> hazards;
    for (const Veto &v : gate.vetoes) {
        if (v.repaired)
            continue;
        const auto at = std::ranges::find(kVetoes, v.reason, &Word<VetoReason>::value);
        const bool wiring = v.reason == VetoReason::DamagedCord || v.reason == VetoReason::TripsAgain ||
                            v.reason == VetoReason::OpenEarth || v.reason == VetoReason::BadSupply;
        hazards.push_back({std::string(at == kVetoes.end() ? "alarm" : at->text), componentOf(v.test),
                           wiring ? "electrician" : "", v.reason == VetoReason::GroundFault});
    }
    if (gate.refused.off)
        hazards.push_back({"may_be_on", {}, {}, false});
    return hazards;
}

Abilities abilitiesOf(const GateState &gate)
{
    const bool veto = std::ranges::any_of(gate.vetoes, [](const Veto &v) { return !v.repaired; });
    Abilities abilities;
    abilities.energized = gate.facts.energizedOn && !veto && !gate.refused.never;
    abilities.running = !veto;
    abilities.dead = !gate.refused.isolation && gate.proofsFailed < 2;
    return abilities;
}

std::set<std::string> openPlacesOf(const GateState &gate)
{
    return gate.inside.covers == Covers::Open ? gate.inside.opened : std::set<std::string>{};
}

std::optional<VetoReason> vetoOf(const Facts &facts, std::string_view id, const Reading &reading, std::size_t placement)
{
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, id);
    if (found.test == nullptr || found.kind == nullptr || found.test->byEye())
        return std::nullopt;
    const auto limits = limitsFor(facts.machine, id, placement, reading.with);
    if (!limits || !judge(reading, *limits, found.test->measure, facts.machine.meter).convicts)
        return std::nullopt;
    if (isEnergized(found.test->measure))
        return found.component == "house_supply" ? std::optional(VetoReason::BadSupply) : std::nullopt;
    if (found.component == "ground_path")
        return VetoReason::OpenEarth;
    const Probes probes = placement < found.test->placements.size() ? found.test->placements[placement] : Probes{};
    const Path *path = found.kind->pathBetween(probes.red, probes.black);
    // a path that must read OL and lies along a conductor, or is no contact, is one to bare metal
    const bool toMetal = path != nullptr && limits->openIsGood && path->normally == Path::Normally::Always;
    return toMetal ? std::optional(VetoReason::GroundFault) : std::nullopt;
}

} // namespace core
