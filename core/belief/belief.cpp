#include "core/belief/belief.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

using Listed = std::vector<int>;

// Multiplies in place and makes the sum 1 again.
void multiply(Posterior &posterior, const Factor &factor)
{
    if (!factor.tells)
        return;
    const std::vector<std::uint32_t> &classOf = factor.classOf();
    double sum = 0;
    for (std::size_t v = 0; v < posterior.variants.size(); ++v)
        sum += posterior.variants[v] *= factor.likelihood[classOf[v]];
    if (!(sum > 0))
        return; // cannot be: a slip shows anything
    for (double &weight : posterior.variants)
        weight /= sum;
    posterior.logEvidence += std::log(sum);
}

void sumUp(const Dictionary &dictionary, Posterior &posterior)
{
    posterior.hypotheses.assign(dictionary.hypotheses().size(), 0);
    posterior.suspects.assign(dictionary.suspects().size(), 0);
    posterior.quiet = posterior.loud = 0;
    for (std::size_t v = 0; v < posterior.variants.size(); ++v)
        posterior.hypotheses[dictionary.variants().hypothesis[v]] += posterior.variants[v];
    for (std::size_t h = 0; h < posterior.hypotheses.size(); ++h) {
        const Hypothesis &hypothesis = dictionary.hypotheses()[h];
        for (const int s : hypothesis.suspects)
            posterior.suspects[static_cast<std::size_t>(s)] += posterior.hypotheses[h];
        posterior.quiet += hypothesis.what == Hypothesis::What::Quiet ? posterior.hypotheses[h] : 0;
        posterior.loud += hypothesis.what == Hypothesis::What::Loud ? posterior.hypotheses[h] : 0;
    }
}

Posterior priorOf(const Dictionary &dictionary)
{
    Posterior prior;
    prior.variants = dictionary.variants().prior;
    double sum = 0;
    for (const double p : prior.variants)
        sum += p;
    for (double &p : prior.variants)
        p /= sum > 0 ? sum : 1;
    return prior;
}

struct Split
{
    double with = 0, without = 0;
};

Split split(const Dictionary &dictionary, const Posterior &posterior, std::span<const int> suspects)
{
    Split result;
    for (std::size_t h = 0; h < posterior.hypotheses.size(); ++h) {
        const auto isOneOf = [&](int s) { return std::ranges::find(suspects, s) != suspects.end(); };
        const bool has = std::ranges::any_of(dictionary.hypotheses()[h].suspects, isOneOf);
        (has ? result.with : result.without) += posterior.hypotheses[h];
    }
    return result;
}

const Factor *reusable(const Belief *before, const Evidence &evidence, const Listed &putRight)
{
    if (before == nullptr)
        return nullptr;
    const auto same = [&](const Factor &f) { return f.putRight == putRight && f.evidence == evidence; };
    const auto at = std::ranges::find_if(before->factors, same);
    return at == before->factors.end() ? nullptr : &*at;
}

} // namespace

Belief update(Dictionary &dictionary, std::span<const Evidence> evidence, const Belief *before)
{
    Belief belief;
    belief.now = priorOf(dictionary);
    for (const Evidence &e : evidence) {
        const Factor *known = reusable(before, e, belief.putRight);
        belief.factors.push_back(known != nullptr ? *known : factorOf(dictionary, e, belief.putRight));
        multiply(belief.now, belief.factors.back());
        putRightBy(e, belief.putRight);
    }
    sumUp(dictionary, belief.now);
    return belief;
}

Posterior whatIf(Dictionary &dictionary, const Belief &belief, const Evidence &evidence)
{
    Posterior then = belief.now;
    multiply(then, factorOf(dictionary, evidence, belief.putRight));
    sumUp(dictionary, then);
    return then;
}

std::vector<Posterior> stepByStep(const Dictionary &dictionary, const Belief &belief)
{
    std::vector<Posterior> steps{priorOf(dictionary)};
    sumUp(dictionary, steps.back());
    for (const Factor &factor : belief.factors) {
        steps.push_back(steps.back());
        multiply(steps.back(), factor);
        sumUp(dictionary, steps.back());
    }
    return steps;
}

double probabilityOf(const Dictionary &dictionary, const Posterior &posterior, std::span<const int> suspects)
{
    return split(dictionary, posterior, suspects).with;
}

double probabilityOf(const Dictionary &dictionary, const Posterior &posterior, std::string_view component)
{
    return probabilityOf(dictionary, posterior, dictionary.ofComponent(component));
}

double decibansOf(const Dictionary &dictionary, const Posterior &posterior, std::span<const int> suspects)
{
    constexpr double kLeast = 1e-300; // keeps the logarithm finite
    const Split odds = split(dictionary, posterior, suspects);
    return 10 * std::log10(std::max(odds.with, kLeast) / std::max(odds.without, kLeast));
}

std::vector<Expectation> expectations(Dictionary &dictionary, const Belief &belief, const Placement &placement)
{
    const auto column = dictionary.column(placement, belief.putRight);
    std::vector<Expectation> result;
    for (const Predicted &p : column->classes)
        result.push_back({0, p});
    for (std::size_t v = 0; v < belief.now.variants.size(); ++v)
        if (column->classOf[v] < result.size())
            result[column->classOf[v]].probability += belief.now.variants[v];
    std::ranges::stable_sort(result, std::ranges::greater{}, &Expectation::probability);
    return result;
}

} // namespace core
