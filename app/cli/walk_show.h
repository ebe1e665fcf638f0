#pragma once
// A state as the terminal shows it.
#include "app/cli/terminal.h"
#include "core/session/view_of.h"

namespace app {

void showState(Terminal &terminal, const core::Session &session, const core::StateView &view);
// "about 1 in 4, our estimate": the only form in which a likelihood is shown.
std::string aboutOneIn(double probability);

} // namespace app
