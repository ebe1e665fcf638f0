#pragma once
// The wires of the chain: whole, pulled or broken; the zone under test and the two probes on it.
#include "app/draw/chain_layout.h"

class QPainter;

namespace app {

void paintWires(QPainter &painter, const ChainLayout &layout, const ChainState &state, const Style &style);
void paintProbes(QPainter &painter, const ChainLayout &layout, const ChainState &state, const Style &style);

} // namespace app
