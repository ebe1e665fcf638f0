#pragma once
// From one line of JSON to what it asks for. What a field may hold is closed: what is not known is refused with what would
// be allowed, never passed over in silence.
#include "core/session/session.h"

#include <nlohmann/json.hpp>
#include <string_view>

namespace app {

core::Denial badMessage(std::string why, std::vector<std::string> allowed = {});

// The object of a line; the denial says what is wrong with it.
core::Expected<nlohmann::json, core::Denial> objectIn(std::string_view line);
// A message's object as a command.
core::Expected<core::Command, core::Denial> commandIn(std::string_view line);
// The object of a `start`.
core::Expected<core::Snapshot, core::Denial> snapshotIn(const nlohmann::json &object);

} // namespace app
