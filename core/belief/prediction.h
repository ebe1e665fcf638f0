#pragma once
// What a meter would show at one placement, as a distribution: a mixture of spans, OL and jumps.
#include "core/reading/meter.h"
#include "core/reading/reading.h"

#include <vector>

namespace core {

struct Term
{
    enum class What { Finite, Open, Jumps };
    double weight = 1;
    What what = What::Open;
    double mu = 0, sigma = 0, h = 0; // Finite: normal(mu, sigma) + uniform(-h, h), in the unit of the measure
    friend bool operator==(const Term &, const Term &) = default;
};

struct Prediction
{
    std::vector<Term> terms; // weights add to 1
    friend bool operator==(const Prediction &, const Prediction &) = default;
};

Prediction openPrediction();
Prediction finitePrediction(double mu, double sigma, double h = 0);
// A contact that shows OL one moment and closed the next: .60 jumps, .25 as open, .15 as closed (judgement).
Prediction jumpingPrediction(const Prediction &open, const Prediction &closed);
Prediction mixed(double weight, const Prediction &a, const Prediction &b); // weight of a, the rest of b

// The probability that a meter shows this reading, of the interval its last digit stands for. Displayed error: the
// meter's half width a (rectangular, JCGM 100:2008 4.3.7), probes and contact (normal). OL predicted: .97 OL, .03 a
// finger's or damp bridge, even in ln from 100 kohm to the top; finite predicted over 1 Mohm may pass the top. Not zero
// only within what the prediction allows: slips are added by the likelihood.
double probability(const Prediction &prediction, const Reading &reading, Measure measure, const Meter &meter);

// What a misplaced probe shows (judgement): ohms OL .40, jumps .10, .15 even over 0..1 ohm, .35 even in ln 1 ohm..40
// Mohm; volts jumps .10, .30 even over 0..5, .60 even over 0..260; other measures likewise over their range. Never zero.
double slipDensity(const Reading &reading, Measure measure);

// Two readings of one placement are different if their words differ, or their values by more than 2 (a + d).
bool different(const Reading &one, const Reading &other, Measure measure);

// Distribution function of normal(mu, s) + uniform(-A, A): s/(2A) [G((x+A-mu)/s) - G((x-A-mu)/s)], with the integral of
// the normal distribution function G(z) = z Phi(z) + phi(z).
double normalPlusUniformCdf(double x, double mu, double s, double halfWidth);
double integralOfNormalCdf(double z);

} // namespace core
