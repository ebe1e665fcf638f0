#pragma once
// Whether a reading needs to be said back before it is taken.
#include <string_view>

namespace app {

// True if what is understood is what was typed, but for blanks, large letters and how a unit is spelt: "10.8 ohm" and
// "10.8 Ω", "OL" and "OL, more than the meter can show". A number without its unit, a unit without its prefix ("4.7k"),
// a comma, °F: false.
bool isAsTyped(std::string_view typed, std::string_view saidBack);

} // namespace app
