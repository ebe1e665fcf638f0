#pragma once
// A safety screen's text as a panel, and its drawing. The words are the program's own safety texts, filled in for this
// step; what was filled in is strong.
#include "app/draw/safety_picture.h"
#include "app/draw/signal_panel.h"
#include "core/gate/texts.h"
#include "core/session/session.h"
#include "core/session/view.h"

#include <optional>

namespace app {

SignalText signalOf(const core::StateView &view, const core::SafetyTexts &texts, const core::GateState &gate);

// The scene of a screen; nullopt: it has none.
std::optional<SafetyPictureState> sceneOf(const core::StateView &view, const core::Session &session);

} // namespace app
