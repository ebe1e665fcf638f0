#include "core/belief/likelihood.h"

#include <algorithm>
#include <bit>

namespace core {

Weighed weighed(const Placed &placed, const Noise &noise)
{
    Weighed w;
    w.measure = placed.measure;
    w.readings = settled(placed);
    w.slip = noise.slip;
    w.wired = placed.wireLeftOn;
    const double seen = placed.confirmed ? noise.confirmed : 1;
    w.wireLeft = placed.pullsAny && !placed.wireLeftOn ? noise.wireLeft * seen : 0;
    w.wrong = noise.wrongPart * seen;
    for (const Reading &r : w.readings)
        w.slips.push_back(slipDensity(r, w.measure));
    for (const Reading &r : distinct(w.readings, w.measure))
        w.wrongPart *= slipDensity(r, w.measure);
    return w;
}

namespace {

// A wide cell holds one true value, whichever it is: the part that showed a reading once shows it again. A reading that
// agrees with an earlier one is then no second draw from the cell. Judgement, as near as one half.
constexpr double kAgain = .5;

bool isWide(const Prediction &prediction)
{
    const auto heaviest = std::ranges::max_element(prediction.terms, {}, &Term::weight);
    return heaviest != prediction.terms.end() && heaviest->what == Term::What::Finite && heaviest->h > heaviest->sigma;
}

bool repeats(const Weighed &w, std::size_t k)
{
    if (w.readings[k].what != Reading::What::Value)
        return false;
    for (std::size_t j = 0; j < k; ++j)
        if (!different(w.readings[j], w.readings[k], w.measure))
            return true;
    return false;
}

double shownBy(const Prediction &prediction, const Weighed &w, std::size_t k, const Meter &meter)
{
    const double drawn = probability(prediction, w.readings[k], w.measure, meter);
    return drawn > 0 && isWide(prediction) && repeats(w, k) ? std::max(drawn, kAgain) : drawn;
}

} // namespace

double likelihood(const Weighed &w, const Predicted &predicted, const Meter &meter)
{
    double pulled = 1, wired = 1;
    for (std::size_t k = 0; k < w.readings.size(); ++k) {
        const Prediction &asAsked = w.wired ? predicted.wired : predicted.pulled;
        pulled *= (1 - w.slip) * shownBy(asAsked, w, k, meter) + w.slip * w.slips[k];
        if (w.wireLeft > 0)
            wired *= (1 - w.slip) * shownBy(predicted.wired, w, k, meter) + w.slip * w.slips[k];
    }
    return (1 - w.wrong - w.wireLeft) * pulled + w.wireLeft * wired + w.wrong * w.wrongPart;
}

double loudLikelihood(const Weighed &w)
{
    double all = 1;
    for (const double q : w.slips)
        all *= q;
    return (1 - w.wrong) * all + w.wrong * w.wrongPart;
}

double answerChance(const Answered &a, std::size_t answer, Hits hits)
{
    const auto count = a.answers.size();
    std::uint32_t group = hits.expected; // the answers that share `chance`
    double chance = a.sensitivity * std::popcount(group) / std::max(hits.there, 1);
    if (group == 0) {
        chance = a.falseAlarm;
        for (std::size_t i = 0; i < count; ++i)
            group |= a.speaksFor[i].empty() ? 0 : 1U << i;
    }
    const auto inside = static_cast<std::size_t>(std::popcount(group));
    if (inside == 0 || inside == count)
        return 1. / static_cast<double>(count);
    return (group >> answer & 1U) != 0 ? chance / static_cast<double>(inside) : (1 - chance) / static_cast<double>(count - inside);
}

std::vector<std::size_t> telling(const Answered &a)
{
    std::vector<std::size_t> result;
    for (const std::string &given : a.given)
        if (const auto at = std::ranges::find(a.answers, given); at != a.answers.end())
            result.push_back(static_cast<std::size_t>(at - a.answers.begin()));
    return result;
}

double likelihood(const Answered &a, Hits hits)
{
    double product = 1;
    std::size_t before = a.answers.size();
    for (const std::size_t answer : telling(a)) {
        const double anew = answerChance(a, answer, hits);
        product *= before == a.answers.size() ? anew : a.again * (answer == before ? 1 : 0) + (1 - a.again) * anew;
        before = answer;
    }
    return product;
}

} // namespace core
