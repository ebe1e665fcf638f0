// A reading as one line of text and back, without loss.
#include "core/base/text.h"
#include "core/reading/reading.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace core {
namespace {

constexpr std::array<std::string_view, 7> kWhat{"value", "over_limit", "tone", "no_tone", "jumps", "stays_closed", "answer"};
constexpr std::array<std::string_view, 10> kUnit{"-", "ohm", "V", "A", "F", "Hz", "Cel", "W", "s", "%"};
constexpr std::string_view kAnswer = " = ";

template<class Words>
std::optional<std::size_t> indexIn(const Words &words, std::string_view word)
{
    const auto at = std::ranges::find(words, word);
    return at == words.end() ? std::nullopt : std::optional(static_cast<std::size_t>(at - words.begin()));
}

std::string amountText(const Amount &amount)
{
    return " " + plainNumber(amount.value) + " " + std::string(kUnit[static_cast<std::size_t>(amount.unit)]);
}

// numberIn() of base reads what people write; a stored number may carry an exponent as well.
std::optional<double> storedNumber(std::string_view text)
{
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool whole = error == std::errc{} && end == text.data() + text.size() && std::isfinite(value);
    return whole ? std::optional(value) : std::nullopt;
}

std::optional<Amount> storedAmount(std::string_view number, std::string_view unit)
{
    const auto value = storedNumber(number);
    const auto code = indexIn(kUnit, unit);
    return value && code ? std::optional(Amount{*value, static_cast<Unit>(*code)}) : std::nullopt;
}

bool isId(std::string_view text)
{
    return !text.empty() &&
           std::ranges::all_of(text, [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
}

// "value 10.8 ohm step 0.1", "stays_closed 85 Cel", "tone"
std::optional<Reading> readHead(std::string_view text)
{
    const auto words = split(text, ' ');
    const auto what = indexIn(kWhat, words.front());
    if (!what)
        return std::nullopt;
    Reading reading;
    reading.what = static_cast<Reading::What>(*what);
    const bool value = reading.what == Reading::What::Value;
    if (words.size() == 1)
        return value || reading.what == Reading::What::StaysClosed ? std::nullopt : std::optional(reading);
    if (words.size() != (value ? 5U : 3U) || (!value && reading.what != Reading::What::StaysClosed))
        return std::nullopt;
    const auto amount = storedAmount(words[1], words[2]);
    const auto step = value && words[3] == "step" ? storedNumber(words[4]) : value ? std::nullopt : std::optional(0.0);
    if (!amount || !step)
        return std::nullopt;
    reading.amount = *amount;
    reading.step = *step;
    return reading;
}

} // namespace

std::string storedText(const Reading &reading)
{
    std::string text(kWhat[static_cast<std::size_t>(reading.what)]);
    const bool value = reading.what == Reading::What::Value;
    if (value || reading.what == Reading::What::StaysClosed)
        text += amountText(reading.amount);
    if (value)
        text += " step " + plainNumber(reading.step);
    for (const auto &[name, amount] : reading.with)
        text += "; " + name + amountText(amount);
    if (reading.what == Reading::What::Answer)
        text += std::string(kAnswer) + reading.answer;
    return text;
}

std::optional<Reading> readStored(std::string_view text)
{
    const auto at = text.find(kAnswer);
    const auto parts = split(text.substr(0, at), ';');
    auto reading = readHead(parts.front());
    if (!reading || (reading->what == Reading::What::Answer) != (at != std::string_view::npos))
        return std::nullopt;
    if (at != std::string_view::npos)
        reading->answer = text.substr(at + kAnswer.size());
    for (std::size_t i = 1; i < parts.size(); ++i) {
        const auto words = split(parts[i], ' '); // a blank first: "; name number unit"
        const auto amount =
            words.size() == 4 && words[0].empty() && isId(words[1]) ? storedAmount(words[2], words[3]) : std::nullopt;
        if (!amount || !reading->with.emplace(words[1], *amount).second)
            return std::nullopt;
    }
    return reading;
}

} // namespace core
