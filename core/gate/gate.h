#pragma once
// The safety gate: a pure fold over ALL events of a job, undone ones included, and a pure question: may this step be shown
// now, and if not, what comes first? It knows no tree. Proven by the tests is: no energized step is shown without a fresh
// acknowledgement of its own, and no hands inside before the person said or showed that power is off. Not proven: that the
// person was right. Local codes and licensed practice stand above it.
//
// How a session drives it, after every event:
//   1. wanted = the step that comes next;  s = screenFor(state, wanted, now)
//   2. Show: log StepShown{wanted} unless isShown(); Insert: log ScreenShown{s.screen, wanted} unless isUp(), then display
//      it; Tests: show one of s.tests first; Refuse: the step counts as not done, or the walk ends with this reason
//   3. on a message: build the event it would be; mayAnswer() says no with a code, or the event is logged and applied
#include "core/gate/event.h"
#include "core/gate/refusal.h"
#include "core/gate/rules.h"

namespace core {

struct Box // one confirmation; its words are in the safety texts under the part of the id before the colon
{
    std::string id;   // "plug_out", "wire:dryer_element.t1", "cover:back"
    std::string name; // what stands behind the colon
    friend bool operator==(const Box &, const Box &) = default;
};

struct Screening
{
    enum class What { Show, Insert, Tests, Refuse };
    What what = What::Show;
    StepClass stepClass = StepClass::A;
    Screen screen = Screen::S0;      // Insert; Refuse of an X step: S13
    std::string form;                // S1 still_out; S7 touch|run; S9 not_dead; S10 motor|board; S11 wait|connector; S12 gas|co
    std::vector<Box> boxes;
    std::vector<std::string> ways;   // ids, the way on first; their words are in the safety texts
    double waitS = 0;                // before that a confirm or reading is refused
    std::string phase;               // S3: hold known_before work_point known_after; S10: reading again confirm
    std::string pair;                // S3 work_point: "L1 to L2"
    bool dc = false;                 // S3: V with the straight line
    std::map<std::string, std::string> params; // the step's own, and what the gate fills in
    std::vector<std::string> notes;  // names of the conditional lines that hold
    std::vector<std::string> tests;  // Tests: dead tests to be read good first
    std::optional<Refusal> refusal;
    friend bool operator==(const Screening &, const Screening &) = default;
};

struct PutBack // what the machine may be missing: for S8 and for the verdict
{
    std::vector<std::string> wires, covers; // by name
    bool everyWire = false;                 // after a lapse: every wire by eye, the names are those last known
    bool everyCover = false;
    bool meter = false;
    bool empty() const { return wires.empty() && covers.empty() && !everyWire && !everyCover && !meter; }
    friend bool operator==(const PutBack &, const PutBack &) = default;
};

GateState apply(GateState state, const GateEvent &event, Instant at, const Rules &rules = kAllRules);
// What comes up when this step is wanted.
Screening screenFor(const GateState &state, const StepRequest &wanted, Instant now, const Rules &rules = kAllRules);
// Whether the event a message would be may happen now; a reading, answer or skip is judged by its own step's class.
// A refused event leaves the state as it is, also in apply().
std::optional<Refusal> mayAnswer(const GateState &state, const GateEvent &event, Instant now, const Rules &rules = kAllRules);
// Whether time alone took something away: the session logs WentAway{Lapsed} then. (apply and screenFor see it anyway.)
bool lapsed(const GateState &state, Instant now);
PutBack putBackList(const GateState &state);
// Before the verdict: S12, S14, S9 if it may be on, a way to dead if something is to be put back; else Show.
// `verdict` is verdictRequest(), hard-wired with the conductors to be proved.
Screening endOfWalk(const GateState &state, const StepRequest &verdict, Instant now, const Rules &rules = kAllRules);
// What is wanted when nothing else is. S8 on the verdict page is logged as ScreenShown{S8, this} before it is confirmed.
StepRequest verdictRequest();

bool isUp(const GateState &state, const Screening &screening, const StepRequest &wanted);
bool isShown(const GateState &state, const StepRequest &wanted);

// ---- figures (common practice, unless a source is named) ----
inline constexpr double kSilenceS = 30 * 60;       // a dead state lasts that long after the last event
inline constexpr double kProofLastsS = 4 * 3600;   // and proven dead no longer than that
inline constexpr double kProofWithinS = 15 * 60;   // the readings of one proof
inline constexpr double kAckS = 10 * 60;
inline constexpr double kRunS = 15 * 60;
inline constexpr double kClockDriftS = 60;         // wall and running clock may differ by that
inline constexpr double kMotorWaitS = 5 * 60;      // capacitors; IEC 60335-1 22.5 covers the plug's pins only
inline constexpr double kBoardWaitS = 10 * 60;
inline constexpr double kAgainWaitS = 30;
inline constexpr double kVeryHotS = 30 * 60;       // a note "very_hot" (above 200 C) holds that long: WARNING, not CAUTION
inline constexpr double kChargeLimitV = 5;
inline constexpr double kDeadAcV = 2, kDeadDcV = 5; // below: no voltage
// A known source reads within these: wide around 120 V and IEC 60038's 230 V +-10 %.
constexpr bool isKnownSource(double volts) { return (volts >= 104 && volts <= 132) || (volts >= 207 && volts <= 253); }

} // namespace core
