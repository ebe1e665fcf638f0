#include "core/base/normal.h"

#include <cmath>
#include <numbers>

namespace core {

double normalDensity(double z)
{
    return std::exp(-z * z / 2) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
}

double normalCdf(double z)
{
    return std::erfc(-z / std::numbers::sqrt2) / 2;
}

double normalBetween(double lo, double hi)
{
    if (lo >= hi)
        return 0;
    return lo > 0 ? normalCdf(-lo) - normalCdf(-hi) : normalCdf(hi) - normalCdf(lo);
}

} // namespace core
