#include "app/walk/picture_state.h"

#include "app/draw/drawing.h"
#include "app/shared/theme.h"
#include "app/walk/words.h"
#include "core/session/names.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

using core::Measure;

std::string answer(const core::Machine &machine, const char *ask)
{
    const auto at = machine.answers.find(ask);
    return at == machine.answers.end() ? std::string() : at->second;
}

QString receptacle(const core::Machine &machine)
{
    const std::string supply = answer(machine, "supply");
    if (supply == "single_120")
        return QStringLiteral("receptacle_120");
    if (supply == "single_230")
        return QStringLiteral("receptacle_230");
    return answer(machine, "cord") == "3_wire" ? QStringLiteral("receptacle_10_30") : QStringLiteral("receptacle_14_30");
}

// "wire(t1)" is the end of the wire pulled from t1.
bool isWire(const std::string &terminal)
{
    return terminal.starts_with("wire(");
}

std::string bare(const std::string &terminal)
{
    return isWire(terminal) ? terminal.substr(5, terminal.size() - 6) : terminal;
}

Dial dialFor(Measure measure)
{
    switch (measure) {
    case Measure::Resistance:
    case Measure::OpensAt:
        return Dial::Ohm;
    case Measure::Continuity:
    case Measure::Diode:
        return Dial::Continuity;
    case Measure::VoltageAc:
    case Measure::VoltageLowImpedance:
    case Measure::Frequency:
    case Measure::Duty:
        return Dial::VoltAc;
    case Measure::VoltageDc:
        return Dial::VoltDc;
    case Measure::Capacitance:
        return Dial::Capacitance;
    case Measure::CurrentClamp:
        return Dial::ClampAmpere;
    default:
        return Dial::Off;
    }
}

TestPictureState::Form formFor(const core::StepView &step)
{
    if (step.picture.measure == Measure::CurrentClamp)
        return TestPictureState::Form::Clamp;
    if (core::isEnergized(step.picture.measure))
        return step.picture.place == "outlet" ? TestPictureState::Form::Fists : TestPictureState::Form::Clips;
    return core::isDead(step.picture.measure) ? TestPictureState::Form::Probes : TestPictureState::Form::Look;
}

// What a good part would read: its plate value where that is inside, else the middle of what is good.
core::Amount typical(const core::Limits &limits, const core::Machine &machine, const std::string &component)
{
    core::Amount amount{0, limits.unit};
    const bool low = limits.lo > -core::Limits::kNone && limits.lo > 0, high = limits.hi < core::Limits::kNone;
    amount.value = low && high ? (limits.lo + limits.hi) / 2 : high ? limits.hi * 0.4 : low ? limits.lo : 0;
    if (const auto rating = core::ratingOf(machine, component); rating && rating->watts > 0 && limits.unit == core::Unit::Ohm) {
        const double plate = rating->volts * rating->volts / rating->watts;
        if (plate >= limits.lo && plate <= limits.hi)
            amount.value = plate;
    }
    return amount;
}

void fillMeter(TestPictureState &state, const core::StepView &step, const core::Machine &machine)
{
    const Measure measure = step.picture.measure;
    state.meter.dial = dialFor(measure);
    state.meter.alternating = measure == Measure::VoltageAc || measure == Measure::VoltageLowImpedance;
    state.meter.unit = measure == Measure::Continuity
                           ? QString()
                           : Words::unit(step.unit, measure).remove(QStringLiteral(" ~")).remove(QStringLiteral(" ="));
    if (core::isEnergized(measure) || !step.good || !step.good->judgesValues())
        return;
    if (step.good->openIsGood) {
        state.meter.display = QStringLiteral("OL");
        state.meter.unit = QStringLiteral("MΩ");
        state.otherDisplay = QStringLiteral("0.4");
        state.otherUnit = QStringLiteral("Ω");
    } else {
        const Displayed good = displayed(typical(*step.good, machine, step.picture.component));
        state.meter.display = good.digits;
        state.meter.unit = good.unit;
        if (step.good->openIsBad && measure == Measure::Resistance)
            state.otherDisplay = QStringLiteral("OL");
    }
    state.meterNote = TestPicture::tr("A good one reads about this.");
    state.otherNote = state.otherDisplay.isEmpty() ? QString() : TestPicture::tr("a broken one this");
}

QString terminalWords(const core::Machine &machine, const core::StepView &step, const std::string &terminal)
{
    const bool loop = terminal.find('.') != std::string::npos &&
                      machine.appliance->component(terminal.substr(0, terminal.find('.'))) != nullptr;
    const QString name =
        qs(core::terminalName(machine, loop ? "" : step.picture.component, bare(terminal), loop || isWire(terminal)));
    return isWire(terminal) ? TestPicture::tr("wire of %1").arg(name) : name;
}

// A drawing serves if both probes have their place in it; else the terminals are labelled boxes.
bool serves(const QString &drawing, const std::string &red, const std::string &black)
{
    const auto loaded = Drawing::load({drawing, {}, {}}, Theme::current().style());
    return loaded && (red.empty() || loaded->has(qs(red))) && (black.empty() || loaded->has(qs(black)));
}

void addCaptions(TestPictureState &state, const core::Machine &machine, const std::string &component)
{
    const auto loaded = Drawing::load({state.drawing, {}, {}}, Theme::current().style());
    if (!loaded)
        return;
    for (const core::Component &part : machine.appliance->components)
        if (part.id != component && loaded->has(qs(part.id + ".t1")) && core::isOn(machine, part.id))
            state.captions.push_back({lowerFirst(qs(core::nameOf(machine, part.id))), qs(part.id + ".t1")});
    const QString own = lowerFirst(qs(core::nameOf(machine, component)));
    if (loaded->has(qs(component + ".t1")))
        state.captions.push_back({own, qs(component + ".t1")});
    else
        state.captions.push_back({own, {}});
}

void addTerminals(TestPictureState &state, const core::StepView &step, const core::Machine &machine, const std::string &owner)
{
    const auto local = [&](const std::string &id) {
        return owner.empty() || !id.starts_with(owner + ".") ? id : id.substr(owner.size() + 1);
    };
    const auto add = [&](const std::string &terminal, const QString &number) {
        if (terminal.empty())
            return;
        const QString id = qs(bare(terminal));
        const bool pulled = isWire(terminal) || std::ranges::any_of(step.picture.pulled, [&](const core::Named &wire) {
                                return qs(local(wire.id)) == id;
                            });
        state.terminals.push_back({id, terminalWords(machine, step, terminal), number, pulled});
    };
    const bool held = core::isEnergized(step.picture.measure); // the order of setting them: black first
    add(step.picture.red, held ? QStringLiteral("2") : QStringLiteral("1"));
    add(step.picture.black, held ? QStringLiteral("1") : QStringLiteral("2"));
    for (const core::Named &wire : step.picture.pulled) {
        const QString id = qs(local(wire.id));
        const bool there = std::ranges::any_of(state.terminals, [&](const auto &terminal) { return terminal.id == id; });
        if (!there)
            state.terminals.push_back({id, qs(wire.text), {}, true});
    }
}

} // namespace

QString drawingOfPart(const core::Machine &machine, const std::string &component)
{
    const std::string owner = component.substr(0, component.find('.'));
    const core::Kind *kind = machine.library->kindOf(*machine.appliance, owner);
    const std::string id = kind == nullptr ? owner : kind->id;
    if (id == "house_supply" || id == "supply_208")
        return receptacle(machine);
    if (id == "vent_blocked")
        return QStringLiteral("vent");
    const std::string supply = answer(machine, "supply");
    if (id == "power_cord_terminal" && (supply == "single_120" || supply == "single_230"))
        return QStringLiteral("power_cord_single");
    return qs(id);
}

QString drawingFor(const core::Machine &machine, const core::Picture &picture, const std::string &test)
{
    const bool loop = machine.appliance->loop(test) != nullptr;
    if (!loop)
        return drawingOfPart(machine, picture.component);
    if (isWire(picture.red) || isWire(picture.black))
        return {}; // the end of a pulled wire lies beside no drawn tab
    const bool touch = test.ends_with("_touch");
    for (const char *name : {touch ? "heat_chain_touch" : "heat_chain", touch ? "heat_chain" : "heat_chain_touch"})
        if (serves(QLatin1String(name), picture.red, picture.black))
            return QLatin1String(name);
    return {};
}

TestPictureState pictureOf(const core::StepView &step, const core::Machine &machine)
{
    TestPictureState state;
    const core::Picture &picture = step.picture;
    state.form = formFor(step);
    state.drawing = picture.component.empty() ? QString() : drawingFor(machine, picture, step.test);
    state.part = lowerFirst(qs(core::nameOf(machine, picture.component)));
    if (state.form == TestPictureState::Form::Look) {
        state.meter.shown = false;
        return state;
    }
    state.position = picture.held.empty() ? QString() : QStringLiteral("pressed");
    state.red = qs(bare(picture.red));
    state.black = qs(bare(picture.black));
    if (!state.drawing.isEmpty() && !serves(state.drawing, bare(picture.red), bare(picture.black)))
        state.drawing.clear();
    const bool loop = machine.appliance->loop(step.test) != nullptr;
    addTerminals(state, step, machine, loop ? std::string() : picture.component);
    const auto pulled = std::ranges::count_if(state.terminals, [](const auto &terminal) { return terminal.pulled; });
    state.pulledNote = pulled > 1 ? TestPicture::tr("wires pulled") : TestPicture::tr("wire pulled");
    fillMeter(state, step, machine);
    addCaptions(state, machine, picture.component);
    if (state.form == TestPictureState::Form::Fists) {
        state.blackNote = TestPicture::tr("1 black first into %1").arg(terminalWords(machine, step, picture.black));
        state.redNote = TestPicture::tr("2 then red into %1").arg(terminalWords(machine, step, picture.red));
        state.captions.clear();
    }
    if (!picture.jaw.empty())
        state.wire = qs(core::wireName(machine, core::wireId(picture.component, picture.jaw)));
    return state;
}

TestPictureState pictureWith(TestPictureState before, const core::Reading &reading, bool broken)
{
    const Displayed shown = displayed(reading);
    before.meter.display = shown.digits;
    if (!shown.unit.isEmpty())
        before.meter.unit = shown.unit;
    before.meter.tone = reading.what == core::Reading::What::Tone;
    before.otherDisplay.clear();
    before.otherNote.clear();
    before.meterNote.clear();
    if (reading.what == core::Reading::What::OverLimit)
        before.meterNote = TestPicture::tr("OL means: more than the meter can count. Nothing gets through.");
    if (broken && before.form != TestPictureState::Form::Fists)
        before.fault = TestPictureState::Fault{QStringLiteral("current"), TestPicture::tr("broken, somewhere in here")};
    return before;
}

Displayed displayed(core::Amount amount)
{
    double value = amount.value;
    QString unit = Words::unit(std::string(core::unitCode(amount.unit)), Measure::Resistance);
    if (amount.unit == core::Unit::Ohm && std::abs(value) >= 1e6) {
        value /= 1e6;
        unit = QStringLiteral("MΩ");
    } else if (amount.unit == core::Unit::Ohm && std::abs(value) >= 2000) {
        value /= 1000;
        unit = QStringLiteral("kΩ");
    } else if (amount.unit == core::Unit::Volt) {
        unit = QStringLiteral("V");
    } else if (amount.unit == core::Unit::Farad) {
        value *= 1e6;
    }
    const int decimals = std::abs(value) < 100 ? 1 : 0;
    return {QString::number(value, 'f', decimals), unit};
}

Displayed displayed(const core::Reading &reading)
{
    using What = core::Reading::What;
    switch (reading.what) {
    case What::Value:
        return displayed(reading.amount);
    case What::OverLimit:
        return {QStringLiteral("OL"), QStringLiteral("MΩ")};
    case What::NoTone:
        return {QStringLiteral("OL"), {}};
    case What::Tone:
        return {QStringLiteral("0.2"), {}};
    case What::Jumps:
        return {QStringLiteral("--.-"), {}};
    default:
        return {};
    }
}

} // namespace app
