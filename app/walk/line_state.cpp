#include "app/walk/line_state.h"

#include "app/walk/words.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kNone = core::Limits::kNone;

struct Scale
{
    double factor = 1; // display = value / factor
    QString unit;
};

Scale scaleFor(core::Unit unit, double to)
{
    if (unit == core::Unit::Ohm)
        return to >= 2e6 ? Scale{1e6, QStringLiteral("MΩ")} : to >= 2000 ? Scale{1000, QStringLiteral("kΩ")} : Scale{1, QStringLiteral("Ω")};
    if (unit == core::Unit::Farad)
        return {1e-6, QStringLiteral("µF")};
    if (unit == core::Unit::Celsius)
        return {1, QStringLiteral("°C")};
    return {1, qs(core::unitCode(unit))};
}

// A round number at or above: 1, 1.5, 2, 3, 5, 8 times a power of ten.
double roundUp(double value)
{
    const double decade = std::pow(10, std::floor(std::log10(value)));
    for (const double step : {1., 1.5, 2., 3., 4., 5., 6., 8., 10.})
        if (value <= step * decade * 1.0001)
            return step * decade;
    return value;
}

double endOf(const core::Limits &l)
{
    if (l.openIsGood)
        return l.badBelow > 0 && l.badBelow < kNone ? roundUp(l.badBelow * 2) : 1e6;
    double most = 0;
    for (const double edge : {l.hi, l.badAbove, l.stuckAbove})
        if (edge < kNone)
            most = std::max(most, edge);
    if (most <= 0 && l.lo > -kNone)
        most = l.lo * 2;
    return most > 0 ? roundUp(most * 1.35) : 1;
}

double beginOf(const core::Limits &l)
{
    const double least = std::min(l.lo > -kNone ? l.lo : 0, l.badBelow > -kNone ? l.badBelow : 0);
    return least < 0 ? -roundUp(-least * 1.2) : 0;
}

void addBands(NumberLineState &state, const core::Limits &l, double from, double to, double factor)
{
    const auto band = [&](double a, double b, Judgement is) {
        a = std::clamp(a, from, to);
        b = std::clamp(b, from, to);
        if (b > a)
            state.bands.push_back({a / factor, b / factor, is});
    };
    if (l.openIsGood) {
        const double edge = l.badBelow > -kNone ? l.badBelow : from;
        band(from, edge, Judgement::Bad);
        band(edge, to, Judgement::NoConclusion);
        return;
    }
    const double badBelow = l.badBelow > -kNone ? l.badBelow : from;
    const double badAbove = l.badAbove < kNone ? l.badAbove : to;
    const double lo = l.lo > -kNone ? l.lo : from, hi = l.hi < kNone ? l.hi : to;
    band(from, badBelow, Judgement::Bad);
    band(std::max(from, badBelow), lo, Judgement::NoConclusion);
    band(lo, hi, Judgement::Good);
    band(hi, std::max(hi, badAbove), Judgement::NoConclusion);
    band(std::max(hi, badAbove), to, Judgement::Bad);
}

QString number(double value)
{
    const double size = std::abs(value);
    return QString::number(value, 'f', size >= 100 || value == std::round(value) ? 0 : size >= 0.995 ? 1 : 2);
}

} // namespace

NumberLineState lineOf(const core::Limits &limits, core::Measure measure, const core::Meter &meter,
                       const std::vector<core::Reading> &readings, const QString &quantity)
{
    NumberLineState state;
    const double from = beginOf(limits), to = endOf(limits);
    const Scale scale = scaleFor(limits.unit, to);
    state.quantity = quantity;
    state.unit = scale.unit;
    state.from = from / scale.factor;
    state.to = to / scale.factor;
    addBands(state, limits, from, to, scale.factor);
    if (limits.unit == core::Unit::Ohm)
        state.over = limits.openIsGood ? Judgement::Good : limits.openIsBad ? Judgement::Bad : Judgement::NoConclusion;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const core::Reading &reading = readings[i];
        NumberLineState::Flag flag;
        flag.earlier = i + 1 < readings.size();
        flag.over = reading.what == core::Reading::What::OverLimit || reading.what == core::Reading::What::NoTone;
        if (reading.what == core::Reading::What::Value) {
            const core::Judgement judged = core::judge(reading, limits, measure, meter);
            flag.value = judged.value / scale.factor;
            flag.halfWidth = 2 * judged.u / scale.factor;
            core::Reading said = reading;
            said.amount.value = std::round(judged.value / std::max(reading.step, 1e-9)) * reading.step;
            flag.text = qs(core::saidBack(said));
        } else if (flag.over) {
            flag.text = QStringLiteral("OL");
        } else {
            continue;
        }
        state.flags.push_back(flag);
    }
    return state;
}

QString goodWords(const core::Limits &limits)
{
    if (limits.openIsGood)
        return QStringLiteral("OL");
    const bool low = limits.lo > -kNone && limits.lo > 0, high = limits.hi < kNone;
    const Scale scale = scaleFor(limits.unit, high ? limits.hi : low ? limits.lo : 0);
    if (low && high)
        return Words::tr("%1 to %2 %3").arg(number(limits.lo / scale.factor), number(limits.hi / scale.factor), scale.unit);
    if (high)
        return Words::tr("at most %1 %2").arg(number(limits.hi / scale.factor), scale.unit);
    return low ? Words::tr("at least %1 %2").arg(number(limits.lo / scale.factor), scale.unit) : QString();
}

QString badWords(const core::Limits &limits)
{
    const Scale scale = scaleFor(limits.unit, limits.badAbove < kNone ? limits.badAbove : limits.hi < kNone ? limits.hi : 0);
    QStringList bad;
    if (limits.badBelow > -kNone && limits.badBelow > 0)
        bad << Words::tr("below %1").arg(number(limits.badBelow / scale.factor));
    if (limits.badAbove < kNone)
        bad << Words::tr("above %1").arg(number(limits.badAbove / scale.factor));
    if (limits.unit == core::Unit::Ohm && limits.openIsBad && !limits.openIsGood)
        bad << QStringLiteral("OL");
    return bad.isEmpty() ? QString() : Words::tr("Bad: %1. Between: read the sheet in the cabinet.").arg(bad.join(QStringLiteral(", ")));
}

} // namespace app
