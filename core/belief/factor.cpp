#include "core/belief/factor.h"

#include <algorithm>

namespace core {
namespace {

using Listed = std::vector<int>;

bool contains(const Listed &sorted, int suspect) { return std::ranges::binary_search(sorted, suspect); }
bool among(const Listed &list, int suspect) { return std::ranges::find(list, suspect) != list.end(); }

Hits hitsOf(const Answered &a, const Listed &there, const Dictionary &dictionary)
{
    const auto explainsBeside = [&](const Listed &cured) {
        return std::ranges::any_of(there, [&](int s) {
            return dictionary.suspects()[static_cast<std::size_t>(s)].explains() && !among(cured, s);
        });
    };
    Hits hits;
    for (std::size_t i = 0; i < a.answers.size() && i < 32; ++i) {
        if (std::ranges::none_of(there, [&](int s) { return among(a.speaksFor[i], s); }))
            continue;
        ++hits.there;
        if (static_cast<int>(i) != a.gone || !explainsBeside(a.speaksFor[i]))
            hits.expected |= 1U << i;
    }
    return hits;
}

Factor answeredFactor(const Dictionary &dictionary, const Answered &a, const Listed &putRight)
{
    Factor factor{a, putRight, {}, nullptr, {}, !telling(a).empty()};
    const Variants &variants = dictionary.variants();
    std::map<Hits, std::uint32_t> classes;
    std::vector<std::uint32_t> ofHypothesis;
    const auto numberOf = [&](const Listed &there) {
        const Hits hits = hitsOf(a, there, dictionary);
        const auto [at, isNew] = classes.try_emplace(hits, static_cast<std::uint32_t>(classes.size()));
        if (isNew)
            factor.likelihood.push_back(likelihood(a, hits));
        return at->second;
    };
    numberOf({}); // class 0: nothing listed is there; so answers what is loud as well
    for (const Hypothesis &h : dictionary.hypotheses()) {
        Listed there;
        std::ranges::copy_if(h.suspects, std::back_inserter(there), [&](int s) { return !contains(putRight, s); });
        ofHypothesis.push_back(numberOf(there));
    }
    factor.hits.reserve(variants.size());
    for (const std::uint32_t h : variants.hypothesis)
        factor.hits.push_back(ofHypothesis[h]);
    return factor;
}

Factor placedFactor(Dictionary &dictionary, const Placed &placed, const Listed &putRight)
{
    Factor factor{placed, putRight, {}, dictionary.column(placed.placement, putRight), {}, false};
    const Weighed w = weighed(placed, dictionary.noise());
    factor.tells = !w.readings.empty();
    for (const Predicted &p : factor.column->classes)
        factor.likelihood.push_back(likelihood(w, p, dictionary.meter()));
    factor.likelihood.push_back(loudLikelihood(w));
    return factor;
}

} // namespace

Factor factorOf(Dictionary &dictionary, const Evidence &evidence, const Listed &putRight)
{
    if (const auto *placed = std::get_if<Placed>(&evidence))
        return placedFactor(dictionary, *placed, putRight);
    return answeredFactor(dictionary, std::get<Answered>(evidence), putRight);
}

void putRightBy(const Evidence &evidence, Listed &putRight)
{
    const auto *answered = std::get_if<Answered>(&evidence);
    if (answered == nullptr || telling(*answered).empty())
        return;
    putRight.insert(putRight.end(), answered->putsRight.begin(), answered->putsRight.end());
    std::ranges::sort(putRight);
    putRight.erase(std::ranges::unique(putRight).begin(), putRight.end());
}

} // namespace core
