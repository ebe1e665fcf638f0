#pragma once
// What the session asks the gate: may this step be shown now?
#include "core/gate/meter_fit.h"
#include "core/gate/power.h"

#include <map>
#include <string>
#include <vector>

namespace core {

// What can hold a charge in reach of a DS step. Motor: a motor's capacitor, measured before it is touched. Board: inverter
// or control board, waited for and never probed.
enum class Store { None, Motor, Board };

struct StepRequest
{
    std::string step, test, placement; // placement: "1" of several; a hold is bound to all three
    std::string process;               // the running program that asks; an acknowledgement is of one process
    StepClass stepClass = StepClass::A;
    std::string place;                 // id of what is open there
    bool coverOff = false;             // a cover is off at that place
    std::vector<std::string> pulls;    // wires it takes off, by name; a live step: those it leaves off
    std::string touches;               // AP: breaker, gfci, plug, switch, outlet
    bool inUse = false;                // AP that goes on to run the machine: one S7 serves both

    std::string hotPart;               // the part that is hot after use; "" none
    double hotWaitS = 0;               // 1800 oven, element, compressor; 900 dryer, heater, motor (common practice)
    std::string hotConnector;          // where it can be measured without reaching the part; "" nowhere
    bool wantsHot = false;             // to be measured hot: reach the connector only, no wait

    Store store = Store::None;
    std::string storeName;             // the capacitor or board

    MeterMark needs = kInsideMark;     // category the place asks for; see markFor()
    bool needsFrameCheck = false;      // E1 E3 EO on a cord-connected metal appliance: the frame tests of the job come first
    std::vector<std::string> frameNotHere; // frame tests of the job that this machine does not have
    std::vector<std::string> conductors; // names of all conductors at this place and "bare metal": their pairs are proved

    std::string zone;                  // X: which text says why and who
    std::map<std::string, std::string> params; // {named} words for the screens of this step
    std::vector<std::string> notes;    // names of conditional lines that hold for this step
    friend bool operator==(const StepRequest &, const StepRequest &) = default;
};

// Same step, test and placement: what an acknowledgement and a screen are bound to.
inline bool sameStep(const StepRequest &a, const StepRequest &b)
{
    return a.step == b.step && a.test == b.test && a.placement == b.placement && a.stepClass == b.stepClass;
}

} // namespace core
