#pragma once
// One piece of evidence worked out against the dictionary: its likelihood under every variant, by classes.
#include "core/belief/dictionary.h"

namespace core {

struct Factor
{
    Evidence evidence;
    std::vector<int> putRight;      // suspects put right before it
    std::vector<std::uint32_t> hits; // Answered: the class of each variant
    std::shared_ptr<const Column> column; // Placed
    std::vector<double> likelihood; // of each class
    bool tells = false;             // false: skipped or unsure, no evidence

    const std::vector<std::uint32_t> &classOf() const { return column ? column->classOf : hits; }
};

Factor factorOf(Dictionary &dictionary, const Evidence &evidence, const std::vector<int> &putRight);

// Adds to `putRight` (ascending) what a `do` has put right, if it was done.
void putRightBy(const Evidence &evidence, std::vector<int> &putRight);

} // namespace core
