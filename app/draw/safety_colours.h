#pragma once
// The safety colours of ANSI Z535.1 (approximate sRGB), the same in both themes. For signal panels, signs, the top of the
// power rail and the bar of a hold point, and for nothing else: a test looks for them in every other file.
#include <QColor>

namespace app::safety {

inline constexpr QRgb kRed = 0xffc8102e;
inline constexpr QRgb kOrange = 0xffff8200;
inline constexpr QRgb kYellow = 0xffffd100;
inline constexpr QRgb kBlue = 0xff0057b8;
inline constexpr QRgb kGreen = 0xff00843d;
inline constexpr QRgb kBlack = 0xff000000;
inline constexpr QRgb kWhite = 0xffffffff;

} // namespace app::safety
