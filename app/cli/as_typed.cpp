#include "app/cli/as_typed.h"

#include "core/base/text.h"

#include <array>
#include <string>
#include <utility>

namespace app {
namespace {

// one spelling each; the Greek letter, the ohm sign and the micro sign are other characters than they look
constexpr auto kSpellings = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"\u03a9", "ohm"},
    {"\u2126", "ohm"},
    {"ohms", "ohm"},
    {"\u00b5", "u"},
    {"\u03bc", "u"},
    {"\u00b0", ""},
    {"volts", "v"},
    {"volt", "v"},
    {"amps", "a"},
    {"amp", "a"},
    {"cel", "c"},
    {"degc", "c"},
    {" ", ""},
    {"\t", ""},
    {"\u00a0", ""},
    {"\u202f", ""},
    {"\u2009", ""},
});

std::string plain(std::string_view text)
{
    std::string out = core::lowered(core::trimmed(text));
    for (const auto &[spelt, one] : kSpellings)
        for (auto at = out.find(spelt); at != std::string::npos; at = out.find(spelt, at + one.size()))
            out.replace(at, spelt.size(), one);
    return out;
}

} // namespace

bool isAsTyped(std::string_view typed, std::string_view saidBack)
{
    // "k" and "M" say how large a value is: as they were typed, or asked
    const bool mega = saidBack.find(" M") != std::string_view::npos && typed.find('M') == std::string_view::npos;
    const std::string said = plain(typed);
    return !mega &&
           (said == plain(saidBack.substr(0, saidBack.find(", "))) || said == plain(saidBack.substr(0, saidBack.find(" ("))));
}

} // namespace app
