#pragma once
// What a reading means, said once it was taken.
#include "core/session/view_of.h"

namespace app {

// "OL: nothing gets through. Heating element: failed, once." `asked` is the step it was read for.
std::string meaningOf(const core::StepView &asked, const core::Reading &reading, const core::StateView &after,
                      const core::Session &session);

} // namespace app
