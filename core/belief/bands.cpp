#include "core/belief/bands.h"

#include "core/belief/cells.h"
#include "core/belief/network.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

constexpr double kNearNothingV = 5;

bool isVolts(Measure m) { return unitOf(m) == Unit::Volt && m != Measure::Diode; }

Prediction even(double lo, double hi) { return finitePrediction((lo + hi) / 2, 0, (hi - lo) / 2); }

double deviation(Measure measure, double mu, double sigma) { return isVolts(measure) ? std::max(sigma, 3 + .03 * mu) : sigma; }

std::optional<Limits> limitsAt(const BandTest &at)
{
    if (at.kind != nullptr)
        return limitsOf(*at.kind, *at.test, at.placement, at.facts);
    return at.test->limits ? limitsOf(*at.test->limits, nullptr, false, at.facts, at.test->measure) : std::nullopt;
}

double topOf(const BandTest &at)
{
    switch (unitOf(at.test->measure)) {
    case Unit::Volt: return at.supply * 1.1;
    case Unit::Ampere: return 40;
    case Unit::Celsius: return 300;
    case Unit::Farad: return 100e-6;
    default: return 1e4;
    }
}

Prediction unknown(const BandTest &at)
{
    const double top = topOf(at);
    return mixed(.4, even(0, top / 50), even(0, top));
}

Prediction goodBand(const BandTest &at, const Limits &limits)
{
    if (limits.openIsGood)
        return openPrediction();
    const double lo = std::isfinite(limits.lo) ? limits.lo : 0, hi = std::isfinite(limits.hi) ? limits.hi : std::max(1.25 * lo, lo + 1);
    if (lo <= 0) // nothing is good: most often near nothing
        return finitePrediction(hi / 4, deviation(at.test->measure, hi / 4, hi / 4));
    return finitePrediction((lo + hi) / 2, deviation(at.test->measure, (lo + hi) / 2, (hi - lo) / 4));
}

Prediction opensWrong(const Limits &limits, const FailureMode &mode, const Cell &cell)
{
    if (mode.id == "stuck_closed")
        return openPrediction(); // it never opens
    const Prediction atOnce = finitePrediction(20, 5), drifted = mixed(.5, even(limits.lo - 35, limits.lo - 5), even(limits.hi + 5, limits.hi + 45));
    if (mode.id == "open")
        return atOnce;
    return cell.state == Cell::State::Jumps ? jumpingPrediction(atOnce, drifted) : drifted;
}

Prediction outside(const BandTest &at, const Limits &limits)
{
    const double top = topOf(at);
    if (limits.openIsGood)
        return even(0, std::isfinite(limits.badBelow) ? limits.badBelow : top);
    if (std::isfinite(limits.lo) && limits.lo > 0)
        return mixed(.7, even(0, limits.lo / 20), even(0, limits.lo));
    const double from = std::isfinite(limits.badAbove) ? limits.badAbove : std::isfinite(limits.hi) ? 2 * limits.hi : 0;
    return from < top ? mixed(.7, even(std::max(from, top * .75), top), even(from, top)) : unknown(at);
}

const Path *pathOf(const BandTest &at)
{
    if (at.kind == nullptr || at.placement >= at.test->placements.size())
        return nullptr;
    const Path *path = at.kind->pathBetween(at.test->placements[at.placement].red, at.test->placements[at.placement].black);
    return at.test->limits ? nullptr : path; // a test with limits of its own reads something else between these terminals
}

const Shown *shownBy(const Path *path, const FailureMode &mode)
{
    const auto at = path == nullptr ? mode.paths.end() : mode.paths.find(path->id);
    return at == mode.paths.end() ? nullptr : &at->second;
}

// a plate's farads, where the span is a factor of them
double scaleOf(const Span &span, const BandTest &at) { return span.of == Span::Of::Rating ? at.facts.ratedOhm.value_or(0) : 1; }

Prediction pathBand(const BandTest &at, const Path &path, const FailureMode &mode, const Shown &shown, const Cell &cell)
{
    if (shown.what == Shown::What::Open)
        return openPrediction();
    const bool varied = variedPath(*at.kind, mode) == &path;
    const double scale = scaleOf(shown.span, at);
    const double lo = (varied ? cell.lo : shown.span.lo) * scale, hi = (varied ? cell.hi : shown.span.hi) * scale;
    if (isVolts(at.test->measure) && lo <= 0 && hi > kNearNothingV) // a lost supply shows next to nothing, or a ghost
        return mixed(.6, even(0, kNearNothingV), even(0, hi));
    return finitePrediction((lo + hi) / 2, deviation(at.test->measure, (lo + hi) / 2, 0), (hi - lo) / 2);
}

Prediction intermittent(const Prediction &bad, const Prediction &good, const Cell &cell)
{
    switch (cell.state) {
    case Cell::State::Open: return bad;
    case Cell::State::Jumps: return jumpingPrediction(bad, good);
    default: return good;
    }
}

} // namespace

bool bandShows(const BandTest &at, const FailureMode &mode)
{
    if (shownBy(pathOf(at), mode) != nullptr)
        return true;
    const auto &convicts = at.test->convicts;
    if (std::ranges::find(convicts, mode.id) != convicts.end())
        return true;
    return convicts.empty() && pathOf(at) == nullptr; // everything it shows
}

Prediction bandPrediction(const BandTest &at, const FailureMode *mode, const Cell &cell)
{
    const auto limits = limitsAt(at);
    if (!limits)
        return unknown(at);
    const Prediction good = goodBand(at, *limits);
    if (mode == nullptr || !bandShows(at, *mode))
        return good;
    if (at.test->measure == Measure::OpensAt)
        return opensWrong(*limits, *mode, cell);
    const Path *path = pathOf(at);
    const Shown *shown = shownBy(path, *mode);
    const auto jumps = [](const auto &p) { return p.second.what == Shown::What::Jumps; };
    if (std::ranges::any_of(mode->paths, jumps))
        return intermittent(outside(at, *limits), good, cell);
    return shown != nullptr ? pathBand(at, *path, *mode, *shown, cell) : outside(at, *limits);
}

} // namespace core
