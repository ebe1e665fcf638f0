#pragma once
// The standard normal distribution.
namespace core {
double normalDensity(double z);                           // phi
double normalCdf(double z);                               // Phi, by erfc: right to the last digits in both tails
double normalBetween(double lo, double hi);               // Phi(hi) - Phi(lo) without cancellation in a tail
} // namespace core
