#include "core/belief/network.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace core {
namespace {

using Way = std::vector<const Branch *>;

// the way over the fewest branches, by breadth first
std::optional<Way> wayBetween(const std::vector<Branch> &network, std::string_view a, std::string_view b, bool overJumping)
{
    std::map<std::string_view, const Branch *> reachedBy{{a, nullptr}};
    std::vector<std::string_view> queue{a};
    for (std::size_t i = 0; i < queue.size() && !reachedBy.contains(b); ++i)
        for (const Branch &branch : network) {
            if (branch.jumps && !overJumping)
                continue;
            const std::string_view from = branch.from, to = branch.to;
            const std::string_view next = from == queue[i] ? to : to == queue[i] ? from : std::string_view{};
            if (!next.empty() && reachedBy.try_emplace(next, &branch).second)
                queue.push_back(next);
        }
    if (!reachedBy.contains(b))
        return std::nullopt;
    Way way;
    for (std::string_view at = b; reachedBy[at] != nullptr;) {
        way.push_back(reachedBy[at]);
        at = way.back()->from == at ? std::string_view(way.back()->to) : std::string_view(way.back()->from);
    }
    return way;
}

Prediction sumOf(const Way &way)
{
    if (std::ranges::any_of(way, &Branch::vague))
        return vaguePrediction(.5, 50e3);
    struct Sum
    {
        double sigma = 0, h = 0;
        int branches = 0;
    };
    double mu = 0, h = 0, variance = 0;
    std::map<std::string_view, Sum> values;
    for (const Branch *b : way) {
        Sum &sum = values[b->value];
        mu += b->mu;
        sum.sigma += b->sigma;
        sum.h = ++sum.branches == 1 ? b->h : 0; // over both halves it does not matter where they part
    }
    for (const auto &[value, sum] : values) {
        variance += sum.sigma * sum.sigma;
        h += sum.h;
    }
    return finitePrediction(mu, std::sqrt(variance), h);
}

} // namespace

Prediction vaguePrediction(double lo, double hi)
{
    constexpr int kCells = 5;
    Prediction result;
    const double step = std::pow(hi / lo, 1. / kCells);
    for (int i = 0; i < kCells; ++i, lo *= step)
        result.terms.push_back({1. / kCells, Term::What::Finite, lo * (1 + step) / 2, 0, lo * (step - 1) / 2});
    return result;
}

bool connected(const std::vector<Branch> &network, std::string_view a, std::string_view b)
{
    return wayBetween(network, a, b, true).has_value();
}

Prediction seriesBetween(const std::vector<Branch> &network, std::string_view a, std::string_view b)
{
    const auto steady = wayBetween(network, a, b, false);
    if (steady)
        return sumOf(*steady);
    const auto closed = wayBetween(network, a, b, true);
    return closed ? jumpingPrediction(openPrediction(), sumOf(*closed)) : openPrediction();
}

} // namespace core
