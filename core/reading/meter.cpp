#include "core/reading/meter.h"

#include <cmath>

namespace core {

double halfWidth(const Accuracy &accuracy, double value, double step)
{
    return accuracy.percent / 100 * std::abs(value) + accuracy.counts * step;
}

double meterHalfWidth(Measure measure, double value, double step)
{
    switch (measure) {
    case Measure::Resistance:
    case Measure::Continuity:
        return halfWidth({std::abs(value) >= 4e6 ? 2 : .9, 2}, value, step);
    case Measure::Capacitance:
        return halfWidth({3, 5}, value, step);
    case Measure::CurrentClamp:
        return halfWidth({2.5, 5}, value, step);
    case Measure::Temperature:
    case Measure::OpensAt:
        return 2;
    case Measure::Diode:
    case Measure::VoltageAc:
    case Measure::VoltageDc:
    case Measure::VoltageLowImpedance:
    case Measure::Frequency:
    case Measure::Duty:
        return halfWidth({1, 3}, value, step);
    case Measure::Look:
    case Measure::Hand:
    case Measure::Ear:
        break;
    }
    return 0;
}

double meterHalfWidth(const Meter &meter, Measure measure, double value, double step)
{
    const auto own = meter.accuracy.find(std::string(word(measure)));
    return own == meter.accuracy.end() ? meterHalfWidth(measure, value, step) : halfWidth(own->second, value, step);
}

ProbeError probeError(const Meter &meter)
{
    if (meter.probeZero)
        return {meter.probeZero->value, .07};
    return {.3, .15};
}

} // namespace core
