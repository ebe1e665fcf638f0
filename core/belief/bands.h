#pragma once
// What a test that is no ohms would show without a circuit: bands drawn from its limits.
#include "core/belief/suspects.h"
#include "core/belief/prediction.h"

namespace core {

struct BandTest
{
    const Kind *kind = nullptr; // nullptr: a loop
    const Test *test = nullptr;
    std::size_t placement = 0;
    MachineFacts facts;
    double supply = 240;        // volts: the most that can be read
};

// Good: the middle of the limits with a quarter of their width; volts at least 3 V + 3 %. A mode that names the path
// between the probes shows that; one that the test convicts and no path describes shows what is outside good: volts and
// amps mostly nothing, else too little, or too much where nothing is good; a thermostat welded shut stays closed, one
// that drifted opens too cold or too hot (judgement). `mode` nullptr: healthy.
Prediction bandPrediction(const BandTest &at, const FailureMode *mode, const Cell &cell);

// Whether this test says anything of the mode: not if its `convicts` leaves the mode out and no path shows it.
bool bandShows(const BandTest &at, const FailureMode &mode);

} // namespace core
