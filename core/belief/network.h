#pragma once
// A small network read at two nodes with everything else taken off: what lies in series between them.
#include "core/belief/prediction.h"

#include <string>
#include <string_view>
#include <vector>

namespace core {

struct Branch
{
    std::string from, to;        // nodes
    std::string value;           // branches with the same name are halves of one conductor: they vary together
    double mu = 0, sigma = 0, h = 0; // ohm: mean, standard deviation, half width of a span
    bool jumps = false;          // a contact open one moment and closed the next
    bool vague = false;          // nothing is known of its ohms but that it conducts
};

// A branch that does not conduct is left out of the network. Between two terminals of one part, and along a chain, there
// is one way; where there are several the one over the fewest branches is taken. No way: OL.
Prediction seriesBetween(const std::vector<Branch> &network, std::string_view a, std::string_view b);
bool connected(const std::vector<Branch> &network, std::string_view a, std::string_view b);

// A value of which nothing is known: even in ln from lo to hi, in five cells.
Prediction vaguePrediction(double lo, double hi);

} // namespace core
