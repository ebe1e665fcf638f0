#include "core/belief/prediction.h"

#include "core/base/normal.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

constexpr double kTopOhm = 40e6;
constexpr double kFingersFrom = 100e3; // ohm: what a hand or damp bridges when the part is open
constexpr double kToneAt = 35, kToneSpread = 15; // a tester beeps below a threshold somewhere in 20..50 ohm

bool inOhm(Measure measure) { return measure == Measure::Resistance || measure == Measure::Continuity; }
double stepOf(const Reading &r) { return r.step > 0 ? r.step : .1; }

struct Spread // of a finite term as displayed: normal s, rectangular half width
{
    double s, halfWidth;
};

Spread spreadOf(const Term &t, double deviation, double halfWidth)
{
    const double less = std::min(t.h, halfWidth);
    return {std::sqrt(t.sigma * t.sigma + deviation * deviation + less * less / 3), std::max(t.h, halfWidth)};
}

ProbeError probesFor(Measure measure, const Meter &meter) { return inOhm(measure) ? probeError(meter) : ProbeError{}; }

double finiteShowsValue(const Term &t, const Reading &r, Measure measure, const Meter &meter)
{
    const double d = stepOf(r), value = r.amount.value;
    const ProbeError probes = probesFor(measure, meter);
    const auto [s, halfWidth] = spreadOf(t, probes.deviation, meterHalfWidth(measure, value, d));
    const double mu = t.mu + probes.mean;
    const bool downToNothing = measure != Measure::Temperature && measure != Measure::OpensAt && value < d / 2;
    const double below = downToNothing ? 0 : normalPlusUniformCdf(value - d / 2, mu, s, halfWidth);
    return std::max(0., normalPlusUniformCdf(value + d / 2, mu, s, halfWidth) - below);
}

double finiteShowsOver(const Term &t, double top, double step, Measure measure, const Meter &meter)
{
    const ProbeError probes = probesFor(measure, meter);
    const auto [s, halfWidth] = spreadOf(t, probes.deviation, meterHalfWidth(measure, top, step));
    return 1 - normalPlusUniformCdf(top, t.mu + probes.mean, s, halfWidth);
}

double finiteShowsOpen(const Term &t, Measure measure, const Meter &meter)
{
    if (!inOhm(measure))
        return 0;
    if (t.mu > 1e6) // far up, damp and the meter's top move by half a natural logarithm
        return 1 - normalCdf((std::log(meter.top) - std::log(t.mu)) / .5);
    return meter.autoRange ? 0 : finiteShowsOver(t, meter.top, meter.top / meter.displayCounts, measure, meter);
}

double finiteTone(const Term &t, const Meter &meter)
{
    const ProbeError probes = probeError(meter);
    const auto [s, halfWidth] = spreadOf(t, probes.deviation, kToneSpread);
    return normalPlusUniformCdf(kToneAt, t.mu + probes.mean, s, halfWidth);
}

double openShowsValue(const Reading &r, Measure measure)
{
    if (!inOhm(measure) || r.amount.value <= kFingersFrom)
        return 0;
    const double d = stepOf(r);
    return .03 * std::log((r.amount.value + d / 2) / (r.amount.value - d / 2)) / std::log(kTopOhm / kFingersFrom);
}

double openShows(const Reading &r, Measure measure)
{
    switch (r.what) {
    case Reading::What::Value: return openShowsValue(r, measure);
    case Reading::What::OverLimit: return .97;
    case Reading::What::NoTone:
    case Reading::What::StaysClosed: return 1; // a thermostat whose opening is predicted nowhere stays closed
    case Reading::What::Jumps: return .005;
    case Reading::What::Tone:
    case Reading::What::Answer: break;
    }
    return 0;
}

double finiteShows(const Term &t, const Reading &r, Measure measure, const Meter &meter)
{
    switch (r.what) {
    case Reading::What::Value: return finiteShowsValue(t, r, measure, meter);
    case Reading::What::OverLimit: return finiteShowsOpen(t, measure, meter);
    case Reading::What::Tone: return finiteTone(t, meter);
    case Reading::What::NoTone: return 1 - finiteTone(t, meter);
    case Reading::What::StaysClosed: return r.amount.unit == Unit::None ? .05 : finiteShowsOver(t, r.amount.value, stepOf(r), measure, meter);
    case Reading::What::Jumps: return .005;
    case Reading::What::Answer: break;
    }
    return 0;
}

struct Range // of what a slip shows, in the measure's unit: near nothing, and anywhere
{
    double low, lowTop, low2, top;
};

Range slipRange(Measure measure)
{
    switch (measure) {
    case Measure::CurrentClamp: return {.30, .5, .60, 30};
    case Measure::Capacitance: return {.30, 1e-9, .60, 100e-6};
    case Measure::Diode: return {.30, .1, .60, 2};
    case Measure::Temperature: return {.05, 40, .85, 300};
    case Measure::OpensAt: return {.05, 40, .65, 300};
    case Measure::Frequency: return {.30, 1, .60, 400};
    case Measure::Duty: return {.30, 1, .60, 100};
    default: return {.30, 5, .60, 260};
    }
}

double slipOhms(double value, double d)
{
    const double hi = value + d / 2, lo = std::max(value - d / 2, 1.);
    return (value <= 1 ? .15 * d / 1.05 : 0) + (hi > lo ? .35 * std::log(hi / lo) / std::log(kTopOhm) : 0);
}

double slipValue(const Reading &r, Measure measure)
{
    const double d = stepOf(r), value = std::abs(r.amount.value);
    if (inOhm(measure))
        return slipOhms(value, d);
    const Range range = slipRange(measure);
    return (value <= range.lowTop ? range.low * d / range.lowTop : 0) + (value <= range.top ? range.low2 * d / range.top : 0);
}

double slipOf(const Reading &r, Measure measure)
{
    static const double kToneShare = .15 + .35 * std::log(kToneAt) / std::log(kTopOhm); // the ohms that would beep
    switch (r.what) {
    case Reading::What::Value: return slipValue(r, measure);
    case Reading::What::OverLimit: return .40;
    case Reading::What::Jumps: return .10;
    case Reading::What::Tone: return kToneShare;
    case Reading::What::NoTone: return .90 - kToneShare;
    case Reading::What::StaysClosed: return .20;
    case Reading::What::Answer: break;
    }
    return 0;
}

} // namespace

double integralOfNormalCdf(double z)
{
    if (z > 8)
        return z;
    return z < -8 ? 0 : z * normalCdf(z) + normalDensity(z);
}

double normalPlusUniformCdf(double x, double mu, double s, double halfWidth)
{
    if (halfWidth <= 0)
        return s <= 0 ? (x >= mu ? 1 : 0) : normalCdf((x - mu) / s);
    if (s <= 1e-9 * halfWidth)
        return std::clamp((x - mu + halfWidth) / (2 * halfWidth), 0., 1.);
    const double up = integralOfNormalCdf((x + halfWidth - mu) / s), down = integralOfNormalCdf((x - halfWidth - mu) / s);
    return std::clamp(s / (2 * halfWidth) * (up - down), 0., 1.);
}

Prediction openPrediction() { return {{{1, Term::What::Open, 0, 0, 0}}}; }

Prediction finitePrediction(double mu, double sigma, double h) { return {{{1, Term::What::Finite, mu, sigma, h}}}; }

Prediction mixed(double weight, const Prediction &a, const Prediction &b)
{
    Prediction result;
    for (Term t : a.terms)
        t.weight *= weight, result.terms.push_back(t);
    for (Term t : b.terms)
        t.weight *= 1 - weight, result.terms.push_back(t);
    return result;
}

Prediction jumpingPrediction(const Prediction &open, const Prediction &closed)
{
    Prediction result = mixed(.25 / .40, open, closed);
    for (Term &t : result.terms)
        t.weight *= .40;
    result.terms.push_back({.60, Term::What::Jumps, 0, 0, 0});
    return result;
}

double probability(const Prediction &prediction, const Reading &reading, Measure measure, const Meter &meter)
{
    double sum = 0;
    for (const Term &t : prediction.terms) {
        if (t.what == Term::What::Finite)
            sum += t.weight * finiteShows(t, reading, measure, meter);
        else if (t.what == Term::What::Open)
            sum += t.weight * openShows(reading, measure);
        else if (reading.what == Reading::What::Jumps)
            sum += t.weight;
    }
    return std::isfinite(sum) ? sum : 0;
}

double slipDensity(const Reading &reading, Measure measure)
{
    return std::max(slipOf(reading, measure), 1e-9); // nothing a person typed is impossible
}

bool different(const Reading &one, const Reading &other, Measure measure)
{
    if (one.what != other.what)
        return true;
    if (one.what == Reading::What::Answer)
        return one.answer != other.answer;
    if (one.what != Reading::What::Value)
        return false;
    const double step = std::max(stepOf(one), stepOf(other));
    const double size = std::max(std::abs(one.amount.value), std::abs(other.amount.value));
    return std::abs(one.amount.value - other.amount.value) > 2 * (meterHalfWidth(measure, size, step) + step);
}

} // namespace core
