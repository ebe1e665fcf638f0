#include "core/session/cursor.h"

#include <algorithm>

namespace core {
namespace {

// A tree the checker has passed has no endless walk; a tree it has not seen must not hang the program.
constexpr int kMostMoves = 500;

void follow(Facts &facts, const Step &step, const Then *then, std::string result)
{
    Cursor &cursor = facts.cursor;
    cursor.way.push_back({step.id, std::move(result)});
    ++cursor.moves;
    if (then == nullptr || cursor.moves > kMostMoves) {
        cursor.step.clear();
        cursor.end = Then{Then::What::Stop, {}, {}, {}, {}, {}};
        return;
    }
    if (then->what == Then::What::Found)
        facts.found.insert(then->suspect);
    if (then->what == Then::What::Go || then->what == Then::What::Found) {
        cursor.step = then->step;
        return;
    }
    cursor.step.clear();
    cursor.end = *then;
}

// The way on without evidence: `not_done`, else the branch of what says nothing, else that of a good reading.
const Then *withoutEvidence(const Step &step)
{
    const auto named = [&](std::string_view name) -> const Then * {
        const auto at = std::ranges::find_if(step.then, [name](const auto &branch) { return branch.first == name; });
        return at == step.then.end() ? nullptr : &at->second;
    };
    if (const Then *then = named("not_done"))
        return then;
    for (const std::string &answer : step.unsure)
        if (const Then *then = named(answer))
            return then;
    for (std::string_view good : {"good", "tone", "else"})
        if (const Then *then = named(good))
            return then;
    // a look without any such branch: the last one that goes on rather than ends
    const auto onward =
        std::find_if(step.then.rbegin(), step.then.rend(), [](const auto &b) { return b.second.what == Then::What::Go; });
    return onward == step.then.rend() ? nullptr : &onward->second;
}

// The answer of a look or do that counts: the latest, taken at this visit of the step.
const std::string *answerTo(const Facts &facts, const Step &step)
{
    const Looked *looked = lookedAt(facts, step.id);
    if (looked == nullptr || looked->answers.empty())
        return nullptr;
    const auto visits = static_cast<std::size_t>(std::ranges::count(facts.cursor.way, step.id, &WayStop::step));
    return looked->answers.size() > visits ? &looked->answers.back() : nullptr;
}

bool settleTest(Facts &facts, const Abilities &abilities, const Step &step)
{
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, step.test);
    if (found.test == nullptr || facts.notDone.contains(step.test) || facts.notDone.contains(step.id) ||
        !canDo(facts, abilities, found)) {
        follow(facts, step, withoutEvidence(step), {});
        return true;
    }
    if (found.test->byEye()) {
        const Looked *looked = lookedAt(facts, step.test);
        if (looked == nullptr || looked->answers.empty())
            return false;
        const std::string &answer = looked->answers.back();
        const bool unsure = std::ranges::find(found.test->unsure, answer) != found.test->unsure.end();
        follow(facts, step, unsure && step.thenFor(answer) == nullptr ? withoutEvidence(step) : step.thenFor(answer), answer);
        return true;
    }
    const TestState state = testState(facts, step.test);
    if (!state.done)
        return false;
    std::string name(word(state.name));
    follow(facts, step, step.thenFor(name), name);
    return true;
}

bool settleStep(Facts &facts, const Abilities &abilities, const Step &step)
{
    if (!holds(step.only, facts.machine.answers)) {
        facts.cursor.step = step.otherwise;
        return ++facts.cursor.moves <= kMostMoves;
    }
    if (step.what == Step::What::Test)
        return settleTest(facts, abilities, step);
    if (facts.notDone.contains(step.id) || !canDoStep(facts, abilities, step)) {
        follow(facts, step, withoutEvidence(step), {});
        return true;
    }
    const std::string *answer = answerTo(facts, step);
    if (answer == nullptr)
        return false;
    follow(facts, step, step.thenFor(*answer), *answer);
    return true;
}

} // namespace

bool asksAnswered(const Facts &facts)
{
    return facts.machine.appliance->nextAsk(facts.machine.answers) == nullptr;
}

bool canDoStep(const Facts &, const Abilities &abilities, const Step &step)
{
    const bool power = step.appliance == ApplianceState::InUse || !step.touches.empty();
    if (power && !abilities.running)
        return false;
    return step.appliance != ApplianceState::NoPower || abilities.dead;
}

void settle(Facts &facts, const Abilities &abilities)
{
    if (facts.machine.tree == nullptr || !asksAnswered(facts))
        return;
    while (!facts.cursor.step.empty()) {
        const Step *step = facts.machine.tree->step(facts.cursor.step);
        if (step == nullptr) {
            facts.cursor.step.clear();
            return;
        }
        if (!settleStep(facts, abilities, *step))
            return;
    }
}

} // namespace core
