#pragma once
// A thermistor's reading on its curve.
#include "app/draw/curve_view.h"
#include "core/reading/machine.h"
#include "core/session/view.h"

#include <optional>
#include <vector>

namespace app {

// nullopt: what is measured has no curve. Readings without a temperature of the part are left out.
std::optional<CurveState> curveOf(const core::StepView &step, const core::Machine &machine, const std::vector<core::Reading> &readings);

} // namespace app
