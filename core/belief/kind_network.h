#pragma once
// The predictor while no circuit is solved: each kind is a network of its own with all its wires pulled, and a loop is
// what lies in series between its probes. Currents that part and meet again, and volts through the machine, are not
// solved; what only a circuit could tell is left wide open.
//   ohms and continuity   a part: its own branches (part_network.h); a loop: the parts it covers and the wires of the
//                         ladder between them, and every part of the ladder if it pulls nothing
//   wires left on         half the series way through all that hangs together, half anything at all
//   volts, amps, others   the limits as bands (bands.h); a test that convicts `none` could show anything
#include "core/belief/dictionary.h"

namespace core {

// `suspects` as the dictionary has them. The machine's library and appliance must outlive the predictor.
Predictor kindNetwork(const Machine &machine, const Suspects &suspects);

// Everything belief needs of a machine: suspects, hypotheses, predictor.
Dictionary dictionaryOf(const Machine &machine);

} // namespace core
