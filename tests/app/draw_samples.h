#pragma once
// States of the drawn widgets as a job would give them, for the tests and the gallery. Invented demo data: the machine,
// its prices and times are nobody's; the 10.7 Ω of a 5400 W, 240 V element follow from V²/P.
#include "app/draw/chain.h"
#include "app/draw/curve_view.h"
#include "app/draw/number_line.h"
#include "app/draw/power_rail.h"
#include "app/draw/signal_panel.h"
#include "app/draw/tape_view.h"
#include "app/draw/test_picture.h"

#include <cmath>

namespace samples {

using namespace app;

inline QString operator""_s(const char16_t *text, std::size_t size)
{
    return QString::fromUtf16(text, static_cast<qsizetype>(size));
}

inline NumberLineState elementLine()
{
    NumberLineState line;
    line.quantity = u"Element, end to end"_s;
    line.unit = u"Ω"_s;
    line.from = 0;
    line.to = 20;
    line.bands = {{0, 8, Judgement::Bad}, {8, 9.4, Judgement::NoConclusion}, {9.4, 12.3, Judgement::Good},
                  {12.3, 13.9, Judgement::NoConclusion}, {13.9, 20, Judgement::Bad}};
    line.over = Judgement::Bad;
    line.between = u"no conclusion: read the sheet in the cabinet"_s;
    return line;
}

inline NumberLineState withFlag(NumberLineState line, double value, double half, const QString &text, bool over = false)
{
    line.flags.push_back({value, over, half, text, false});
    return line;
}

inline NumberLineState pumpLine()
{
    NumberLineState line = elementLine();
    line.quantity = u"Pin to pin"_s;
    line.to = 90;
    line.bands = {{0, 3, Judgement::Bad}, {3, 5, Judgement::NoConclusion}, {5, 60, Judgement::Good}, {60, 75, Judgement::NoConclusion}, {75, 90, Judgement::Bad}};
    return withFlag(line, 14.8, 0.4, u"14.8 Ω"_s);
}

inline NumberLineState outletLine()
{
    NumberLineState line;
    line.quantity = u"Outlet, leg to leg"_s;
    line.unit = u"V"_s;
    line.to = 260;
    line.bands = {{0, 198, Judgement::Bad}, {198, 228, Judgement::NoConclusion}, {228, 252, Judgement::Good}, {252, 260, Judgement::NoConclusion}};
    return withFlag(line, 241, 2, u"241 V"_s);
}

inline NumberLineState insulationLine()
{
    NumberLineState line;
    line.quantity = u"Each end to the can"_s;
    line.unit = u"MΩ"_s;
    line.from = 0.001;
    line.to = 100;
    line.logarithmic = true;
    line.bands = {{0.001, 0.5, Judgement::Bad}, {0.5, 2, Judgement::NoConclusion}, {2, 100, Judgement::Good}};
    line.over = Judgement::Good;
    line.flags = {{0, true, 0, u"OL"_s, false}};
    return line;
}

inline NumberLineState opensAtLine()
{
    NumberLineState line;
    line.quantity = u"High limit, opens at"_s;
    line.unit = u"°C"_s;
    line.from = 0;
    line.to = 10;
    line.numbers = false;
    line.bands = {{0, 3, Judgement::Bad}, {3, 4, Judgement::NoConclusion}, {4, 6, Judgement::Good}, {6, 7, Judgement::NoConclusion}, {7, 10, Judgement::Bad}};
    line.printed = {{5, u"your printed temperature"_s}};
    return line;
}

// B equation of an NTC, 10 kΩ at 25 °C, B 3950 K, ±10 %: R = R25 exp(B (1/T - 1/298.15)).
inline CurveState thermistorCurve()
{
    CurveState state;
    state.quantity = u"Exhaust thermistor"_s;
    state.xTitle = u"temperature of the sensor, °C"_s;
    state.yUnit = u"kΩ"_s;
    state.xFrom = -5;
    state.xTo = 45;
    state.yFrom = 3;
    state.yTo = 60;
    CurveState::Curve curve;
    for (int celsius = -5; celsius <= 45; ++celsius) {
        const double kilohm = 10 * std::exp(3950 * (1 / (celsius + 273.15) - 1 / 298.15));
        curve.points.push_back({static_cast<double>(celsius), kilohm, kilohm * 0.9, kilohm * 1.1});
    }
    curve.name = u"this sensor's curve:\n10 kΩ at 25 °C, ±10 %"_s;
    state.curves = {curve};
    state.readings = {{22, 11.6, 0, 0, u"11.6 kΩ"_s, u"test 3 at 22 °C, inside"_s, true},
                      {0, 24.9, 0, 0.4, u"24.9 kΩ"_s, u"5.3 kΩ below\nthe good band"_s, false}};
    return state;
}

inline TestPictureState elementPicture()
{
    TestPictureState state;
    state.meter.display = u"10.7"_s;
    state.meter.unit = u"Ω"_s;
    state.drawing = u"dryer_element"_s;
    state.part = u"heating element"_s;
    state.terminals = {{u"t1"_s, u"tab 1"_s, u"1"_s, true}, {u"t2"_s, u"tab 2"_s, u"2"_s, true}};
    state.red = u"t1"_s;
    state.black = u"t2"_s;
    state.meterNote = u"A good one reads about this."_s;
    state.otherDisplay = u"OL"_s;
    state.otherNote = u"a broken one this"_s;
    state.pulledNote = u"both wires pulled"_s;
    state.captions = {{u"thermal cut-off"_s, u"thermal_cutoff"_s}, {u"high limit"_s, u"high_limit"_s}, {u"heating element in its can"_s, {}}};
    return state;
}

inline TestPictureState brokenElementPicture()
{
    TestPictureState state = elementPicture();
    state.meter.display = u"OL"_s;
    state.meter.unit = u"MΩ"_s;
    state.meterNote = u"OL means: more than the meter can count. Nothing gets through."_s;
    state.otherDisplay.clear();
    state.fault = TestPictureState::Fault{u"current"_s, u"broken, somewhere in here"_s};
    return state;
}

inline ChainState heatChain()
{
    ChainState state;
    state.title = u"The chain: heat, from L1 to L2, wiring as assumed"_s;
    const auto row = [](const QString &id, const QString &name, LadderSymbol symbol, Standing standing, const QString &words = {}) {
        ChainRow r;
        r.id = id;
        r.name = name;
        r.symbol = symbol;
        r.standing = standing;
        r.words = words;
        return r;
    };
    ChainRung rung{u"heat"_s, u"L1"_s, u"L2"_s, {}};
    rung.rows = {row(u"timer"_s, u"Timer, heat contact"_s, LadderSymbol::Contact, Standing::Untested),
                 row(u"thermostat"_s, u"Cycling thermostat"_s, LadderSymbol::Thermostat, Standing::Cleared, u"cleared, 0.1 Ω"_s),
                 row(u"limit"_s, u"High limit"_s, LadderSymbol::Thermostat, Standing::Cleared, u"cleared, 0.2 Ω"_s),
                 row(u"cutoff"_s, u"Thermal cut-off"_s, LadderSymbol::OneShot, Standing::Cleared, u"cleared, 0.2 Ω"_s),
                 row(u"element"_s, u"Heating element"_s, LadderSymbol::Heater, Standing::Suspected),
                 row(u"motor_switch"_s, u"Motor switch, heat"_s, LadderSymbol::Contact, Standing::Untested)};
    rung.rows[1].pulledTop = true;
    rung.rows[4].pulledTop = true;
    rung.rows[4].pulledBottom = true;
    rung.rows[4].likeliest = true;
    rung.rows[5].open = true;
    state.rungs = {rung};
    state.lit = ChainLit{4, 4, true, {}};
    state.conditions = {{u"breaker"_s, u"Breaker"_s, Standing::Cleared, u"reset once"_s, ChainCondition::At::TopRail, 0, 0},
                        {u"cycle"_s, u"Cycle"_s, Standing::Cleared, u"heated"_s, ChainCondition::At::Rows, 0, 0},
                        {u"vent"_s, u"Vent"_s, Standing::Cleared, u"flap lifts"_s, ChainCondition::At::Rows, 1, 4},
                        {u"leg"_s, u"2nd leg"_s, Standing::Untested, {}, ChainCondition::At::BottomRail, 0, 0}};
    state.wires = Standing::Suspected;
    return state;
}

inline ChainState motorChain() // twelve elements
{
    ChainState state;
    state.title = u"The chain: motor, L1 to N"_s;
    ChainRung rung{u"motor"_s, u"L1"_s, u"N"_s, {}};
    const struct
    {
        QString name;
        LadderSymbol symbol;
        Standing standing;
    } parts[] = {{u"Cord"_s, LadderSymbol::Box, Standing::Cleared},          {u"Terminal block"_s, LadderSymbol::Box, Standing::Cleared},
                 {u"Timer, motor"_s, LadderSymbol::Contact, Standing::Cleared}, {u"Thermal fuse"_s, LadderSymbol::OneShot, Standing::Cleared},
                 {u"Belt switch"_s, LadderSymbol::Contact, Standing::Cleared},  {u"Door switch"_s, LadderSymbol::Contact, Standing::Suspected},
                 {u"Start switch"_s, LadderSymbol::Contact, Standing::Untested}, {u"Start winding"_s, LadderSymbol::Winding, Standing::Untested},
                 {u"Main winding"_s, LadderSymbol::Winding, Standing::Untested}, {u"Centrifugal switch"_s, LadderSymbol::Contact, Standing::Untested},
                 {u"Overload"_s, LadderSymbol::Thermostat, Standing::Untested},  {u"Neutral wire"_s, LadderSymbol::Box, Standing::Untested}};
    for (const auto &part : parts) {
        ChainRow row;
        row.id = part.name;
        row.name = part.name;
        row.symbol = part.symbol;
        row.standing = part.standing;
        if (row.standing == Standing::Cleared) {
            row.ohms = 0.1;
            row.words = u"cleared, 0.1 Ω"_s;
        }
        rung.rows.push_back(row);
    }
    rung.rows[5].pulledTop = true;
    rung.rows[5].likeliest = true;
    rung.rows[6].open = true;
    state.rungs = {rung};
    state.lit = ChainLit{5, 5, true, {}};
    state.conditions = {{u"door"_s, u"Door shut"_s, Standing::Cleared, u"seen"_s, ChainCondition::At::Rows, 5, 5}};
    return state;
}

inline ChainState twoRungs()
{
    ChainState state = heatChain();
    state.lit.reset();
    state.wires.reset();
    state.conditions.clear();
    state.rungs[0].rows[1].pulledTop = state.rungs[0].rows[4].pulledTop = state.rungs[0].rows[4].pulledBottom = false;
    state.rungs[0].rows[4].likeliest = false;
    state.rungs[0].rows[5].standing = Standing::Suspected;
    const QString names[] = {u"Timer, heat"_s, u"Thermostat"_s, u"High limit"_s, u"Cut-off"_s, u"Element"_s, u"Motor sw."_s};
    for (std::size_t i = 0; i < state.rungs[0].rows.size(); ++i)
        state.rungs[0].rows[i].name = names[i];
    ChainRung motor{u"motor"_s, u"L1"_s, u"N"_s, {}};
    for (const auto &[name, symbol] : {std::pair(u"Timer, motor"_s, LadderSymbol::Contact), std::pair(u"Thermal fuse"_s, LadderSymbol::OneShot),
                                       std::pair(u"Door switch"_s, LadderSymbol::Contact), std::pair(u"Motor sw."_s, LadderSymbol::Contact),
                                       std::pair(u"Main winding"_s, LadderSymbol::Winding)}) {
        ChainRow row;
        row.id = name;
        row.name = name;
        row.symbol = symbol;
        row.standing = Standing::Cleared;
        row.words = u"turns"_s;
        motor.rows.push_back(row);
    }
    state.rungs.push_back(motor);
    state.links = {{5, 3}};
    return state;
}

inline ChainState byPlace()
{
    ChainState state;
    state.title = u"The machine, by place"_s;
    const auto row = [](const QString &name, Standing standing, const QString &words, bool likeliest = false) {
        ChainRow r;
        r.id = name;
        r.name = name;
        r.standing = standing;
        r.words = words;
        r.likeliest = likeliest;
        return r;
    };
    state.places = {{u"In use, nothing opened"_s, u"0 min"_s, true, {row(u"Feet level, floor firm"_s, Standing::Cleared, u"cleared, level"_s), row(u"Load, coins, zips in the drum"_s, Standing::Cleared, u"cleared, empty"_s)}},
                    {u"Rear panel off"_s, u"12 min"_s, false, {row(u"Blower wheel"_s, Standing::Cleared, u"cleared, tight"_s), row(u"Drive motor, by hand"_s, Standing::Untested, {})}},
                    {u"Drum out"_s, u"35 min more"_s, false, {row(u"Drum rollers"_s, Standing::Suspected, {}, true), row(u"Idler pulley"_s, Standing::Suspected, {}), row(u"Belt"_s, Standing::Untested, {})}}};
    return state;
}

inline SignalText unplugText()
{
    SignalText text;
    text.signs = {u"W012"_s, u"M006"_s};
    text.hazard = u"Electric shock can kill. Switch the machine off."_s;
    for (const QString &line : {u"Big plug of a dryer or range: switch its double breaker off first."_s,
                                u"Follow the cord with your hand from the machine to the plug: it must be this machine's."_s,
                                u"Dry hands, dry floor, hold the plug, not the cord."_s,
                                u"Pull it out and keep it where you see it; nobody else may plug it in."_s,
                                u"Warm, brown or loose plug: stop, call an electrician."_s})
        text.steps.push_back({{{line, Type::Safety}}, {}, {}});
    return text;
}

inline SignalText gasText()
{
    SignalText text;
    text.signal = Signal::Danger;
    text.signs = {u"W021"_s, u"P003"_s, u"E004"_s};
    text.hazard = u"Leave now, take everyone."_s;
    for (const QString &line : {u"No switch, plug, breaker, phone, flame or lighter; leave this computer as it is."_s,
                                u"Do not look for the leak, do not shut valves on the way, do not stop for windows."_s,
                                u"From outside, away from the house: call the gas company or the emergency number."_s})
        text.steps.push_back({{{line, Type::Safety}}, {}, {}});
    text.steps.push_back({{{u"CO alarm: "_s, Type::SafetyStrong}, {u"fresh air first, emergency number, say who feels ill."_s, Type::Safety}}, {}, u"W016"_s});
    return text;
}

inline std::vector<TapeStub> tape()
{
    using Kind = TapeStub::Kind;
    return {{1, Kind::Step, u"1 to 3 Looked at: cycle, breaker, flap"_s, u"no cause there"_s, Standing::Cleared, false, false},
            {2, Kind::Power, {}, u"plug out 10:36"_s, {}, false, false},
            {4, Kind::Step, u"4 Heat chain, end to end"_s, u"OL"_s, Standing::Suspected, false, false},
            {5, Kind::Step, u"5 Thermal cut-off"_s, u"0.2 Ω"_s, Standing::Cleared, false, false},
            {6, Kind::Step, u"6 High limit"_s, u"0.2 Ω"_s, Standing::Cleared, false, true},
            {7, Kind::Step, u"7 Cycling thermostat, cold"_s, u"0.1 Ω"_s, Standing::Cleared, false, false},
            {8, Kind::Step, u"8 Element, end to end"_s, u"you are here"_s, {}, true, false},
            {9, Kind::Next, u"9 Then"_s, u"each end to the can"_s, {}, false, false}};
}

} // namespace samples
