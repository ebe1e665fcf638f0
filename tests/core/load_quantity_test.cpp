// How quantities are written is the format's own; factors of the prefixes: BIPM, The International System of Units, 9th
// edition, table 7.
#include "core/load/quantity.h"

#include <gtest/gtest.h>

#include <limits>

namespace core {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();

void expectSpan(std::string_view text, double lo, double hi, Unit unit, Span::Of of = Span::Of::Itself)
{
    const Read<Span> span = spanIn(text);
    ASSERT_TRUE(span) << text << ": " << span.error().text;
    EXPECT_DOUBLE_EQ(span->lo, lo) << text;
    EXPECT_DOUBLE_EQ(span->hi, hi) << text;
    EXPECT_EQ(span->unit, unit) << text;
    EXPECT_EQ(span->of, of) << text;
}

TEST(LoadQuantity, Spans)
{
    expectSpan("0 to 0.5 ohm", 0, 0.5, Unit::Ohm);
    expectSpan("100 kohm", 1e5, 1e5, Unit::Ohm);
    expectSpan("900 ohm to 2 kohm", 900, 2000, Unit::Ohm);
    expectSpan("2  to  5   kohm", 2000, 5000, Unit::Ohm);
    expectSpan("at most -15 C", -kEndless, -15, Unit::Celsius);
    expectSpan("at least 18 C", 18, kEndless, Unit::Celsius);
    expectSpan("-14 to -5 C", -14, -5, Unit::Celsius);
    expectSpan("0.88 to 1.15 of rating", 0.88, 1.15, Unit::None, Span::Of::Rating);
    expectSpan("0.85 of curve", 0.85, 0.85, Unit::None, Span::Of::Curve);
    expectSpan("10 uF", 1e-5, 1e-5, Unit::Farad);
    expectSpan("5 to 5 V", 5, 5, Unit::Volt);
}

TEST(LoadQuantity, WhatIsNoSpan)
{
    for (const auto *text :
         {"", "ohm", "to", "1 to", "to 2 ohm", "1 2 ohm", "one ohm", "1 ohm 2", "0x10 ohm", "1e3 ohm", "nan ohm", "inf ohm",
          "1,5 ohm", "1 to 2 to 3 ohm", "1 V to 2 ohm", "1 of plate", "at most", "at most ohm", "1 ohm of rating"})
        EXPECT_FALSE(spanIn(text)) << text;
    EXPECT_EQ(spanIn("1 to 2").error().kind, DiagnosticKind::WrongUnit);
    EXPECT_EQ(spanIn("2 to 1 ohm").error().kind, DiagnosticKind::Reversed);
    EXPECT_EQ(spanIn("-1 to 1 ohm").error().kind, DiagnosticKind::OutOfRange);
    EXPECT_EQ(spanIn("at most -1 ohm").error().kind, DiagnosticKind::OutOfRange);
    EXPECT_FALSE(spanIn(std::string(400, '9').append(" ohm"))) << "not finite";
    EXPECT_EQ(spanIn(std::string(307, '9').append(" kohm")).error().kind, DiagnosticKind::OutOfRange)
        << "finite, until it is multiplied";
    EXPECT_EQ(amountIn(std::string(307, '9').append(" kV"), Unit::Volt).error().kind, DiagnosticKind::OutOfRange);
}

TEST(LoadQuantity, WhatAPathShows)
{
    EXPECT_EQ(shownIn("OL")->what, Shown::What::Open);
    EXPECT_EQ(shownIn("jumps")->what, Shown::What::Jumps);
    EXPECT_EQ(shownIn("0 to 1 ohm")->span.hi, 1);
    for (const auto *text : {"ol", "0L", "Ol", "open", "Jumps"})
        EXPECT_FALSE(shownIn(text)) << text;
}

TEST(LoadQuantity, Amounts)
{
    EXPECT_EQ(amountIn("-120 V", Unit::Volt).value(), -120);
    EXPECT_EQ(amountIn("5 min", Unit::Second).value(), 300);
    EXPECT_EQ(amountIn("90 s", Unit::Second).value(), 90);
    EXPECT_EQ(amountIn("90", Unit::Second).error().kind, DiagnosticKind::NotAQuantity);
    EXPECT_EQ(amountIn("90 V", Unit::Second).error().kind, DiagnosticKind::WrongUnit);
    EXPECT_EQ(amountIn("-1 s", Unit::Second).error().kind, DiagnosticKind::OutOfRange);
}

TEST(LoadQuantity, Ratings)
{
    EXPECT_EQ(ratingIn("240 V 5400 W")->volts, 240);
    EXPECT_EQ(ratingIn("240 V 5.4 kW")->watts, 5400);
    EXPECT_DOUBLE_EQ(ratingIn("10 uF")->value.value().value, 1e-5);
    EXPECT_TRUE(ratingIn("240 V 5400 W")->assumed) << "until the plate was read";
    for (const auto *text : {"240 V", "5400 W 240 V", "240 V 5400", "240 V 0 W", "0 ohm", "240 V 5400 W 3 A", ""})
        EXPECT_EQ(ratingIn(text).has_value(), text == std::string_view("240 V")) << text;
}

TEST(LoadQuantity, Prices)
{
    const Read<Price> price = priceIn("10-40 USD");
    ASSERT_TRUE(price);
    EXPECT_EQ(price->lo, 10);
    EXPECT_EQ(price->hi, 40);
    EXPECT_EQ(price->currency, "USD");
    EXPECT_EQ(priceIn("12.50-19.90 EUR")->hi, 19.9);
    EXPECT_EQ(priceIn("15 USD")->lo, 15);
    for (const auto *text : {"40-10 USD", "-10 USD", "10-20", "10-20 usd", "10-20-30 USD", "10 - 20 USD", "$10"})
        EXPECT_FALSE(priceIn(text)) << text;
}

} // namespace
} // namespace core
