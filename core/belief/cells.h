#pragma once
// The hidden parameters of a failure mode, in cells. All weights and edges are judgement.
#include "core/belief/suspects.h"

namespace core {

// intermittent: open now .45, jumps .25, hides .30. A ground along a conductor: where, in 6 cells, x its contact 0..100
// kohm in 5. A ground on a broken conductor: where in 4, contact in 3, which end hangs on it. Any other value the mode may
// have: 5 cells even in ln (from 0: the first to 1 % of the top). A value that is steady: one cell.
std::vector<Cell> cellsOf(const Kind &kind, const FailureMode &mode);
// One of `wires` is at fault: each cell once for every wire.
std::vector<Cell> onEachWire(const std::vector<Cell> &cells, const std::vector<int> &wires);

// The path whose value the cells of this mode span; nullptr: none.
const Path *variedPath(const Kind &kind, const FailureMode &mode);

} // namespace core
