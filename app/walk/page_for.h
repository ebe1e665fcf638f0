#pragma once
// Which page shows a state. The only place that knows all of them.
#include "app/walk/landed.h"
#include "app/walk/page.h"

namespace app {

Page *pageFor(const JobController &job, const std::optional<Landed> &landed);

} // namespace app
