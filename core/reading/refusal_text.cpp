#include "core/reading/refusal_text.h"

#include "core/base/text.h"
#include "core/reading/typed_word.h"

#include <array>
#include <fmt/format.h>

namespace core {

std::string_view word(Misread::Code code)
{
    static constexpr std::array<std::string_view, 8> kWords{"nothing",    "too_long", "not_text",     "not_understood",
                                                            "wrong_unit", "ask_back", "no_thousands", "impossible"};
    return kWords[static_cast<std::size_t>(code)];
}

Understanding refused(Misread::Code code, std::string text, std::vector<std::string> suggestions)
{
    return unexpected(Misread{code, std::move(text), std::move(suggestions)});
}

std::string_view plural(Unit unit)
{
    static constexpr std::array<std::string_view, 10> kNames{"nothing", "ohms",    "volts", "amps",    "microfarads",
                                                             "hertz",   "degrees", "watts", "seconds", "percent"};
    return kNames[static_cast<std::size_t>(unit)];
}

Understanding notUnderstood(std::string_view plain, Measure measure)
{
    std::vector<std::string> near{nearestTypedWord(plain)};
    if (near.front().empty() || !understand(near.front(), measure, {}))
        near.clear();
    const std::string_view reads = plural(unitOf(measure));
    return refused(Misread::Code::NotUnderstood,
                   fmt::format("\"{}\" is not understood as a reading in {}.", printable(plain), reads), near);
}

Understanding wrongUnit(std::string_view said, Measure measure)
{
    const std::string_view reads = plural(unitOf(measure));
    return refused(Misread::Code::WrongUnit,
                   fmt::format("This test reads {}, not {}. Look at the dial, then read again.", reads, said));
}

} // namespace core
