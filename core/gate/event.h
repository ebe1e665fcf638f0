#pragma once
// What happens to the gate. The session logs these, undone and amended events included, and nothing is ever taken out.
#include "core/gate/state.h"

#include <variant>

namespace core {

struct GateStarted { JobFacts facts; MeterFit meter; };

// ---- what was on the screen: logged before it is displayed ----
struct ScreenShown { Screen screen; StepRequest request; };
struct StepShown { StepRequest request; };

// ---- answers to a safety screen ----
enum class StartAnswer { Alarm, Open, Closed };
struct StartAnswered { StartAnswer answer; };
// How S9 made it off, or S11 goes on. Plain everywhere else.
enum class Way { Plain, Control, Plug, Breaker, Connector };
// S1 S2 S7 S8 S9 S10 S11 S14
struct Confirmed { Screen screen = Screen::S1; std::vector<std::string> boxes{}; Way way = Way::Plain; };
// S3 S4 S5 S6 EO; step "" = the one shown
struct Acknowledged { std::string step{}; std::vector<std::string> boxes{}; };
// What is on the screen, a step or a safety screen, is left undone. `never`: never in this job (S4 S5 S6 EO S3).
struct Declined { bool never = false; };
// S1: "I cannot reach the plug". S2: it can be reached after all. S1 after silence: it is not in sight any more.
enum class Detour { CannotReachPlug, CanReachPlug, NotInSight };
struct DetourTaken { Detour detour; };
// For the pair that is asked for; "" = that one.
struct ProofReading { double volts = 0; bool settled = true; std::string pair{}; };
struct ChargeReading { double volts = 0; bool settled = true; };                  // at the motor capacitor of S10

// ---- answers to a step ----
enum class Outcome { Part, Good, Failed }; // Part: more placements to come. An answer to a look is Good.
struct ReadingTaken { StepRequest request; Outcome outcome = Outcome::Good; std::optional<VetoReason> veto{}; };

// ---- what changes beliefs and never what was done ----
struct Skipped { std::string test{}; };
struct Chosen { std::string test{}; };  // the person picks another test: what was declined may be asked again
struct Undone {};
// Of a proof's reading too; `fails` says what the value is now.
struct Amended { bool ofProof = false; bool fails = false; std::string test{}; std::optional<VetoReason> veto{}; };
struct Reported {};                   // a value the person already has: no procedure, convicts nothing, proves nothing

// ---- what makes everything unknown ----
enum class Away { PlugOutOfSight, OtherPerson, BreakerTouched, Lapsed, Left, Resumed, ContentChanged };
struct WentAway { Away why = Away::Lapsed; std::string process{}; }; // process: of Resumed, the new one

struct MeterChanged { MeterFit meter; };
struct Alarm { AlarmKind kind; };
struct NotGas { AlarmKind kind; };    // from the gas page only, once: what it was instead
struct PressedByMistake {};           // from the gas page: the job is closed
struct VetoFound { Veto veto; };      // seen, heard or told: damaged cord, trips again, water ...
struct RepairTold { std::string test; }; // what that reading found was repaired
struct NeverTakenBack {};             // on its own page, by the person alone
struct EnergizedTurned { bool energized; bool proving; };

using GateEvent =
    std::variant<GateStarted, ScreenShown, StepShown, StartAnswered, Confirmed, Acknowledged, Declined, DetourTaken, ProofReading,
                 ChargeReading, ReadingTaken, Skipped, Chosen, Undone, Amended, Reported, WentAway, MeterChanged, Alarm, NotGas,
                 PressedByMistake, VetoFound, RepairTold, NeverTakenBack, EnergizedTurned>;

} // namespace core
