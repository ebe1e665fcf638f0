#include "core/base/random.h"

#include <cmath>
#include <numbers>

namespace core {

std::uint64_t Random::next()
{
    std::uint64_t z = (m_state += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

double Random::uniform()
{
    return static_cast<double>(next() >> 11) * 0x1.0p-53;
}

double Random::uniform(double lo, double hi)
{
    return lo + (hi - lo) * uniform();
}

int Random::below(int count)
{
    return static_cast<int>(uniform() * count);
}

double Random::normal(double mean, double deviation)
{
    const double radius = std::sqrt(-2 * std::log(1 - uniform()));
    return mean + deviation * radius * std::cos(2 * std::numbers::pi * uniform());
}

} // namespace core
