#pragma once
// What may have become of a job: a closed list, the same in the walk and in the JSON lines.
#include <array>
#include <string_view>

namespace app {

inline constexpr std::array<std::string_view, 4> kOutcomes{"fixed", "not_fixed", "not_fitted", "dead_on_arrival"};

} // namespace app
