#include "app/draw/axis.h"

#include <QLocale>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

std::vector<double> evenTicks(double from, double to, int most)
{
    double step = std::pow(10.0, std::floor(std::log10((to - from) / most)));
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        if ((to - from) / (step * factor) <= most) {
            step *= factor;
            break;
        }
    }
    std::vector<double> ticks;
    for (double i = std::ceil(from / step - 1e-9); i * step <= to + step * 1e-9; ++i)
        ticks.push_back(i * step);
    return ticks;
}

std::vector<double> decadeTicks(double from, double to, std::initializer_list<double> of)
{
    std::vector<double> ticks;
    for (double decade = std::floor(std::log10(from)); decade <= std::log10(to); ++decade) {
        for (const double digit : of) {
            const double value = digit * std::pow(10.0, decade);
            if (value >= from * (1 - 1e-9) && value <= to * (1 + 1e-9))
                ticks.push_back(value);
        }
    }
    return ticks;
}

} // namespace

double Axis::at(double value) const
{
    const double part = logarithmic ? std::log(value / from) / std::log(to / from) : (value - from) / (to - from);
    return start + part * length;
}

double Axis::clamped(double value) const
{
    return at(std::clamp(value, from, to));
}

std::vector<double> niceTicks(double from, double to, bool logarithmic, int most)
{
    most = std::max(most, 1);
    if (!(to > from) || (logarithmic && from <= 0))
        return {};
    if (!logarithmic)
        return evenTicks(from, to, most);
    const auto fine = decadeTicks(from, to, {1, 2, 5});
    return static_cast<int>(fine.size()) <= most + 1 ? fine : decadeTicks(from, to, {1});
}

QString tickText(double value)
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale.toString(value, 'g', 6);
}

} // namespace app
