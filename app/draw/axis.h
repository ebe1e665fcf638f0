#pragma once
// Values on a line of pixels, linear or logarithmic, and the ticks that stand on it.
#include <QString>

#include <vector>

namespace app {

struct Axis
{
    double from = 0, to = 1;      // values; from < to, from > 0 if logarithmic
    double start = 0, length = 1; // pixels; a negative length runs the other way
    bool logarithmic = false;

    double at(double value) const; // pixels, not clamped
    double clamped(double value) const;
};

// At most `most` round values (1, 2 or 5 times a power of ten apart; 1, 2, 5 of a decade on a logarithmic axis).
std::vector<double> niceTicks(double from, double to, bool logarithmic, int most);
QString tickText(double value); // in the locale, no group separators

} // namespace app
