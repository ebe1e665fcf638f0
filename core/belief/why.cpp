#include "core/belief/why.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace core {
namespace {

constexpr double kWorthRetaking = .3;
constexpr double kContradiction = 1.5;

// the most probable variant that is not loud: what is loud takes every reading for a slip
std::optional<std::size_t> bestVariant(const Dictionary &dictionary, const Belief &belief)
{
    std::optional<std::size_t> best;
    for (std::size_t v = 0; v < belief.now.variants.size(); ++v) {
        const Hypothesis &h = dictionary.hypotheses()[dictionary.variants().hypothesis[v]];
        if (h.what != Hypothesis::What::Loud && (!best || belief.now.variants[v] > belief.now.variants[*best]))
            best = v;
    }
    return best;
}

void addShares(std::vector<SlipShare> &shares, const Dictionary &dictionary, const Factor &factor, std::size_t entry,
               std::size_t variant)
{
    const auto *placed = std::get_if<Placed>(&factor.evidence);
    if (placed == nullptr)
        return;
    const Weighed w = weighed(*placed, dictionary.noise());
    const Predicted &predicted = factor.column->classes[factor.column->classOf[variant]];
    const Prediction &expected = w.wired ? predicted.wired : predicted.pulled;
    for (std::size_t k = 0; k < w.readings.size(); ++k) {
        const double slip = w.slip * w.slips[k];
        const double right = (1 - w.slip) * probability(expected, w.readings[k], w.measure, dictionary.meter());
        shares.push_back({entry, k, slip + right > 0 ? slip / (slip + right) : 0});
    }
}

} // namespace

std::vector<double> weights(const Dictionary &dictionary, const Belief &belief, std::span<const int> suspects)
{
    const std::vector<Posterior> steps = stepByStep(dictionary, belief);
    std::vector<double> result;
    for (std::size_t i = 1; i < steps.size(); ++i)
        result.push_back(decibansOf(dictionary, steps[i], suspects) - decibansOf(dictionary, steps[i - 1], suspects));
    return result;
}

Strength strengthOf(double decibans)
{
    const double factor = std::pow(10, std::abs(decibans) / 10);
    return factor < 3 ? Strength::Bare : factor < 20 ? Strength::Positive : factor < 150 ? Strength::Strong : Strength::VeryStrong;
}

std::string_view inWords(double decibans)
{
    const bool against = decibans < 0;
    switch (strengthOf(decibans)) {
    case Strength::Bare: return "says next to nothing about it";
    case Strength::Positive: return against ? "speaks against it" : "speaks for it";
    case Strength::Strong: return against ? "speaks strongly against it" : "speaks strongly for it";
    case Strength::VeryStrong: return against ? "speaks very strongly against it" : "speaks very strongly for it";
    }
    return "";
}

std::vector<SlipShare> slipShares(const Dictionary &dictionary, const Belief &belief)
{
    std::vector<SlipShare> shares;
    if (const auto best = bestVariant(dictionary, belief))
        for (std::size_t i = 0; i < belief.factors.size(); ++i)
            addShares(shares, dictionary, belief.factors[i], i, *best);
    return shares;
}

std::optional<SlipShare> worthRetaking(std::span<const SlipShare> shares)
{
    const auto most = std::ranges::max_element(shares, {}, &SlipShare::share);
    return most == shares.end() || most->share <= kWorthRetaking ? std::nullopt : std::optional(*most);
}

bool contradicts(std::span<const SlipShare> shares)
{
    const auto add = [](double sum, const SlipShare &s) { return sum + s.share; };
    return std::accumulate(shares.begin(), shares.end(), 0., add) >= kContradiction;
}

double probabilityAllGood(const Dictionary &dictionary, const Belief &belief)
{
    const auto tells = [](const Factor &f) { return f.tells; };
    const auto measured = [&](const Factor &f) { return f.tells && f.column != nullptr; };
    if (std::ranges::none_of(belief.factors, measured))
        return 0;
    double sum = 0;
    for (std::size_t v = 0; v < belief.now.variants.size(); ++v) {
        const bool loud = dictionary.hypotheses()[dictionary.variants().hypothesis[v]].what == Hypothesis::What::Loud;
        const auto healthy = [&](const Factor &f) { return !tells(f) || f.classOf()[v] == 0; };
        sum += !loud && std::ranges::all_of(belief.factors, healthy) ? belief.now.variants[v] : 0;
    }
    return sum;
}

} // namespace core
