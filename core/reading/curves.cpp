#include "core/reading/curves.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace core {
namespace {

constexpr double kZeroCelsius = 273.15;
constexpr double kCelsius25 = 298.15;
constexpr double kCopper = 234.5;
// IEC 60751:2008 table of coefficients
constexpr double kA = 3.9083e-3;
constexpr double kB = -5.775e-7;
constexpr double kC = -4.183e-12;
constexpr double kPlatinumLow = -200;
constexpr double kPlatinumHigh = 850;

double platinumSlope(double r0, double t)
{
    return r0 * (kA + 2 * kB * t + (t < 0 ? kC * (4 * t - 300) * t * t : 0));
}

constexpr std::array<Curve, 7> kFamilies{{
    {Curve::Family::Ntc, 2.7e3, 3900},
    {Curve::Family::Ntc, 5e3, 3850},
    {Curve::Family::Ntc, 10e3, 3435},
    {Curve::Family::Ntc, 10e3, 3950},
    {Curve::Family::Ntc, 12e3, 3800},
    {Curve::Family::Ntc, 50e3, 3950},
    {Curve::Family::Ntc, 100e3, 3950},
}};

double worstLogRatio(const Curve &curve, std::span<const CurvePoint> points)
{
    double worst = 0;
    for (const CurvePoint &p : points)
        worst = std::max(worst, std::abs(std::log(p.ohm / curveOhm(curve, p.celsius))));
    return worst;
}

} // namespace

double ntcOhm(double r25, double beta, double celsius)
{
    return r25 * std::exp(beta * (1 / (celsius + kZeroCelsius) - 1 / kCelsius25));
}

std::optional<double> ntcCelsius(double r25, double beta, double ohm)
{
    const double perKelvin = 1 / kCelsius25 + std::log(ohm / r25) / beta;
    if (!(ohm > 0) || !(perKelvin > 0))
        return std::nullopt;
    return 1 / perKelvin - kZeroCelsius;
}

double platinumOhm(double r0, double celsius)
{
    const double t = celsius;
    return r0 * (1 + kA * t + kB * t * t + (t < 0 ? kC * (t - 100) * t * t * t : 0));
}

std::optional<double> platinumCelsius(double r0, double ohm)
{
    const double rounding = 1e-4 * r0; // tables print no more digits
    if (!(ohm >= platinumOhm(r0, kPlatinumLow) - rounding && ohm <= platinumOhm(r0, kPlatinumHigh) + rounding))
        return std::nullopt;
    double t = (-kA + std::sqrt(kA * kA - 4 * kB * (1 - ohm / r0))) / (2 * kB);
    // above 0 C that is the answer; below, the cubic term is small and Newton needs three or four turns
    for (int turn = 0; t < 0 && turn < 20; ++turn) {
        const double off = platinumOhm(r0, t) - ohm;
        t -= off / platinumSlope(r0, t);
        if (std::abs(off) < 1e-12 * r0)
            break;
    }
    return t;
}

double copperOhm(double ohm, double atCelsius, double celsius)
{
    return ohm * (kCopper + celsius) / (kCopper + atCelsius);
}

double copperCelsius(double ohm, double atCelsius, double nowOhm)
{
    return nowOhm / ohm * (kCopper + atCelsius) - kCopper;
}

double heaterHotOhm(double volts, double watts)
{
    return volts * volts / watts;
}

double heaterColdOhm(double volts, double watts, double k)
{
    return heaterHotOhm(volts, watts) / k;
}

double curveOhm(const Curve &curve, double celsius)
{
    switch (curve.family) {
    case Curve::Family::Ntc:
        return ntcOhm(curve.r0, curve.beta, celsius);
    case Curve::Family::Platinum:
        return platinumOhm(curve.r0, celsius);
    case Curve::Family::Copper:
        break;
    }
    return copperOhm(curve.r0, 20, celsius);
}

double curveSlope(const Curve &curve, double celsius)
{
    switch (curve.family) {
    case Curve::Family::Ntc: {
        const double kelvin = celsius + kZeroCelsius;
        return -curve.beta / (kelvin * kelvin) * ntcOhm(curve.r0, curve.beta, celsius);
    }
    case Curve::Family::Platinum:
        return platinumSlope(curve.r0, celsius);
    case Curve::Family::Copper:
        break;
    }
    return curve.r0 / (kCopper + 20);
}

std::optional<double> curveCelsius(const Curve &curve, double ohm)
{
    switch (curve.family) {
    case Curve::Family::Ntc:
        return ntcCelsius(curve.r0, curve.beta, ohm);
    case Curve::Family::Platinum:
        return platinumCelsius(curve.r0, ohm);
    case Curve::Family::Copper:
        break;
    }
    return copperCelsius(curve.r0, 20, ohm);
}

std::span<const Curve> ntcFamilies()
{
    return kFamilies;
}

bool fits(const Curve &curve, std::span<const CurvePoint> points, double share, double uCelsius)
{
    return std::ranges::all_of(points, [&](const CurvePoint &p) {
        const double expected = curveOhm(curve, p.celsius);
        return std::abs(p.ohm - expected) <= share * expected + std::abs(curveSlope(curve, p.celsius)) * uCelsius;
    });
}

std::optional<Curve> anotherFamily(const Curve &assumed, std::span<const CurvePoint> points, double share, double uCelsius)
{
    if (points.empty() || assumed.family != Curve::Family::Ntc || fits(assumed, points, share, uCelsius))
        return std::nullopt;
    const auto *const nearest = std::ranges::min_element(kFamilies, {}, [&](const Curve &c) { return worstLogRatio(c, points); });
    return fits(*nearest, points, share, uCelsius) ? std::optional(*nearest) : std::nullopt;
}

} // namespace core
