#include "core/session/wanted.h"

#include "core/session/proving.h"

#include <algorithm>

namespace core {
namespace {

Wanted wantTest(const Facts &facts, const std::string &id, Wanted::Reason reason, std::string component = {})
{
    Wanted w;
    w.reason = reason;
    w.id = id;
    w.component = std::move(component);
    if (facts.machine.tree != nullptr && facts.machine.tree->step(id) != nullptr &&
        facts.machine.tree->step(id)->what != Step::What::Test) {
        w.what = Wanted::What::Step;
        w.step = id;
        return w;
    }
    w.what = Wanted::What::Test;
    const TestState state = testState(facts, id);
    w.placement = state.nextPlacement.value_or(state.worstPlacement);
    w.reseat = state.begun && (state.done || state.why == PlacementState::Next::Reseat);
    w.near = state.why == PlacementState::Next::Again && state.begun && !state.done;
    return w;
}

// A test that was begun and waits for its next placement or for the same once more.
std::optional<Wanted> unfinished(const Facts &facts)
{
    int latest = 0;
    std::string test;
    for (const Measured &m : facts.measured)
        if (!m.takes.empty() && m.takes.back().event > latest) {
            latest = m.takes.back().event;
            test = m.test;
        }
    if (test.empty() || facts.notDone.contains(test) || testState(facts, test).done)
        return std::nullopt;
    Wanted w = wantTest(facts, test, Wanted::Reason::Again);
    const Step *step = facts.machine.tree == nullptr ? nullptr : facts.machine.tree->step(facts.cursor.step);
    if (step != nullptr && step->test == test)
        w.step = step->id;
    return w;
}

Wanted::Reason reasonOf(Due::Why why)
{
    switch (why) {
    case Due::Why::Proof:
        return Wanted::Reason::Proof;
    case Due::Why::Confirm:
        return Wanted::Reason::Confirm;
    case Due::Why::Need:
        return Wanted::Reason::Need;
    case Due::Why::Behind:
        return Wanted::Reason::Behind;
    }
    return Wanted::Reason::Proof;
}

// Dead before energized, cheap before dear, over everything that is due.
std::optional<Wanted> due(const Facts &facts, const Deduction &d, bool proofToo)
{
    const Finding *best = nullptr;
    const Due *of = nullptr;
    for (const Due &item : d.ruling.due) {
        if (item.why == Due::Why::Proof && !proofToo)
            continue;
        if (item.tests.empty())
            continue;
        const auto at = std::ranges::find_if(d.findings, [&](const Finding &f) { return f.test == item.tests.front(); });
        if (at == d.findings.end())
            continue;
        const auto rank = [](const Finding &f, const Due &why) {
            return std::tuple(f.energized, why.why != Due::Why::Confirm, f.minutes);
        };
        if (best == nullptr || rank(*at, item) < rank(*best, *of)) {
            best = &*at;
            of = &item;
        }
    }
    if (best == nullptr)
        return std::nullopt;
    return wantTest(facts, best->test, reasonOf(of->why), of->component);
}

const Useful *worthDoing(const Deduction &d)
{
    const auto at =
        std::ranges::find_if(d.useful, [](const Useful &u) { return !u.refused && u.gain * kMinutesPerDoubt >= u.minutes; });
    return at == d.useful.end() ? nullptr : &*at;
}

std::optional<Wanted> treeStep(const Facts &facts)
{
    const Step *step =
        facts.cursor.step.empty() || facts.machine.tree == nullptr ? nullptr : facts.machine.tree->step(facts.cursor.step);
    if (step == nullptr)
        return std::nullopt;
    Wanted w;
    if (step->what == Step::What::Test)
        w = wantTest(facts, step->test, Wanted::Reason::Tree);
    else
        w.id = step->id;
    w.what = step->what == Step::What::Test ? Wanted::What::Test : Wanted::What::Step;
    w.step = step->id;
    return w;
}

Wanted proofOfRepair(const Facts &facts)
{
    Wanted w;
    w.what = Wanted::What::Run;
    w.reason = Wanted::Reason::Repair;
    w.id = kProofStep;
    if (const auto due = dueInProof(facts)) {
        w.what = Wanted::What::Test;
        w.id = due->test;
        w.placement = due->placement;
        w.component = componentOf(due->test);
    }
    return w;
}

} // namespace

Wanted next(const Facts &facts, const Deduction &d)
{
    if (facts.proving)
        return proofOfRepair(facts);
    if (const Ask *ask = facts.machine.appliance->nextAsk(facts.machine.answers))
        return {Wanted::What::Ask, Wanted::Reason::Tree, ask->id, {}, 0, false, false, {}};
    if (const auto w = unfinished(facts))
        return *w;
    if (facts.chosen)
        return wantTest(facts, *facts.chosen, Wanted::Reason::Chosen);
    if (const auto w = due(facts, d, false)) // a part has failed: what its proof still needs, at once
        return *w;
    const bool proven = std::ranges::any_of(d.ruling.proven, &Proven::listed);
    const Useful *useful = worthDoing(d);
    if (proven && d.ruling.due.empty()) {
        if (useful == nullptr)
            return {};
        return wantTest(facts, useful->id, Wanted::Reason::Doubt);
    }
    if (const auto w = treeStep(facts))
        return *w;
    if (const auto w = due(facts, d, true))
        return *w;
    if (useful != nullptr)
        return wantTest(facts, useful->id, Wanted::Reason::Doubt);
    return {};
}

} // namespace core
