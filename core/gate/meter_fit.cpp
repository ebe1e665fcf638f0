#include "core/gate/meter_fit.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <fmt/format.h>

namespace core {
namespace {

constexpr std::array<std::string_view, 5> kRoman{"", "i", "ii", "iii", "iv"};

int volts(std::string_view word)
{
    int value = 0;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
    const std::string_view rest(end, static_cast<std::size_t>(word.data() + word.size() - end));
    return error == std::errc() && (rest.empty() || rest == "v") && value > 0 && value <= 10000 ? value : 0;
}

} // namespace

MeterMark markIn(std::string_view text)
{
    const std::string low = lowered(trimmed(text));
    std::vector<std::string_view> words;
    for (std::string_view word : split(low, ' '))
        if (!word.empty())
            words.push_back(word);
    if (words.size() < 3 || words.size() > 4 || words[0] != "cat" || (words.size() == 4 && words[3] != "v"))
        return {};
    const auto roman = std::ranges::find(kRoman, words[1]);
    if (roman == kRoman.end() || roman == kRoman.begin() || volts(words[2]) == 0)
        return {};
    return {static_cast<int>(roman - kRoman.begin()), volts(words[2])};
}

std::string shown(MeterMark mark)
{
    if (mark.category < 1 || mark.category > 4)
        return "no mark";
    std::string roman(kRoman[static_cast<std::size_t>(mark.category)]);
    std::ranges::transform(roman, roman.begin(), [](char c) { return static_cast<char>(c - 'a' + 'A'); });
    return fmt::format("CAT {} {} V", roman, mark.volts);
}

MeterMark lowest(const MeterFit &meter)
{
    if (meter.marks.empty())
        return {};
    MeterMark least = meter.marks.front();
    for (const MeterMark &mark : meter.marks)
        least = {std::min(least.category, mark.category), std::min(least.volts, mark.volts)};
    return least;
}

std::optional<std::string> whyUnfit(const MeterFit &meter, MeterMark needed)
{
    if (!meter.voltsAc)
        return "This meter has no position for V~.";
    if (meter.lowBattery)
        return "The meter shows a low battery: what it reads cannot be trusted.";
    if (meter.leadsInAmpJack)
        return "A lead is in the A jack: there it is a short circuit.";
    const MeterMark has = lowest(meter);
    if (meter.unfitForMains || has.category == 0)
        return "This meter, or one of its leads, is not marked for mains or is damaged: dead tests only.";
    if (has.category < needed.category || has.volts < needed.volts)
        return fmt::format("This place needs {} or more; the lowest mark of meter and leads is {}.", shown(needed), shown(has));
    return std::nullopt;
}

} // namespace core
