#include "core/reading/understand.h"

#include "core/base/text.h"
#include "core/reading/numeral.h"
#include "core/reading/typed_unit.h"
#include "core/reading/typed_word.h"

#include <array>
#include <cmath>
#include <fmt/format.h>

namespace core {
namespace {

using Code = Misread::Code;
using Result = Expected<Understood, Misread>;

Result misread(Code code, std::string text, std::vector<std::string> suggestions = {})
{
    return unexpected(Misread{code, std::move(text), std::move(suggestions)});
}

std::string_view named(Unit unit)
{
    static constexpr std::array<std::string_view, 10> kNames{"nothing", "ohms", "volts", "amps", "microfarads", "hertz", "degrees", "watts", "seconds", "percent"};
    return kNames[static_cast<std::size_t>(unit)];
}

Result notUnderstood(std::string_view plain, Measure measure)
{
    const std::string near = nearestTypedWord(plain);
    const bool fits = !near.empty() && understand(near, measure, {}).has_value();
    return misread(Code::NotUnderstood, fmt::format("\"{}\" is not understood as a reading in {}.", printable(plain), named(unitOf(measure))),
                   fits ? std::vector{near} : std::vector<std::string>{});
}

Result wrongUnit(std::string_view said, Measure measure)
{
    return misread(Code::WrongUnit, fmt::format("This test reads {}, not {}. Look at the dial, then read again.", named(unitOf(measure)), said));
}

// ---- words ---------------------------------------------------------------------------------------------------------

bool isOhm(Measure measure)
{
    return unitOf(measure) == Unit::Ohm;
}

bool isHeat(Measure measure)
{
    return unitOf(measure) == Unit::Celsius;
}

Result ofWord(Reading::What what, Measure measure)
{
    Reading reading;
    reading.what = what;
    reading.step = 0;
    const bool ohm = isOhm(measure);
    switch (what) {
    case Reading::What::OverLimit:
        if (ohm || measure == Measure::Diode || measure == Measure::Capacitance)
            return Understood{reading, "OL, more than the meter can show"};
        if (isHeat(measure))
            return misread(Code::AskBack, "At which temperature was that? Write the degrees.");
        return misread(Code::AskBack, "OL means more than this range can show. Choose a higher range and read again.");
    case Reading::What::Tone:
    case Reading::What::NoTone: return ohm ? Result(Understood{reading, saidBack(reading)}) : wrongUnit("a tone", measure);
    case Reading::What::StaysClosed:
        if (measure != Measure::OpensAt)
            return wrongUnit("a switch that stays closed", measure);
        break;
    case Reading::What::Jumps:
    case Reading::What::Value:
    case Reading::What::Answer: break;
    }
    return Understood{reading, saidBack(reading)};
}

// ---- numbers -------------------------------------------------------------------------------------------------------

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
    case Measure::Continuity: return {-1, meter.top, "the range shows OL there"};
    case Measure::Diode: return {0, 10, "a diode test shows less than 10 V"};
    case Measure::VoltageDc: return {-1000, 1000, "the meter must not see more than 1000 V"};
    case Measure::VoltageAc:
    case Measure::VoltageLowImpedance: return {0, 1000, "the meter must not see more than 1000 V"};
    case Measure::CurrentClamp: return {0, 1000, "no household clamp shows that"};
    case Measure::Capacitance: return {0, .1, "no hand-held meter shows that"};
    case Measure::Frequency: return {0, 1e7, "no hand-held meter shows that"};
    case Measure::Duty: return {0, 100, "a duty is 0 to 100 %"};
    case Measure::Temperature: return {-100, 1370, "no household part is that hot or cold"};
    case Measure::OpensAt: return {-60, 500, "no household thermostat opens there"};
    case Measure::Look:
    case Measure::Hand:
    case Measure::Ear: break;
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

Result impossible(const Reading &reading, Measure measure, const Meter &meter)
{
    const Bounds bounds = boundsOf(measure, meter);
    if (reading.amount.value < bounds.least)
        return misread(Code::Impossible, fmt::format("{} cannot be read here: it is below what can be.", saidBack(reading)));
    const bool ohm = isOhm(measure);
    return misread(Code::Impossible, fmt::format("{} cannot be read here: {}.", saidBack(reading), bounds.beyond),
                   ohm ? std::vector<std::string>{"OL"} : std::vector<std::string>{});
}

Result taken(const Reading &reading, const TypedUnit &unit, const Counted &counted, Measure measure, const Meter &meter)
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
Result askSeparator(const Numeral &numeral, const TypedUnit &unit, Measure measure, const Meter &meter)
{
    Numeral decimal = numeral;
    while (decimal.fraction.size() > 1 && decimal.fraction.back() == '0')
        decimal.fraction.pop_back();
    const Reading small = readingOf(scaled(decimal, unit), unit);
    const Reading large = readingOf(scaled(withoutSeparator(numeral), unit), unit);
    return misread(Code::AskBack, "Is the sign before the three digits a decimal point, or does it part the thousands?",
                   choices({small, large}, measure, meter));
}

Result askMilli(const Numeral &numeral, const TypedUnit &unit, Measure measure, const Meter &meter)
{
    TypedUnit milli = unit;
    milli.exponent = -3;
    milli.note = TypedUnit::Note::Clear;
    const std::vector<Reading> both{readingOf(scaled(numeral, unit), unit), readingOf(scaled(numeral, milli), milli)};
    if (unit.note == TypedUnit::Note::MilliFarad)
        return misread(Code::AskBack, "Microfarad (\u00b5F) or millifarad (1000 \u00b5F)?", choices(both, measure, meter));
    return misread(Code::AskBack, "Is the m a large M, a million ohms, or a thousandth of an ohm?", choices(both, measure, meter));
}

// A 3 1/2 digit display shows its over-range as a 1 alone at the left.
bool isLoneOne(const Numeral &numeral, Measure measure, const Meter &meter)
{
    const bool lone = numeral.whole == "1" && numeral.fraction.empty() && !numeral.negative && numeral.letter == 0;
    return lone && !isHeat(measure) && (!meter.autoRange || numeral.form == Numeral::Form::Unended);
}

Result askLoneOne(const Numeral &numeral, const TypedUnit &unit, Measure measure, const Meter &meter)
{
    Numeral withZero = numeral;
    withZero.fraction = "0";
    std::vector<std::string> texts = choices({readingOf(scaled(withZero, unit), unit)}, measure, meter);
    const bool over = isOhm(measure) || measure == Measure::Diode || measure == Measure::Capacitance;
    if (over)
        texts.insert(texts.begin(), "OL");
    return misread(Code::AskBack, over ? "A 1 alone at the left of the display means OL. Is it that, or a real 1?"
                                       : "A 1 alone at the left of the display means over the range. Is it that, or a real 1?", texts);
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

Result ofNumber(const Numeral &numeral, std::string_view plain, Measure measure, const Meter &meter)
{
    const auto unit = unitBehind(numeral, trimmed(plain.substr(numeral.length)), measure);
    if (!unit)
        return notUnderstood(plain, measure);
    const bool volts = unit->unit == Unit::Volt || unit->unit == Unit::Ampere;
    if (unit->sort != TypedUnit::Sort::Unsaid && !volts)
        return notUnderstood(plain, measure);
    if (unit->unit != unitOf(measure))
        return wrongUnit(named(unit->unit), measure);
    if (unit->sort == TypedUnit::Sort::Direct && (measure == Measure::VoltageAc || measure == Measure::VoltageLowImpedance || measure == Measure::CurrentClamp))
        return wrongUnit("direct current", measure);
    if (unit->sort == TypedUnit::Sort::Alternating && (measure == Measure::VoltageDc || measure == Measure::Diode))
        return wrongUnit("alternating current", measure);
    if (numeral.form == Numeral::Form::Grouped)
        return misread(Code::NoThousands, "Write the number without separators of thousands.",
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

// "stays closed at 85 C": the temperature that was reached belongs to it.
Result ofStaysClosed(std::string_view plain, const Meter &meter)
{
    const std::string low = lowered(plain);
    for (const std::string_view joint : {" at ", " up to ", " until ", " to ", ", "}) {
        const auto at = low.find(joint);
        if (at == std::string::npos || typedWord(plain.substr(0, at)) != Reading::What::StaysClosed)
            continue;
        auto reached = understand(plain.substr(at + joint.size()), Measure::OpensAt, meter);
        if (!reached || reached->reading.what != Reading::What::Value)
            break;
        Reading reading;
        reading.what = Reading::What::StaysClosed;
        reading.amount = reached->reading.amount;
        return Understood{reading, "stays closed at " + reached->shownAs};
    }
    return notUnderstood(plain, Measure::OpensAt);
}

std::string_view withoutOpening(std::string_view plain)
{
    const std::string low = lowered(plain);
    for (const std::string_view start : {"opens at ", "opened at ", "opens ", "opened ", "at "})
        if (low.starts_with(start))
            return trimmed(plain.substr(start.size()));
    return plain;
}

Result ofAnswer(std::string_view typed)
{
    Reading reading;
    reading.what = Reading::What::Answer;
    reading.answer = std::string(trimmed(typed));
    return Understood{reading, reading.answer};
}

} // namespace

std::string_view word(Misread::Code code)
{
    static constexpr std::array<std::string_view, 8> kWords{"nothing", "too_long", "not_text", "not_understood", "wrong_unit", "ask_back", "no_thousands", "impossible"};
    return kWords[static_cast<std::size_t>(code)];
}

Expected<Understood, Misread> understand(std::string_view typed, Measure measure, const Meter &meter)
{
    if (typed.size() > kMostTyped)
        return misread(Code::TooLong, fmt::format("A reading has at most {} characters.", kMostTyped));
    if (firstBadByte(typed) != std::string_view::npos || hasHiddenCharacters(typed))
        return misread(Code::NotText, "There are characters in it that cannot be seen. Type the reading anew.");
    const std::string plain = plainTyped(typed);
    if (plain.empty())
        return misread(Code::Nothing, "Type what the meter shows.");
    if (unitOf(measure) == Unit::None)
        return ofAnswer(typed);
    if (const auto said = typedWord(plain))
        return ofWord(*said, measure);
    if (plain == "1 ." && !meter.autoRange)
        return ofWord(Reading::What::OverLimit, measure);
    const std::string_view number = measure == Measure::OpensAt ? withoutOpening(plain) : std::string_view(plain);
    if (plain == "1 .")
        return understand("1.", measure, meter);
    if (const auto numeral = numeralAt(number))
        return ofNumber(*numeral, number, measure, meter);
    return measure == Measure::OpensAt ? ofStaysClosed(plain, meter) : notUnderstood(plain, measure);
}

} // namespace core
