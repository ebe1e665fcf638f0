#pragma once
// The rungs of this machine as wires between terminals.
#include "core/reading/machine.h"

namespace core {

struct Wire
{
    int number = 0;       // counted over all rungs that are on this machine
    std::string from, to; // "component.terminal", a rail "L1", a wire point "(m3)"
    std::string rung;
};

std::vector<Wire> wiresOf(const Machine &machine);
// Where the cord's lugs x, y, w feed the rails: L1 at x, N at w, L2 at y, or at w where it has the volts of N. No wires of
// the harness: number -1. Empty without a cord or while the supply was not asked for.
std::vector<Wire> lugsOf(const Machine &machine);
// Those of the rungs in which the complaint shows (nothing or weak flows); all where the tree says nothing of rungs.
std::vector<int> wiresBehind(const Machine &machine);

} // namespace core
