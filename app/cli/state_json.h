#pragma once
// A state as the protocol writes it.
#include "core/session/session.h"
#include "core/session/view.h"

#include <nlohmann/json.hpp>

namespace app {

nlohmann::json stateJson(const core::StateView &view, const core::Session &session, std::size_t eventsFrom);

} // namespace app
