#include "core/reading/meter.h"

namespace core {

double meterHalfWidth(Measure measure, double value, double step)
{
    const double size = value < 0 ? -value : value;
    switch (measure) {
    case Measure::Resistance:
    case Measure::Continuity: return (size >= 4e6 ? .02 : .009) * size + 2 * step;
    case Measure::Capacitance: return .03 * size + 5 * step;
    case Measure::CurrentClamp: return .025 * size + 5 * step;
    case Measure::Temperature:
    case Measure::OpensAt: return 2;
    case Measure::Diode:
    case Measure::VoltageAc:
    case Measure::VoltageDc:
    case Measure::VoltageLowImpedance:
    case Measure::Frequency:
    case Measure::Duty: return .01 * size + 3 * step;
    case Measure::Look:
    case Measure::Hand:
    case Measure::Ear: break;
    }
    return 0;
}

ProbeError probeError(const Meter &meter)
{
    if (meter.probeZero)
        return {meter.probeZero->value, .07};
    return {.3, .15};
}

} // namespace core
