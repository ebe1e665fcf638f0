#include "app/walk/curve_state.h"

#include "app/walk/words.h"
#include "core/reading/curves.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kFrom = -5, kTo = 45; // °C: from ice water to a warm room
constexpr double kShare = .10;         // where the kind gives no band of its own

QString tr(const char *text)
{
    return QCoreApplication::translate("app::Curve", text);
}

struct Found
{
    const core::Path *path = nullptr;
    double low = 1 - kShare, high = 1 + kShare;
};

Found curvePath(const core::StepView &step, const core::Machine &machine)
{
    const core::Kind *kind = machine.library->kindOf(*machine.appliance, step.picture.component);
    if (kind == nullptr || !step.test.starts_with(step.picture.component + "."))
        return {};
    for (const core::Path &path : kind->paths) {
        if (!path.curve)
            continue;
        Found found{&path};
        if (const auto good = path.limits.good.find(0); good != path.limits.good.end() && good->second.span.of == core::Span::Of::Curve) {
            found.low = good->second.span.lo;
            found.high = good->second.span.hi;
        }
        return found;
    }
    return {};
}

QString curveName(const core::Curve &curve, const Found &found)
{
    const int percent = qRound(100 * std::max(1 - found.low, found.high - 1));
    return tr("its curve: %1 at 25 °C,\n±%2 %").arg(qs(core::shown({core::curveOhm(curve, 25), core::Unit::Ohm})), QString::number(percent));
}

} // namespace

std::optional<CurveState> curveOf(const core::StepView &step, const core::Machine &machine, const std::vector<core::Reading> &readings)
{
    const Found found = curvePath(step, machine);
    if (found.path == nullptr)
        return std::nullopt;
    CurveState state;
    state.quantity = qs(step.title);
    state.xTitle = tr("temperature of the sensor, °C");
    state.yUnit = QStringLiteral("kΩ");
    state.xFrom = kFrom;
    state.xTo = kTo;
    CurveState::Curve curve;
    for (double celsius = kFrom; celsius <= kTo + .01; celsius += 2.5) {
        const double kohm = core::curveOhm(*found.path->curve, celsius) / 1000;
        curve.points.push_back({celsius, kohm, kohm * found.low, kohm * found.high});
    }
    curve.name = curveName(*found.path->curve, found);
    state.yFrom = curve.points.back().low * .7;
    state.yTo = curve.points.front().high * 1.3;
    state.curves.push_back(std::move(curve));
    for (const core::Reading &reading : readings) {
        const auto at = reading.with.find("part_temperature");
        if (reading.what != core::Reading::What::Value || at == reading.with.end())
            continue;
        CurveState::Reading point;
        point.x = std::clamp(at->second.value, kFrom, kTo);
        point.y = reading.amount.value / 1000;
        point.value = qs(core::saidBack(reading));
        state.yFrom = std::min(state.yFrom, point.y * .7);
        state.yTo = std::max(state.yTo, point.y * 1.3);
        state.readings.push_back(std::move(point));
    }
    return state;
}

} // namespace app
