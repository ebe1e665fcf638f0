#include "core/reading/typed_number.h"

#include "core/base/text.h"
#include "core/reading/typed_unit.h"

#include <fmt/format.h>

namespace core {
namespace {

using Code = Misread::Code;

bool isOhm(Measure measure)
{
    return unitOf(measure) == Unit::Ohm;
}

bool isHeat(Measure measure)
{
    return unitOf(measure) == Unit::Celsius;
}

struct Bounds
{
    double least, most;
    std::string_view beyond;
};

// What a hand-held meter can show at all in a household; the meter's own top for ohms.
Bounds boundsOf(Measure measure, const Meter &meter)
{
    switch (measure) {
    case Measure::Resistance:
    case Measure::Continuity:
        return {-1, meter.top, "the range shows OL there"};
    case Measure::Diode:
        return {0, 10, "a diode test shows less than 10 V"};
    case Measure::VoltageDc:
        return {-1000, 1000, "the meter must not see more than 1000 V"};
    case Measure::VoltageAc:
    case Measure::VoltageLowImpedance:
        return {0, 1000, "the meter must not see more than 1000 V"};
    case Measure::CurrentClamp:
        return {0, 1000, "no household clamp shows that"};
    case Measure::Capacitance:
        return {0, .1, "no hand-held meter shows that"};
    case Measure::Frequency:
        return {0, 1e7, "no hand-held meter shows that"};
    case Measure::Duty:
        return {0, 100, "a duty is 0 to 100 %"};
    case Measure::Temperature:
        return {-100, 1370, "no household part is that hot or cold"};
    case Measure::OpensAt:
        return {-60, 500, "no household thermostat opens there"};
    case Measure::Look:
    case Measure::Hand:
    case Measure::Ear:
        break;
    }
    return {0, 0, ""};
}

Reading readingOf(const Counted &counted, const TypedUnit &unit)
{
    Reading reading;
    if (unit.note == TypedUnit::Note::Fahrenheit) {
        reading.amount = {(counted.value - 32) * 5 / 9, Unit::Celsius};
        reading.step = counted.step * 5 / 9;
    } else {
        reading.amount = {counted.value, unit.unit};
        reading.step = counted.step;
    }
    return reading;
}

bool possible(const Reading &reading, Measure measure, const Meter &meter)
{
    const Bounds bounds = boundsOf(measure, meter);
    return reading.amount.value >= bounds.least && reading.amount.value <= bounds.most;
}

std::vector<std::string> choices(const std::vector<Reading> &readings, Measure measure, const Meter &meter)
{
    std::vector<std::string> texts;
    for (const Reading &reading : readings)
        if (possible(reading, measure, meter))
            texts.push_back(saidBack(reading));
    return texts;
}

Understanding impossible(const Reading &reading, Measure measure, const Meter &meter)
{
    const Bounds bounds = boundsOf(measure, meter);
    if (reading.amount.value < bounds.least)
        return refused(Code::Impossible, fmt::format("{} cannot be read here: it is below what can be.", saidBack(reading)));
    const bool ohm = isOhm(measure);
    return refused(Code::Impossible, fmt::format("{} cannot be read here: {}.", saidBack(reading), bounds.beyond),
                   ohm ? std::vector<std::string>{"OL"} : std::vector<std::string>{});
}

Understanding taken(const Reading &reading, const TypedUnit &unit, const Counted &counted, Measure measure, const Meter &meter)
{
    if (!possible(reading, measure, meter))
        return impossible(reading, measure, meter);
    std::string said = saidBack(reading);
    if (unit.note == TypedUnit::Note::Fahrenheit)
        said += fmt::format(" ({} \u00b0F)", plainNumber(counted.value));
    return Understood{reading, said};
}

Counted scaled(const Numeral &numeral, const TypedUnit &unit)
{
    return counted(numeral, unit.exponent);
}

// One separator before three digits: the decimal reading without its last zeros (1.500 -> 1.5), and the whole number.
Understanding askSeparator(const Numeral &numeral, const TypedUnit &unit, Measure measure, const Meter &meter)
{
    Numeral decimal = numeral;
    while (decimal.fraction.size() > 1 && decimal.fraction.back() == '0')
        decimal.fraction.pop_back();
    const Reading small = readingOf(scaled(decimal, unit), unit);
    const Reading large = readingOf(scaled(withoutSeparator(numeral), unit), unit);
    return refused(Code::AskBack, "Is the sign before the three digits a decimal point, or does it part the thousands?",
                   choices({small, large}, measure, meter));
}

Understanding askMilli(const Numeral &numeral, const TypedUnit &unit, Measure measure, const Meter &meter)
{
    TypedUnit milli = unit;
    milli.exponent = -3;
    milli.note = TypedUnit::Note::Clear;
    const std::vector<Reading> both{readingOf(scaled(numeral, unit), unit), readingOf(scaled(numeral, milli), milli)};
    if (unit.note == TypedUnit::Note::MilliFarad)
        return refused(Code::AskBack, "Microfarad (\u00b5F) or millifarad (1000 \u00b5F)?", choices(both, measure, meter));
    return refused(Code::AskBack, "Is the m a large M, a million ohms, or a thousandth of an ohm?",
                   choices(both, measure, meter));
}

// A 3 1/2 digit display shows its over-range as a 1 alone at the left.
bool isLoneOne(const Numeral &numeral, Measure measure, const Meter &meter)
{
    const bool lone = numeral.whole == "1" && numeral.fraction.empty() && !numeral.negative && numeral.letter == 0;
    return lone && !isHeat(measure) && (!meter.autoRange || numeral.form == Numeral::Form::Unended);
}

Understanding askLoneOne(const Numeral &numeral, const TypedUnit &unit, Measure measure, const Meter &meter)
{
    Numeral withZero = numeral;
    withZero.fraction = "0";
    std::vector<std::string> texts = choices({readingOf(scaled(withZero, unit), unit)}, measure, meter);
    const bool over = isOhm(measure) || measure == Measure::Diode || measure == Measure::Capacitance;
    if (over)
        texts.insert(texts.begin(), "OL");
    const std::string_view means = over ? "OL" : "over the range";
    return refused(Code::AskBack, fmt::format("A 1 alone at the left of the display means {}. Is it that, or a real 1?", means),
                   texts);
}

std::optional<TypedUnit> unitBehind(const Numeral &numeral, std::string_view rest, Measure measure)
{
    auto unit = typedUnit(rest, measure);
    if (numeral.letter == 0 || !unit)
        return unit;
    const std::string letter = numeral.letter == 'R' || numeral.letter == 'r' ? "ohm" : std::string(1, numeral.letter);
    const bool farad = numeral.letter == 'u' || numeral.letter == 'n' || numeral.letter == 'p';
    auto coded = farad ? typedUnit(letter + "F", measure) : typedUnit(letter, Measure::Resistance);
    if (!coded) // "p": no household capacitor is read in picofarads
        return std::nullopt;
    const bool plain = unit->note == TypedUnit::Note::Nothing || (unit->unit == coded->unit && (unit->exponent == 0 || farad));
    return plain ? coded : std::nullopt;
}

// "240 VDC" in a test of alternating volts, or the other way round: the dial stands wrong.
std::string_view otherCurrent(TypedUnit::Sort sort, Measure measure)
{
    const bool direct = measure == Measure::VoltageDc || measure == Measure::Diode;
    if (sort == TypedUnit::Sort::Direct && !direct)
        return "direct current";
    return sort == TypedUnit::Sort::Alternating && direct ? "alternating current" : "";
}

} // namespace

Understanding understandNumber(const Numeral &numeral, std::string_view plain, Measure measure, const Meter &meter)
{
    const auto unit = unitBehind(numeral, trimmed(plain.substr(numeral.length)), measure);
    if (!unit)
        return notUnderstood(plain, measure);
    const bool hasSort = unit->unit == Unit::Volt || unit->unit == Unit::Ampere;
    if (unit->sort != TypedUnit::Sort::Unsaid && !hasSort)
        return notUnderstood(plain, measure);
    if (unit->unit != unitOf(measure))
        return wrongUnit(plural(unit->unit), measure);
    if (const std::string_view other = otherCurrent(unit->sort, measure); !other.empty())
        return wrongUnit(other, measure);
    if (numeral.form == Numeral::Form::Grouped)
        return refused(Code::NoThousands, "Write the number without separators of thousands.",
                       choices({readingOf(scaled(numeral, *unit), *unit)}, measure, meter));
    if (isLoneOne(numeral, measure, meter))
        return askLoneOne(numeral, *unit, measure, meter);
    if (unit->note == TypedUnit::Note::Milli || unit->note == TypedUnit::Note::MilliFarad)
        return askMilli(numeral, *unit, measure, meter);
    if (numeral.form == Numeral::Form::Doubtful)
        return askSeparator(numeral, *unit, measure, meter);
    const Counted value = scaled(numeral, *unit);
    return taken(readingOf(value, *unit), *unit, value, measure, meter);
}

} // namespace core
