#include "core/reading/limits.h"

#include "core/reading/curves.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace core {
namespace {

std::optional<double> celsiusIn(const MachineFacts &facts, const std::string &name)
{
    const auto at = facts.with.find(name);
    return at != facts.with.end() && at->second.unit == Unit::Celsius ? std::optional(at->second.value) : std::nullopt;
}

// Exact, else the nearest nominal within a tenth (230 for 240), else what holds for every supply.
template<class T>
const T *byVoltage(const ByVoltage<T> &values, int volts)
{
    const auto off = [volts](const auto &entry) { return std::abs(entry.first - volts); };
    const auto near = std::ranges::min_element(values, {}, off);
    if (volts != 0 && near != values.end() && near->first != 0 && off(*near) * 10 <= volts)
        return &near->second;
    const auto any = values.find(0);
    return any == values.end() ? nullptr : &any->second;
}

// Where a span of the file becomes numbers: its path, on this machine, at this temperature.
struct Ground
{
    const PathLimits &from;
    const Path *path;
    const MachineFacts &facts;
    Unit unit;
    std::optional<double> celsius; // of the part
};

std::optional<std::pair<double, double>> onCurve(const Span &span, const Ground &at)
{
    if (at.path == nullptr || !at.path->curve || !at.celsius || at.unit != Unit::Ohm)
        return std::nullopt;
    // what the doubt of the temperature moves the value widens the band on both sides
    const double value = curveOhm(*at.path->curve, *at.celsius);
    const double doubt = std::abs(curveSlope(*at.path->curve, *at.celsius)) * at.facts.temperatureHalfWidth;
    return std::pair(span.lo * value - doubt, span.hi * value + doubt);
}

std::optional<std::pair<double, double>> concrete(const Span &span, const Ground &at)
{
    switch (span.of) {
    case Span::Of::Itself:
        if (span.unit != Unit::None && span.unit != at.unit)
            return std::nullopt;
        return std::pair(span.lo, span.hi);
    case Span::Of::Rating:
        if (!at.facts.ratedOhm || (at.unit != Unit::Ohm && at.unit != Unit::Farad)) // a capacitor's plate is in farads
            return std::nullopt;
        return std::pair(span.lo * *at.facts.ratedOhm, span.hi * *at.facts.ratedOhm);
    case Span::Of::Curve:
        break;
    }
    return onCurve(span, at);
}

double badEdge(const ByVoltage<Span> &edges, const Ground &at, bool below)
{
    const Span *span = byVoltage(edges, at.facts.volts);
    const auto range = span == nullptr ? std::nullopt : concrete(*span, at);
    return below ? (range ? range->first : -Limits::kNone) : (range ? range->second : Limits::kNone);
}

Basis basisOf(const Span &span, const Ground &at)
{
    if (span.of != Span::Of::Rating)
        return at.from.basis;
    return at.facts.plateRead ? std::max(Basis::Plate, at.from.basis) : Basis::CommonPractice;
}

std::string basisText(const Span &span, Basis basis, const Ground &at)
{
    if (span.of == Span::Of::Rating && at.facts.ratedOhm) {
        const std::string ohm = shown({*at.facts.ratedOhm, at.unit});
        const std::string said = at.facts.ratingSaid.empty() ? "" : " " + at.facts.ratingSaid;
        const std::string_view whose = basis == Basis::CommonPractice ? "common practice, assumed plate" : word(basis);
        return fmt::format("{}{}: {}", whose, said, ohm);
    }
    if (span.of == Span::Of::Curve && at.path != nullptr && at.path->curve && at.celsius) {
        const std::string ohm = shown({curveOhm(*at.path->curve, *at.celsius), Unit::Ohm});
        return fmt::format("{}, curve at {}: {}", word(basis), shown({*at.celsius, Unit::Celsius}), ohm);
    }
    return basis == Basis::Published && !at.from.source.empty() ? at.from.source : std::string(word(basis));
}

void twiceBeyond(Limits &limits)
{
    if (limits.unit == Unit::Celsius) { // its zero means nothing, so nothing is twice it
        limits.badBelow = -Limits::kNone;
        limits.badAbove = Limits::kNone;
        return;
    }
    if (limits.lo > 0)
        limits.badBelow = std::isfinite(limits.badBelow) ? std::min(limits.badBelow, limits.lo / 2) : limits.lo / 2;
    if (limits.hi > 0)
        limits.badAbove = std::isfinite(limits.badAbove) ? std::max(limits.badAbove, limits.hi * 2) : limits.hi * 2;
}

void takeOpenForGood(Limits &limits, double closedBelow)
{
    limits.openIsGood = true;
    limits.openIsBad = false;
    limits.lo = -Limits::kNone;
    limits.hi = limits.badAbove = Limits::kNone;
    limits.badBelow = closedBelow;
}

// Rating or temperature unknown: no value can be judged, but what has a value when good is broken at OL.
std::optional<Limits> onlyOpen(Limits limits, const Span &good)
{
    if (limits.unit != Unit::Ohm || good.of == Span::Of::Itself)
        return std::nullopt;
    limits.badBelow = -Limits::kNone;
    limits.badAbove = Limits::kNone;
    limits.basis = Basis::CommonPractice;
    limits.basisText =
        good.of == Span::Of::Rating ? "rating not known: OL alone is judged" : "temperature not known: OL alone is judged";
    return limits;
}

std::optional<Limits> concreteLimits(const Ground &at)
{
    const Shown *good = byVoltage(at.from.good, at.facts.volts);
    if (good == nullptr || good->what == Shown::What::Jumps)
        return std::nullopt;
    Limits limits;
    limits.unit = at.unit;
    limits.basis = basisOf(good->span, at);
    limits.basisText = basisText(good->span, limits.basis, at);
    limits.badBelow = badEdge(at.from.badBelow, at, true);
    limits.badAbove = badEdge(at.from.badAbove, at, false);
    if (good->what == Shown::What::Open) {
        const bool metal = at.path != nullptr && !at.path->along.empty() && !std::isfinite(limits.badBelow);
        takeOpenForGood(limits, metal ? kTouchesMetalOhm : limits.badBelow);
        return limits;
    }
    const auto range = concrete(good->span, at);
    if (!range)
        return onlyOpen(limits, good->span);
    limits.lo = range->first;
    limits.hi = range->second;
    if (limits.basis == Basis::CommonPractice && good->span.of != Span::Of::Curve)
        twiceBeyond(limits);
    limits.openIsBad = limits.unit == Unit::Ohm && std::isfinite(limits.hi);
    return limits;
}

constexpr double kResetBelowK = 20; // a thermostat closes again 10 to 20 K under where it opened: common practice

// Whether a thermostat's contact is surely open or surely closed at its temperature; nullopt between. Without a
// temperature a contact that works far above a room's heat counts as at room; one that works below it cannot be judged.
std::optional<bool> openByTemperature(const Path &path, std::optional<double> celsius)
{
    constexpr double kWarmestRoom = 30;
    const double closed = path.closesBelow ? path.closesBelow->lo : path.opensAbove->lo - kResetBelowK;
    const double open = path.opensAbove ? path.opensAbove->hi : path.closesBelow->hi + kResetBelowK;
    const double at = celsius.value_or(kWarmestRoom);
    if (at <= closed)
        return false;
    return celsius && at >= open ? std::optional(true) : std::nullopt;
}

Limits openingLimits(double lo, double hi, bool convicts, Basis basis, std::string text)
{
    constexpr double kBeyondK = 5, kStuckK = 10; // outside the good edges
    Limits limits;
    limits.unit = Unit::Celsius;
    limits.lo = lo;
    limits.hi = hi;
    limits.basis = basis;
    limits.basisText = std::move(text);
    limits.openIsBad = false;
    if (convicts) {
        limits.badBelow = lo - kBeyondK;
        limits.badAbove = hi + kBeyondK;
        limits.stuckAbove = hi + kStuckK;
    }
    return limits;
}

std::optional<Limits> opensAt(const Kind &kind, const Path *path, const MachineFacts &facts)
{
    if (const auto print = celsiusIn(facts, "printed_temperature"))
        return openingLimits(*print - 5, *print + 5, true, Basis::Plate, "printed " + shown({*print, Unit::Celsius}));
    if (path == nullptr || !path->opensAbove) {
        const auto at = std::ranges::find_if(kind.paths, [](const Path &p) { return p.opensAbove.has_value(); });
        path = at == kind.paths.end() ? nullptr : &*at;
    }
    if (path == nullptr)
        return std::nullopt;
    const Basis basis = path->limits.basis;
    const std::string text = basis == Basis::Published ? path->limits.source : std::string(word(basis));
    return openingLimits(path->opensAbove->lo, path->opensAbove->hi, basis != Basis::CommonPractice, basis, text);
}

} // namespace

std::optional<Limits> limitsOf(const PathLimits &limits, const Path *path, bool heldOpen, const MachineFacts &facts,
                               Measure measure)
{
    const Unit unit = unitOf(measure);
    if (unit == Unit::None)
        return std::nullopt;
    auto made = concreteLimits({limits, path, facts, unit, celsiusIn(facts, "part_temperature")});
    if (made && heldOpen && unit == Unit::Ohm)
        takeOpenForGood(*made, kClosedContactOhm);
    return made;
}

std::optional<Limits> limitsOf(const Kind &kind, const Test &test, std::size_t placement, const MachineFacts &facts)
{
    if (test.byEye() || (!test.placements.empty() && placement >= test.placements.size()))
        return std::nullopt;
    const Path *path =
        test.placements.empty() ? nullptr : kind.pathBetween(test.placements[placement].red, test.placements[placement].black);
    if (test.limits)
        return limitsOf(*test.limits, path, false, facts, test.measure);
    if (test.measure == Measure::OpensAt)
        return opensAt(kind, path, facts);
    if (path == nullptr || path->limits.good.empty())
        return std::nullopt;
    bool open = standsOpen(*path, test);
    if (const auto said = facts.closed.find(path->id); said != facts.closed.end() && test.hold.empty())
        open = !said->second;
    if (unitOf(test.measure) == Unit::Ohm && (path->closesBelow || path->opensAbove)) {
        const auto byHeat = openByTemperature(*path, celsiusIn(facts, "part_temperature"));
        if (!byHeat)
            return std::nullopt;
        open = *byHeat;
    }
    return limitsOf(path->limits, path, open, facts, test.measure);
}

bool standsOpen(const Path &path, const Test &test)
{
    const bool held = std::ranges::any_of(test.hold, [&](const std::string &name) {
        const auto dot = name.rfind('.');
        return (dot == std::string::npos ? name : name.substr(dot + 1)) == path.id;
    });
    if (path.normally == Path::Normally::Always)
        return false;
    return (path.normally == Path::Normally::Open) != held;
}

} // namespace core
