#pragma once
// The way so far as stubs: what was done, where the person is.
#include "app/draw/tape_view.h"
#include "core/session/session.h"
#include "core/session/view.h"

namespace app {

std::vector<TapeStub> tapeOf(const core::StateView &view, const core::Session &session);

} // namespace app
