#pragma once
// A seeded generator with the same numbers on every machine and compiler (the standard's distributions are not).
#include <cstdint>

namespace core {

// SplitMix64 (Steele, Lea, Flood 2014): one 64-bit state, passes BigCrush; ample for drawing test cases and jobs.
class Random
{
public:
    explicit Random(std::uint64_t seed) : m_state(seed) {}
    std::uint64_t next();
    double uniform();                              // 0 <= x < 1
    double uniform(double lo, double hi);          // lo <= x < hi
    int below(int count);                          // 0 .. count-1; count >= 1
    double normal(double mean, double deviation);  // Box and Muller
    bool chance(double probability) { return uniform() < probability; }

private:
    std::uint64_t m_state;
};

} // namespace core
