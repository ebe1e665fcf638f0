#pragma once
// Danger said in a typed line, whatever the line was asked for.
#include <optional>
#include <string>
#include <string_view>

namespace app {

// The `why` of a stop: gas co shock smoke spark water. A bare "stop" says no sort and counts as gas, the worst of them; of
// two sorts the worse one counts. nullopt: nothing of the kind, or the line begins with "no" ("no smoke").
std::optional<std::string> dangerIn(std::string_view typed);

} // namespace app
