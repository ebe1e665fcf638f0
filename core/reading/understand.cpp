#include "core/reading/understand.h"

#include "core/base/text.h"
#include "core/reading/typed_number.h"
#include "core/reading/typed_word.h"

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

Understanding ofWord(Reading::What what, Measure measure)
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
            return refused(Code::AskBack, "At which temperature was that? Write the degrees.");
        return refused(Code::AskBack, "OL means more than this range can show. Choose a higher range and read again.");
    case Reading::What::Tone:
    case Reading::What::NoTone:
        return ohm ? Understanding(Understood{reading, saidBack(reading)}) : wrongUnit("a tone", measure);
    case Reading::What::StaysClosed:
        if (measure != Measure::OpensAt)
            return wrongUnit("a switch that stays closed", measure);
        break;
    case Reading::What::Jumps:
    case Reading::What::Value:
    case Reading::What::Answer:
        break;
    }
    return Understood{reading, saidBack(reading)};
}

// "stays closed at 85 C": the temperature that was reached belongs to it.
Understanding ofStaysClosed(std::string_view plain, const Meter &meter)
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

Understanding ofAnswer(std::string_view typed)
{
    Reading reading;
    reading.what = Reading::What::Answer;
    reading.answer = std::string(trimmed(typed));
    return Understood{reading, reading.answer};
}

} // namespace

Expected<Understood, Misread> understand(std::string_view typed, Measure measure, const Meter &meter)
{
    if (typed.size() > kMostTyped)
        return refused(Code::TooLong, fmt::format("A reading has at most {} characters.", kMostTyped));
    if (firstBadByte(typed) != std::string_view::npos || hasHiddenCharacters(typed))
        return refused(Code::NotText, "There are characters in it that cannot be seen. Type the reading anew.");
    const std::string plain = plainTyped(typed);
    if (plain.empty())
        return refused(Code::Nothing, "Type what the meter shows.");
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
        return understandNumber(*numeral, number, measure, meter);
    return measure == Measure::OpensAt ? ofStaysClosed(plain, meter) : notUnderstood(plain, measure);
}

} // namespace core
