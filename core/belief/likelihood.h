#pragma once
// How probable what was read is under a prediction, allowing for slips, wires left on and wrong parts.
#include "core/belief/evidence.h"

#include <compare>
#include <cstdint>

namespace core {

// What a placement shows with the wires pulled as asked, and with the same probes while nothing is pulled.
struct Predicted
{
    Prediction pulled, wired;
    friend bool operator==(const Predicted &, const Predicted &) = default;
};

struct Noise // judgement
{
    double slip = .015;     // a probe misplaced, new at each seating
    double wireLeft = .03;  // a wire left on through all seatings; only where the test pulls any
    double wrongPart = .005; // the wrong part or plug through all seatings
    double confirmed = .3;  // what a re-seating with contrast leaves of the last two
    friend bool operator==(const Noise &, const Noise &) = default;
};

// A placement's readings with what does not depend on the hypothesis worked out once.
struct Weighed
{
    Measure measure = Measure::Resistance;
    std::vector<Reading> readings; // one a seating
    std::vector<double> slips;     // Q of each
    double wrongPart = 1;          // product of Q over the different readings: a wrong part reads the same each time
    double wireLeft = 0, wrong = 0; // chances
    double slip = 0;
    bool wired = false; // told that the wire stayed on
};
Weighed weighed(const Placed &placed, const Noise &noise);

// (1-pi-iota) prod[(1-e) pulled(r) + e Q(r)] + iota prod[(1-e) wired(r) + e Q(r)] + pi prod over different readings of Q.
// With a wire told to have stayed on, `wired` takes the place of `pulled` and iota is 0. No reading: 1.
double likelihood(const Weighed &weighed, const Predicted &predicted, const Meter &meter);
double loudLikelihood(const Weighed &weighed); // every reading drawn from Q

// Which answers speak for something that is there. `expected`: of those, bit i for answer i, without the answer "gone"
// where something else explains the complaint as well; `there`: how many of them with it.
struct Hits
{
    std::uint32_t expected = 0;
    int there = 0;
    friend auto operator<=>(const Hits &, const Hits &) = default;
};

// A right answer has the chance `sensitivity`, shared by those that speak for what is there; with nothing there, those
// that speak for anything share `falseAlarm`. A repeated answer repeats the one before with the chance `again`, else it
// is given anew. No answer that says anything: 1.
double likelihood(const Answered &answered, Hits hits);
double answerChance(const Answered &answered, std::size_t answer, Hits hits);
// Indices in `answers` of those given that say something.
std::vector<std::size_t> telling(const Answered &answered);

} // namespace core
