#pragma once
// What comes next, before the gate has its say: an ask, a step of the tree, a test, or the end.
#include "core/session/deduction.h"

namespace core {

struct Wanted
{
    enum class What { Ask, Step, Test, Run, End }; // Run: the proof of a repair
    // Why it is asked now: the tree's order, a missing piece of proof, a doubt worth its minutes, the person's choice.
    enum class Reason { Tree, Again, Chosen, Confirm, Need, Behind, Proof, Doubt, Repair };
    What what = What::End;
    Reason reason = Reason::Tree;
    std::string id;            // ask, step, or test
    std::string step;          // the step of the tree it belongs to, "" otherwise
    std::size_t placement = 0;
    bool reseat = false;       // lift the probes, tips together, back on the part
    bool near = false;         // a better reading of the same, near a limit
    std::string component;     // whose proof it serves
    friend bool operator==(const Wanted &, const Wanted &) = default;
};

Wanted next(const Facts &facts, const Deduction &deduction);

} // namespace core
