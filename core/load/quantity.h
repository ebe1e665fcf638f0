#pragma once
// The few things that are parsed out of a text: "0 to 0.5 ohm", "at most -15 C", "0.88 to 1.15 of rating", "OL",
// "jumps", "240 V 5400 W", "10-40 USD", "90 s". Nothing else is.
#include "core/base/expected.h"
#include "core/diag/diagnostic.h"
#include "core/tree/appliance.h"

namespace core {

struct QuantityFault
{
    DiagnosticKind kind = DiagnosticKind::NotAQuantity;
    std::string text, hint;
};
template<class T>
using Read = Expected<T, QuantityFault>;

// A range, or a single value (lo == hi). Ohm, farad, hertz, watt, second and factors are never negative; lo <= hi.
Read<Span> spanIn(std::string_view text);
Read<Shown> shownIn(std::string_view text);              // a span, OL or jumps
Read<double> amountIn(std::string_view text, Unit unit); // "120 V", "-120 V", "5 min" (a time: seconds)
Read<Rating> ratingIn(std::string_view text);            // "240 V 5400 W", or a single value
Read<Price> priceIn(std::string_view text);              // "10-40 USD"

} // namespace core
