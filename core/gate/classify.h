#pragma once
// The class of a step follows from what is measured, where, and what is declared of the appliance. A tree can only make it
// stricter: there is no key for power. Also below 50 V: a 5 V rail may sit at mains potential.
#include "core/gate/request.h"

#include <optional>
#include <string>
#include <string_view>

namespace core {

enum class PlaceSort { NoCover, OutletFace, BehindCover };
enum class Declared { Unsaid, AsIs, NoPower, InUse };

struct StepFacts
{
    std::string kind, test;    // "drive_motor_bldc", "gen"; "" for a look or do of a tree
    // resistance continuity capacitance diode voltage_ac voltage_dc voltage_low_impedance current_clamp frequency duty
    // temperature opens_at look hand ear; "" for an ask, "do" for a do
    std::string measure;
    PlaceSort place = PlaceSort::NoCover;
    Declared appliance = Declared::Unsaid;
    std::string touches;       // breaker plug outlet gfci switch
    Store store = Store::None;
    std::string zone;          // of xZones(): declared of the component or place
    bool turnedByHand = false; // the test says so; it counts only for what the closed list names
    std::string text;
};

struct Classified
{
    StepClass stepClass = StepClass::X;
    bool inUse = false;        // AP that goes on to run the machine
    std::string zone;          // X: the text that says why
    std::string fault;         // what contradicts itself: a load fault, and the session withholds the step
};

Classified classify(const StepFacts &facts);

// The stricter of two. A tree, a kind or a setting may name a class; it never lowers the program's.
StepClass stricterOf(StepClass program, StepClass named);

// What nobody is shown how to open, and for whom to call there is a text. Closed list.
bool isXZone(std::string_view zone);
// The zone of a kind, or of one test of it, that is not for owners; "" none.
std::string_view xZoneOf(std::string_view kind, std::string_view test);

// A word in the text that asks for what the class forbids: "start", "while on", "plug in" in a dead step, "remove the
// panel" in a look from outside. A help for authors in English, not the guard: every dead screen carries the program's own
// line. nullopt: none found.
std::optional<std::string> wordAgainst(StepClass stepClass, std::string_view text);

// Measurement category a step needs: IEC 61010 (secondary). `terminalBlock`: of a range or dryer.
MeterMark markFor(StepClass stepClass, bool hardWired, bool terminalBlock);

} // namespace core
