#pragma once
// What may be the case: one suspect, a pair, a protector with its cause and one more, or something not listed.
#include "core/belief/suspects.h"

#include <cstdint>
#include <span>

namespace core {

struct Hypothesis
{
    enum class What { Listed, Quiet, Loud };
    What what = What::Listed;       // Quiet: every listed part reads healthy. Loud: each reading is drawn from a slip's
    std::vector<int> suspects;      // ascending, of different components
    double prior = 0;
};

struct Priors // judgement
{
    double unrelated = .05;   // two faults that have nothing to do with each other
    double notListed = .02;
    double quietShare = .6;   // of what is not listed
};

// {k}: (1-l-w) o_k (1-sum of links)(1-sum of besides); {k, cause} linked: (1-l-w) o_k chance; {k, c} beside:
// (1-l-w) o_k (1-sum of links) beta_c; {s, t} of different components: l o_s o_t / Z; a linked k among them gives its
// share to {s, t, cause}. Equal sets are one hypothesis. All priors add to 1.
std::vector<Hypothesis> hypothesesOf(const Suspects &suspects, const Priors &priors = {});

// A suspect in one of its cells.
struct Fault
{
    int suspect = 0, cell = 0;
    friend auto operator<=>(const Fault &, const Fault &) = default;
};

// A hypothesis with every parameter in one cell: likelihoods multiply per variant and are summed per hypothesis at the
// end, because two readings that hang on the same parameter are not independent.
struct Variants
{
    std::vector<std::uint32_t> hypothesis;   // of each variant
    std::vector<double> prior;               // the hypothesis's, times the cells' weights
    std::vector<std::uint32_t> begin;        // faults of variant v: faults[begin[v]] .. faults[begin[v + 1]]
    std::vector<Fault> faults;
    std::size_t size() const { return prior.size(); }
    std::span<const Fault> of(std::size_t v) const { return {faults.data() + begin[v], faults.data() + begin[v + 1]}; }
};

Variants variantsOf(const std::vector<Suspect> &suspects, const std::vector<Hypothesis> &hypotheses);

} // namespace core
