#include "core/belief/dictionary.h"

#include <algorithm>

namespace core {
namespace {

// numbers that tell two predictions apart
std::vector<double> flat(const Predicted &predicted)
{
    std::vector<double> result;
    for (const Prediction *p : {&predicted.pulled, &predicted.wired}) {
        result.push_back(static_cast<double>(p->terms.size()));
        for (const Term &t : p->terms)
            result.insert(result.end(), {t.weight, static_cast<double>(t.what), t.mu, t.sigma, t.h});
    }
    return result;
}

class Classes // numbers equal predictions alike, in order of appearance
{
public:
    std::uint32_t numberOf(const Predicted &predicted)
    {
        const auto [at, isNew] = m_numbers.try_emplace(flat(predicted), static_cast<std::uint32_t>(m_list.size()));
        if (isNew)
            m_list.push_back(predicted);
        return at->second;
    }
    std::vector<Predicted> take() { return std::move(m_list); }

private:
    std::map<std::vector<double>, std::uint32_t> m_numbers;
    std::vector<Predicted> m_list;
};

} // namespace

Dictionary::Dictionary(Suspects suspects, std::vector<Hypothesis> hypotheses, Predictor predictor, Meter meter, Noise noise)
    : m_suspects(std::move(suspects)), m_hypotheses(std::move(hypotheses)), m_variants(variantsOf(m_suspects.list, m_hypotheses)),
      m_predictor(std::move(predictor)), m_meter(std::move(meter)), m_noise(noise)
{
}

std::vector<int> Dictionary::ofComponent(std::string_view component) const
{
    std::vector<int> result;
    for (std::size_t s = 0; s < m_suspects.list.size(); ++s)
        if (m_suspects.list[s].component == component)
            result.push_back(static_cast<int>(s));
    return result;
}

std::shared_ptr<const Column> Dictionary::column(const Placement &placement, const std::vector<int> &putRight)
{
    auto &known = m_columns[{placement, putRight}];
    if (!known)
        known = std::make_shared<Column>(solve(placement, putRight));
    return known;
}

bool Singles::shows(const Fault &fault) const
{
    const auto &cells = of[static_cast<std::size_t>(fault.suspect)];
    return !cells.empty() && !(cells[static_cast<std::size_t>(fault.cell)] == healthy);
}

std::shared_ptr<const Singles> Dictionary::singles(const Placement &placement)
{
    auto &known = m_singles[placement];
    if (known)
        return known;
    auto singles = std::make_shared<Singles>();
    singles->healthy = m_predictor.predict(placement, {});
    singles->of.resize(m_suspects.list.size());
    for (std::size_t s = 0; s < singles->of.size(); ++s) {
        if (m_predictor.matters && !m_predictor.matters(placement, static_cast<int>(s)))
            continue;
        for (std::size_t cell = 0; cell < m_suspects.list[s].cells.size(); ++cell) {
            const Fault fault{static_cast<int>(s), static_cast<int>(cell)};
            singles->of[s].push_back(m_predictor.predict(placement, {&fault, 1}));
        }
    }
    return known = std::move(singles);
}

Column Dictionary::solve(const Placement &placement, const std::vector<int> &putRight)
{
    const auto alone = singles(placement);
    const auto matters = [&](const Fault &f) {
        const bool may = m_predictor.aloneTells ? alone->shows(f) : !alone->of[static_cast<std::size_t>(f.suspect)].empty();
        return may && !std::ranges::binary_search(putRight, f.suspect);
    };
    Column column;
    column.classOf.resize(m_variants.size());
    Classes classes;
    std::map<std::vector<Fault>, std::uint32_t> solved;
    solved[{}] = classes.numberOf(alone->healthy);
    std::vector<Fault> inside;
    for (std::size_t v = 0; v < m_variants.size(); ++v) {
        inside.clear();
        std::ranges::copy_if(m_variants.of(v), std::back_inserter(inside), matters);
        auto at = solved.find(inside);
        if (at == solved.end()) {
            const Predicted shows = inside.size() == 1
                                        ? alone->of[static_cast<std::size_t>(inside[0].suspect)][static_cast<std::size_t>(inside[0].cell)]
                                        : m_predictor.predict(placement, inside);
            at = solved.emplace(inside, classes.numberOf(shows)).first;
        }
        column.classOf[v] = at->second;
    }
    column.classes = classes.take();
    for (std::size_t v = 0; v < m_variants.size(); ++v)
        if (m_hypotheses[m_variants.hypothesis[v]].what == Hypothesis::What::Loud)
            column.classOf[v] = static_cast<std::uint32_t>(column.classes.size());
    return column;
}

} // namespace core
