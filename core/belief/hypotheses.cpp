#include "core/belief/hypotheses.h"

#include <algorithm>
#include <map>

namespace core {
namespace {

using Key = std::vector<int>;

Key keyOf(Key suspects)
{
    std::ranges::sort(suspects);
    suspects.erase(std::ranges::unique(suspects).begin(), suspects.end());
    return suspects;
}

class Listing // adds up the priors of equal sets
{
public:
    explicit Listing(const Suspects &suspects) : m_suspects(suspects) {}

    bool sameComponent(int a, int b) const { return at(a).component == at(b).component; }
    const Suspect &at(int s) const { return m_suspects.list[static_cast<std::size_t>(s)]; }
    int count() const { return static_cast<int>(m_suspects.list.size()); }

    void add(Key suspects, double prior)
    {
        if (prior > 0)
            m_priors[keyOf(std::move(suspects))] += prior;
    }

    double linked(int k) const
    {
        double sum = 0;
        for (const Link &l : m_suspects.links)
            sum += l.suspect == k ? l.chance : 0;
        return sum;
    }

    // what may lie beside k and is neither k's own component nor linked to it; k alone keeps at least a tenth
    std::vector<Beside> besides(int k) const
    {
        std::vector<Beside> result;
        double sum = 0;
        for (const Beside &b : m_suspects.beside) {
            const auto isLink = [&](const Link &l) { return l.suspect == k && l.cause == b.condition; };
            if (!sameComponent(k, b.condition) && std::ranges::none_of(m_suspects.links, isLink))
                result.push_back(b), sum += b.chance;
        }
        for (Beside &b : result)
            b.chance *= sum > .9 ? .9 / sum : 1;
        return result;
    }

    void addSingle(int k, double prior)
    {
        const double alone = prior * (1 - linked(k));
        double beside = 0;
        for (const Beside &b : besides(k)) {
            add({k, b.condition}, alone * b.chance);
            beside += b.chance;
        }
        add({k}, alone * (1 - beside));
        for (const Link &l : m_suspects.links)
            if (l.suspect == k)
                add({k, l.cause}, prior * l.chance);
    }

    void addPair(int s, int t, double prior)
    {
        double left = prior;
        for (const Link &l : m_suspects.links) {
            const int other = l.suspect == s ? t : s;
            if ((l.suspect != s && l.suspect != t) || sameComponent(l.cause, other))
                continue; // a cause that already is the other one stays in the pair
            const double part = prior * l.chance * crowding(s, t);
            add({s, t, l.cause}, part);
            left -= part;
        }
        add({s, t}, left);
    }

    std::vector<Hypothesis> take() const
    {
        std::vector<Hypothesis> result;
        for (const auto &[key, prior] : m_priors)
            result.push_back({Hypothesis::What::Listed, key, prior});
        return result;
    }

private:
    // two protectors in one pair: their links together leave the pair itself a tenth
    double crowding(int s, int t) const
    {
        const double sum = linked(s) + linked(t);
        return sum > .9 ? .9 / sum : 1;
    }

    const Suspects &m_suspects;
    std::map<Key, double> m_priors;
};

double pairsTotal(const Listing &listing)
{
    double z = 0;
    for (int s = 0; s < listing.count(); ++s)
        for (int t = s + 1; t < listing.count(); ++t)
            if (!listing.sameComponent(s, t))
                z += listing.at(s).share * listing.at(t).share;
    return z;
}

void addCells(Variants &variants, const std::vector<Suspect> &suspects, const Hypothesis &h, std::uint32_t index)
{
    std::vector<std::size_t> cell(h.suspects.size(), 0);
    while (true) {
        double prior = h.prior;
        for (std::size_t i = 0; i < cell.size(); ++i) {
            prior *= suspects[static_cast<std::size_t>(h.suspects[i])].cells[cell[i]].weight;
            variants.faults.push_back({h.suspects[i], static_cast<int>(cell[i])});
        }
        variants.hypothesis.push_back(index);
        variants.prior.push_back(prior);
        variants.begin.push_back(static_cast<std::uint32_t>(variants.faults.size()));
        std::size_t i = 0;
        while (i < cell.size() && ++cell[i] == suspects[static_cast<std::size_t>(h.suspects[i])].cells.size())
            cell[i++] = 0;
        if (i == cell.size())
            return;
    }
}

} // namespace

std::vector<Hypothesis> hypothesesOf(const Suspects &suspects, const Priors &priors)
{
    Listing listing(suspects);
    const double z = pairsTotal(listing);
    const double unrelated = z > 0 ? priors.unrelated : 0;
    const double single = 1 - unrelated - priors.notListed;
    for (int k = 0; k < listing.count(); ++k)
        listing.addSingle(k, single * listing.at(k).share);
    for (int s = 0; s < listing.count(); ++s)
        for (int t = s + 1; t < listing.count(); ++t)
            if (!listing.sameComponent(s, t) && z > 0)
                listing.addPair(s, t, unrelated * listing.at(s).share * listing.at(t).share / z);
    std::vector<Hypothesis> result = listing.take();
    const double unlisted = result.empty() ? 1 : priors.notListed; // nobody listed: it can only be something else
    result.push_back({Hypothesis::What::Quiet, {}, priors.quietShare * unlisted});
    result.push_back({Hypothesis::What::Loud, {}, (1 - priors.quietShare) * unlisted});
    return result;
}

Variants variantsOf(const std::vector<Suspect> &suspects, const std::vector<Hypothesis> &hypotheses)
{
    Variants variants;
    variants.begin.push_back(0);
    for (std::size_t h = 0; h < hypotheses.size(); ++h)
        addCells(variants, suspects, hypotheses[h], static_cast<std::uint32_t>(h));
    return variants;
}

} // namespace core
