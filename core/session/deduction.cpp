#include "core/session/deduction.h"

#include "core/belief/kind_network.h"
#include "core/session/cursor.h"
#include "core/session/usefulness.h"

namespace core {
namespace {

bool sameMachine(const Machine &a, const Machine &b)
{
    const auto zero = [](const Meter &m) { return m.probeZero ? m.probeZero->value : -1; };
    if (a.plate.size() != b.plate.size())
        return false;
    for (const auto &[component, rating] : a.plate) {
        const auto other = b.plate.find(component);
        if (other == b.plate.end() || other->second.value != rating.value || other->second.volts != rating.volts ||
            other->second.watts != rating.watts)
            return false;
    }
    return a.library == b.library && a.tree == b.tree && a.answers == b.answers && a.ambient == b.ambient &&
           a.meter.functions == b.meter.functions && a.meter.top == b.meter.top && zero(a.meter) == zero(b.meter);
}

Chances chancesOf(const Dictionary &dictionary, const Belief &belief)
{
    Chances chances;
    std::set<std::string> owners;
    for (std::size_t i = 0; i < dictionary.suspects().size(); ++i) {
        const Suspect &s = dictionary.suspects()[i];
        chances.suspect[s.id] = belief.now.suspects[i];
        owners.insert(componentOf(s.id));
    }
    for (const std::string &owner : owners) {
        std::vector<int> all;
        for (std::size_t i = 0; i < dictionary.suspects().size(); ++i)
            if (componentOf(dictionary.suspects()[i].id) == owner)
                all.push_back(static_cast<int>(i));
        chances.component[owner] = probabilityOf(dictionary, belief.now, all);
    }
    return chances;
}

} // namespace

std::vector<std::string> replacedBy(const Deduction &deduction)
{
    std::vector<std::string> replaced;
    for (const Proven &p : deduction.ruling.proven)
        if (p.cure == Cure::Replace)
            replaced.push_back(p.component);
    return replaced;
}

Deduction deduce(const Facts &facts, const Abilities &abilities, const std::set<std::string> &openPlaces, const Deduction *before,
                 const Facts *factsBefore)
{
    Deduction d;
    if (facts.machine.tree == nullptr || facts.machine.appliance == nullptr || !asksAnswered(facts))
        return d; // which machine it is decides what can be wrong with it
    const bool same =
        before != nullptr && before->dictionary && factsBefore != nullptr && sameMachine(facts.machine, factsBefore->machine);
    d.dictionary = same ? before->dictionary : std::make_shared<Dictionary>(dictionaryOf(facts.machine));
    const std::vector<Evidence> evidence = evidenceOf(facts, d.dictionary->known());
    d.belief = update(*d.dictionary, evidence, same ? &before->belief : nullptr);
    d.chances = chancesOf(*d.dictionary, d.belief);
    d.findings = findingsOf(facts, abilities, d.dictionary->known(), openPlaces);
    d.ruling = rule(facts.machine, d.chances, d.findings);
    d.useful = usefulTests(facts, abilities, openPlaces, d);
    return d;
}

} // namespace core
