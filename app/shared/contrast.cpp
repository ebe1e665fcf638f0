#include "app/shared/contrast.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

double linear(double channel)
{
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

} // namespace

double relativeLuminance(QColor colour)
{
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
}

double contrast(QColor a, QColor b)
{
    const auto [dark, light] = std::minmax(relativeLuminance(a), relativeLuminance(b));
    return (light + 0.05) / (dark + 0.05);
}

QColor blended(QColor over, QColor ground)
{
    const float alpha = over.alphaF();
    const auto mix = [alpha](float top, float below) { return alpha * top + (1 - alpha) * below; };
    return QColor::fromRgbF(mix(over.redF(), ground.redF()), mix(over.greenF(), ground.greenF()),
                            mix(over.blueF(), ground.blueF()));
}

} // namespace app
