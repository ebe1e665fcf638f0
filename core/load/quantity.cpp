#include "core/load/quantity.h"

#include "core/base/text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace core {
namespace {

constexpr double kLargest = 1e12; // in the unit itself; no machine of a house comes near
constexpr double kEndless = std::numeric_limits<double>::infinity();
using Words = std::vector<std::string_view>;

QuantityFault notAQuantity(std::string_view text, std::string_view like)
{
    return {DiagnosticKind::NotAQuantity, fmt::format("`{}` is no quantity", text), fmt::format("write it like `{}`", like)};
}

QuantityFault wrongUnit(std::string_view text, std::string_view wanted)
{
    return {DiagnosticKind::WrongUnit, fmt::format("`{}` has not the unit wanted here", text),
            fmt::format("write it in {}", wanted)};
}

QuantityFault tooLarge(std::string_view text)
{
    return {DiagnosticKind::OutOfRange, fmt::format("`{}` is too large", text), "write what a meter can show"};
}

Words wordsOf(std::string_view text)
{
    Words words = split(text, ' ');
    std::erase_if(words, [](std::string_view w) { return w.empty(); });
    return words;
}

bool neverNegative(Unit unit)
{
    return unit != Unit::Celsius && unit != Unit::Volt && unit != Unit::Ampere;
}

// What the words behind the numbers say: a unit, or "of rating", "of curve".
struct Scale
{
    Unit unit = Unit::None;
    double factor = 1;
    Span::Of of = Span::Of::Itself;
};

std::optional<Scale> scaleOf(const Words &words)
{
    if (words.size() == 2 && words[0] == "of" && words[1] == "rating")
        return Scale{Unit::None, 1, Span::Of::Rating};
    if (words.size() == 2 && words[0] == "of" && words[1] == "curve")
        return Scale{Unit::None, 1, Span::Of::Curve};
    if (words.size() != 1)
        return std::nullopt;
    const auto named = unitNamed(words[0]);
    return named ? std::optional(Scale{named->unit, named->factor, Span::Of::Itself}) : std::nullopt;
}

Read<Span> checked(std::string_view text, Span span)
{
    const double least = neverNegative(span.unit) ? 0 : -kEndless;
    const double lo = span.lo == -kEndless ? span.hi : span.lo;
    const double hi = span.hi == kEndless ? span.lo : span.hi;
    if (lo < -kLargest || hi > kLargest)
        return unexpected(tooLarge(text));
    if (lo < least)
        return unexpected(
            QuantityFault{DiagnosticKind::OutOfRange, fmt::format("`{}` is below zero", text), "write what a meter can show"});
    if (span.lo > span.hi)
        return unexpected(QuantityFault{DiagnosticKind::Reversed, fmt::format("`{}` runs from the larger to the smaller", text),
                                        "write the smaller value first"});
    return span;
}

} // namespace

Read<Span> spanIn(std::string_view text)
{
    static constexpr std::string_view kLike = "0 to 0.5 ohm";
    Words words = wordsOf(text);
    const bool most = words.size() > 2 && words[0] == "at" && words[1] == "most";
    const bool least = words.size() > 2 && words[0] == "at" && words[1] == "least";
    if (most || least)
        words.erase(words.begin(), words.begin() + 2);
    const auto to = std::ranges::find(words, "to");
    const bool range = to != words.end() && !most && !least;
    const Words first = range ? Words(words.begin(), to) : words;
    const Words last = range ? Words(to + 1, words.end()) : words;
    const auto lo = first.empty() ? std::nullopt : numberIn(first[0]);
    const auto hi = last.empty() ? std::nullopt : numberIn(last[0]);
    if (!lo || !hi)
        return unexpected(notAQuantity(text, kLike));
    if (last.size() == 1)
        return unexpected(QuantityFault{DiagnosticKind::WrongUnit, fmt::format("`{}` has no unit", text),
                                        "add ohm, V, A, uF, Hz, C, W, s, %, `of rating` or `of curve`"});
    const auto scale = scaleOf(Words(last.begin() + 1, last.end()));
    const auto firstScale = first.size() == 1 ? scale : scaleOf(Words(first.begin() + 1, first.end()));
    if (!scale || !firstScale || scale->unit != firstScale->unit || scale->of != firstScale->of)
        return unexpected(notAQuantity(text, kLike));
    return checked(text,
                   {most ? -kEndless : *lo * firstScale->factor, least ? kEndless : *hi * scale->factor, scale->unit, scale->of});
}

Read<Shown> shownIn(std::string_view text)
{
    if (text == "OL")
        return Shown{Shown::What::Open, {}};
    if (text == "jumps")
        return Shown{Shown::What::Jumps, {}};
    if (lowered(text) == "ol" || text == "0L")
        return unexpected(notAQuantity(text, "OL"));
    return spanIn(text).map([](const Span &span) { return Shown{Shown::What::Value, span}; });
}

Read<double> amountIn(std::string_view text, Unit unit)
{
    const Words words = wordsOf(text);
    const auto number = words.size() == 2 ? numberIn(words[0]) : std::nullopt;
    const auto named = words.size() == 2 ? unitNamed(words[1]) : std::nullopt;
    if (!number || !named)
        return unexpected(notAQuantity(text, unit == Unit::Second ? "90 s" : fmt::format("120 {}", unitCode(unit))));
    if (named->unit != unit)
        return unexpected(wrongUnit(text, unitCode(unit)));
    if (*number < 0 && neverNegative(unit))
        return unexpected(QuantityFault{DiagnosticKind::OutOfRange, fmt::format("`{}` is below zero", text), ""});
    const double value = *number * named->factor;
    return std::abs(value) <= kLargest ? Read<double>(value) : unexpected(tooLarge(text));
}

Read<Rating> ratingIn(std::string_view text)
{
    const Words words = wordsOf(text);
    Rating rating;
    const auto value = [&](std::size_t at) {
        return amountIn(fmt::format("{} {}", words[at], words[at + 1]), unitNamed(words[at + 1]).value_or(ScaledUnit{}).unit);
    };
    if (words.size() != 2 && words.size() != 4)
        return unexpected(notAQuantity(text, "240 V 5400 W"));
    for (std::size_t at = 0; at < words.size(); at += 2) {
        const Read<double> amount = value(at);
        if (!amount)
            return unexpected(notAQuantity(text, "240 V 5400 W"));
        if (*amount <= 0)
            return unexpected(
                QuantityFault{DiagnosticKind::OutOfRange, fmt::format("a rating of `{}`", text), "a plate value is above zero"});
        const Unit unit = unitNamed(words[at + 1])->unit;
        if (words.size() == 2)
            rating.value = Amount{*amount, unit};
        else if (unit != (at == 0 ? Unit::Volt : Unit::Watt))
            return unexpected(wrongUnit(text, "volts and watts, `240 V 5400 W`"));
        else
            (at == 0 ? rating.volts : rating.watts) = *amount;
    }
    return rating;
}

Read<Price> priceIn(std::string_view text)
{
    const Words words = wordsOf(text);
    const bool isCode =
        words.size() == 2 && words[1].size() == 3 && std::ranges::all_of(words[1], [](char c) { return c >= 'A' && c <= 'Z'; });
    const std::vector<std::string_view> ends = isCode ? split(words[0], '-') : std::vector<std::string_view>{};
    const auto lo = ends.empty() ? std::nullopt : numberIn(ends.front());
    const auto hi = ends.empty() ? std::nullopt : numberIn(ends.back());
    if (!lo || !hi || ends.size() > 2)
        return unexpected(notAQuantity(text, "10-40 USD"));
    if (*lo > *hi)
        return unexpected(QuantityFault{DiagnosticKind::Reversed, fmt::format("`{}` runs from the larger to the smaller", text),
                                        "write the smaller price first"});
    return Price{*lo, *hi, std::string(words[1])};
}

} // namespace core
