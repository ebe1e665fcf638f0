// Any bytes as a typed reading, and as a stored one. What must hold: a reading is taken or refused with a sentence; what
// is taken can be stored, is within what a meter shows, and is understood again as it is said back; what is offered in
// place of a refused text is understood; a judgement never both convicts and clears.
#include "core/base/text.h"
#include "core/reading/conformity.h"
#include "core/reading/understand.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

using namespace core;

namespace {

void must(bool holds, const char *what, std::string_view typed)
{
    if (holds)
        return;
    std::fprintf(stderr, "%s: [%s]\n", what, printable(typed).c_str());
    std::abort();
}

void checkRefusal(const Misread &misread, std::string_view typed, Measure measure, const Meter &meter)
{
    must(!misread.text.empty(), "refused without a word", typed);
    must(firstBadByte(misread.text) == std::string_view::npos, "the refusal is no clean text", typed);
    for (const std::string &text : misread.suggestions)
        must(understand(text, measure, meter).has_value(), "a suggestion is not understood", typed);
}

void checkTaken(const Reading &reading, std::string_view typed, Measure measure)
{
    must(readStored(storedText(reading)) == reading, "not stored as it is", typed);
    if (reading.what == Reading::What::Answer)
        return;
    const auto again = understand(saidBack(reading), measure, {});
    must(again && again->reading.what == reading.what, "said back as something else", typed);
    if (reading.what != Reading::What::Value)
        return;
    must(std::isfinite(reading.amount.value) && reading.step > 0 && reading.amount.unit == unitOf(measure),
         "no value of this test", typed);
    const double off = std::abs(again->reading.amount.value - reading.amount.value);
    must(off <= reading.step / 2 * (1 + 1e-9), "said back as another value", typed);
}

void checkJudged(const Reading &reading, std::string_view typed, Measure measure, const Meter &meter, unsigned shape)
{
    Limits limits;
    limits.unit = unitOf(measure);
    limits.openIsGood = (shape & 1U) != 0;
    limits.lo = (shape & 2U) != 0 ? 9.4 : -Limits::kNone;
    limits.hi = (shape & 4U) != 0 ? 12.3 : Limits::kNone;
    limits.badBelow = (shape & 8U) != 0 ? 8 : -Limits::kNone;
    limits.badAbove = (shape & 16U) != 0 ? 13.9 : Limits::kNone;
    const Judgement j = judge(reading, limits, measure, meter);
    must(!(j.convicts && j.clears), "convicts and clears", typed);
    must(std::isnan(j.pGood) == (j.conformity == Conformity::NoConclusion), "a figure without a conclusion", typed);
    must(std::isnan(j.pGood) || (j.pGood >= 0 && j.pGood <= 1), "no probability", typed);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    if (size < 2)
        return 0;
    const Measure measure = static_cast<Measure>(data[0] % 15);
    Meter meter;
    meter.autoRange = (data[1] & 1U) == 0;
    if (!meter.autoRange)
        meter.top = 200 * std::pow(10, (data[1] >> 1U) % 6U);
    if ((data[1] & 128U) != 0)
        meter.probeZero = Amount{.2, Unit::Ohm};
    const std::string typed(data + 2, data + size);
    const auto result = understand(typed, measure, meter);
    if (result) {
        must(typed.size() <= kMostTyped, "too long and taken", typed);
        checkTaken(result->reading, typed, measure);
        checkJudged(result->reading, typed, measure, meter, data[1] >> 2U);
    } else {
        checkRefusal(result.error(), typed, measure, meter);
    }
    if (const auto stored = readStored(typed))
        must(readStored(storedText(*stored)) == stored, "stored text changes when stored again", typed);
    return 0;
}
