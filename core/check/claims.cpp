#include "core/belief/kind_network.h"
#include "core/check/check.h"
#include "core/session/cursor.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

// Somebody with every meter function, allowed everything: what the tree itself can find.
Meter everyMeter()
{
    Meter meter;
    for (int m = 0; m <= static_cast<int>(Measure::OpensAt); ++m)
        meter.functions.insert(std::string(word(static_cast<Measure>(m))));
    meter.category = "CAT III 600 V";
    meter.probeZero = Amount{.2, Unit::Ohm};
    return meter;
}

std::string nameOfTerm(const Term &term, const Limits &limits, Measure measure)
{
    const bool continuity = measure == Measure::Continuity;
    if (term.what == Term::What::Jumps)
        return "jumps";
    if (term.what == Term::What::Open)
        return continuity                    ? "no tone"
               : limits.openIsGood           ? "good"
               : isEnergized(measure)        ? "none"
               : measure == Measure::OpensAt ? "stays closed"
                                             : "open";
    if (continuity)
        return term.mu < kToneHigh ? "tone" : "no tone";
    if (isEnergized(measure) && term.mu < 2 && limits.lo > 2)
        return "none";
    if (limits.openIsGood || term.mu < limits.lo)
        return "low";
    return term.mu > limits.hi ? "high" : "good";
}

class ClaimWalk
{
public:
    ClaimWalk(const Library &library, const Tree &tree, const Answers &answers)
    {
        m_facts.machine = {&library,     library.appliance(tree.appliance), &tree, answers,
                           everyMeter(), Amount{22, Unit::Celsius},         {}};
        m_dictionary = std::make_shared<Dictionary>(dictionaryOf(m_facts.machine));
    }

    const Dictionary &dictionary() const { return *m_dictionary; }

    // The step it ended at, or "" if the suspect was claimed or found.
    std::string endOf(const Fault &fault)
    {
        const Suspect &suspect = m_dictionary->suspects()[static_cast<std::size_t>(fault.suspect)];
        const Tree &tree = *m_facts.machine.tree;
        std::string at = tree.steps.front().id, last = at;
        for (std::size_t moves = 0; moves <= 4 * tree.steps.size(); ++moves) {
            const Step *step = tree.step(at);
            if (step == nullptr)
                return last;
            last = at;
            if (!holds(step->only, m_facts.machine.answers)) {
                at = step->otherwise;
                continue;
            }
            const Then *then = thenOf(*step, fault);
            if (then == nullptr)
                return last;
            if (!then->suspect.empty() && componentOf(then->suspect) == componentOf(suspect.id))
                return {};
            if (then->what != Then::What::Go && then->what != Then::What::Found)
                return last;
            at = then->step;
        }
        return last;
    }

private:
    const Then *thenOf(const Step &step, const Fault &fault)
    {
        if (step.what != Step::What::Test)
            return step.thenFor(answerOf(step.id, fault));
        const Library::Found found = m_facts.machine.library->test(*m_facts.machine.appliance, step.test);
        if (found.test == nullptr || !canDo(m_facts, {true, true, true}, found))
            return step.thenFor("good");
        return step.thenFor(found.test->byEye() ? answerOf(step.test, fault) : readingOf(step.test, *found.test, fault));
    }

    std::string answerOf(const std::string &id, const Fault &fault)
    {
        const auto entry = answeredOf(m_facts, m_dictionary->known(), id);
        if (!entry)
            return {};
        std::string clears;
        for (std::size_t n = 0; n < entry->answers.size(); ++n) {
            if (std::ranges::find(entry->speaksFor[n], fault.suspect) != entry->speaksFor[n].end())
                return entry->answers[n];
            if (entry->speaksFor[n].empty() && clears.empty())
                clears = entry->answers[n];
        }
        return clears.empty() && !entry->answers.empty() ? entry->answers.back() : clears;
    }

    std::string readingOf(const std::string &id, const Test &test, const Fault &fault)
    {
        std::string good = "good";
        for (std::size_t n = 0; n < std::max<std::size_t>(1, test.placements.size()); ++n) {
            Placement placement{id, n, {{"part_temperature", {22, Unit::Celsius}}, {"printed_temperature", {63, Unit::Celsius}}}};
            for (const Condition &condition : test.with)
                if (condition.limits)
                    placement.with[condition.id] = {std::isfinite(condition.limits->lo) && std::isfinite(condition.limits->hi)
                                                        ? (condition.limits->lo + condition.limits->hi) / 2
                                                    : std::isfinite(condition.limits->hi) ? condition.limits->hi
                                                                                          : condition.limits->lo,
                                                    Unit::Celsius};
            const auto singles = m_dictionary->singles(placement);
            const auto &cells = singles->of[static_cast<std::size_t>(fault.suspect)];
            const Prediction &shows =
                cells.empty() ? singles->healthy.pulled : cells[static_cast<std::size_t>(fault.cell)].pulled;
            if (shows.terms.empty())
                continue;
            const Limits limits = limitsFor(m_facts.machine, id, n, placement.with).value_or(Limits{});
            const std::string name = nameOfTerm(*std::ranges::max_element(shows.terms, {}, &Term::weight), limits, test.measure);
            if (name != "good" && name != "tone")
                return name;
            good = name;
        }
        return good;
    }

    Facts m_facts;
    std::shared_ptr<Dictionary> m_dictionary;
};

} // namespace

std::vector<Diagnostic> checkClaims(const Library &library, const Tree &tree)
{
    std::vector<Diagnostic> found;
    const Appliance *appliance = library.appliance(tree.appliance);
    if (appliance == nullptr || tree.steps.empty())
        return found;
    std::set<std::string> told;
    for (const Answers &answers : combinationsOf(*appliance)) {
        ClaimWalk walk(library, tree, answers);
        for (std::size_t s = 0; s < walk.dictionary().suspects().size(); ++s) {
            const Suspect &suspect = walk.dictionary().suspects()[s];
            if (!suspect.explains() || told.contains(suspect.id))
                continue;
            std::string end;
            bool claimed = false;
            for (std::size_t cell = 0; cell < suspect.cells.size() && !claimed; ++cell) {
                const std::string at = walk.endOf({static_cast<int>(s), static_cast<int>(cell)});
                claimed = at.empty();
                if (end.empty())
                    end = at;
            }
            if (claimed)
                continue;
            told.insert(suspect.id);
            std::string machine;
            for (const auto &[ask, answer] : answers)
                machine += (machine.empty() ? "" : ", ") + ask + " " + answer;
            found.push_back(
                {DiagnosticKind::NeverClaimed, tree.place,
                 "with `" + suspect.id + "` (" + machine + ") the walk ends at `" + end + "`, which claims something else",
                 "let a branch claim, fix or call for it"});
        }
    }
    return found;
}

} // namespace core
