#pragma once
// How resistance goes with temperature, and what a heater reads by its plate. Ohm, degrees Celsius, volts, watts.
#include "core/tree/kind.h"

#include <span>

namespace core {

// NTC by the B equation (IEC 60539-1): R = R25 exp(B (1/T - 1/298.15 K)). Real beads leave a single-B curve by several
// percent away from 25 to 85 C. Above -273.15 C.
double ntcOhm(double r25, double beta, double celsius);
std::optional<double> ntcCelsius(double r25, double beta, double ohm); // nullopt where no temperature gives it

// Platinum by Callendar and Van Dusen with the coefficients of IEC 60751: R0 (1 + A t + B t^2), below 0 C besides
// R0 C (t - 100) t^3. Valid from -200 to 850 C.
double platinumOhm(double r0, double celsius);
std::optional<double> platinumCelsius(double r0, double ohm); // nullopt outside -200 to 850 C

// Copper winding: R2 / R1 = (234.5 + t2) / (234.5 + t1) (resistance method of IEC 60335-1 and of UL's motor clauses).
double copperOhm(double ohm, double atCelsius, double celsius);
double copperCelsius(double ohm, double atCelsius, double nowOhm); // ohm > 0

// A heater by its plate: V^2/P when hot; cold it is less by k, 1.00 to 1.10 for nickel-chromium (tables of alloy makers).
double heaterHotOhm(double volts, double watts); // watts > 0
double heaterColdOhm(double volts, double watts, double k = 1.04);

double curveOhm(const Curve &curve, double celsius);
// ohm per kelvin, signed: an NTC falls, platinum and copper rise
double curveSlope(const Curve &curve, double celsius);
std::optional<double> curveCelsius(const Curve &curve, double ohm);

struct CurvePoint
{
    double celsius = 0;
    double ohm = 0;
};
// The generic NTC families of household appliances: r25 2.7 k to 100 k (common practice, no source).
std::span<const Curve> ntcFamilies();
// Whether every point lies within +-`share` of the curve, widened by what `uCelsius` kelvin of doubt move it.
bool fits(const Curve &curve, std::span<const CurvePoint> points, double share, double uCelsius);
// "Another family fits": the family nearest to all points, if they fit it and do not fit `assumed`.
std::optional<Curve> anotherFamily(const Curve &assumed, std::span<const CurvePoint> points, double share, double uCelsius);

} // namespace core
