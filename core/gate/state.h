#pragma once
// What the gate knows of one job: one appliance, one supply. A second appliance or cord is a second job, and nothing is
// carried from one to another.
#include "core/base/clock.h"
#include "core/gate/request.h"

#include <optional>
#include <set>
#include <vector>

namespace core {

// Why no power may be asked for in this job any more.
enum class VetoReason {
    Shock, Smoke, Sparks, Water, Unsaid, // Unsaid: an alarm at the start, its kind not told
    DamagedCord, TripsAgain, HotWhenOff, GroundFault, OpenEarth, BadSupply, DoorLatch, StaysCharged,
};

struct Veto
{
    VetoReason reason = VetoReason::Unsaid;
    std::string test;      // the reading that failed; "" = nothing that a reading could lift
    bool repaired = false; // a repair was told since: the same reading, good, lifts it
    friend bool operator==(const Veto &, const Veto &) = default;
};

enum class AlarmKind { Unsaid, Gas, CarbonMonoxide, Shock, Smoke, Sparks, Water };

struct Acknowledgement // at most one, used once; of this job and appliance, as the whole state is
{
    StepRequest request;   // its step, test, placement, process
    std::string meter;
    Instant at;
    int event = 0;         // number of the event that gave it
    bool run = false;      // S7: shared by the R steps that follow each other
    friend bool operator==(const Acknowledgement &, const Acknowledgement &) = default;
};

// Known source, every pair in V~, every pair in V with the straight line, known source again (NFPA 70E 120.5, HSE GS38:
// secondary). `done` counts the readings that passed, in that order.
struct Proof
{
    std::string place, meter;
    std::vector<std::string> pairs; // "L1 to L2"
    std::size_t done = 0;
    Instant since;
    friend bool operator==(const Proof &, const Proof &) = default;
};

struct ScreenUp // a safety screen that is on display, and for which step
{
    Screen screen = Screen::S0;
    StepRequest request;
    friend bool operator==(const ScreenUp &, const ScreenUp &) = default;
};

// Covers, wires, clips: what may be open or hanging on the machine.
struct Inside
{
    Covers covers = Covers::Unknown;
    std::set<std::string> opened; // places
    bool coversKnown = false;     // no other cover is open: not so after "a panel is already off", nor after a break
    bool wiresKnown = false;
    std::set<std::string> pulled; // by name; while not known: those to be looked over
    Clips clips = Clips::Unknown;
    std::optional<StepRequest> clipsFor; // Live: the hold point they were put on for
    bool untouched = true;        // nothing of this job was inside, and no lapse since
    friend bool operator==(const Inside &, const Inside &) = default;
};

struct Stored // what the program has seen discharged since power was last on
{
    std::set<std::string> discharged;
    std::string checking;         // motor capacitor whose first reading was good
    Instant checkedAt;
    std::size_t good = 0;
    friend bool operator==(const Stored &, const Stored &) = default;
};

struct Heat
{
    std::optional<Instant> at;    // the machine itself was last on
    bool on = false;              // and still counts as on: an outlet measured with the machine unplugged heats nothing
    std::set<std::string> cooled; // parts felt since
    std::string connectorFor;     // step that was promised to reach the connector only
    friend bool operator==(const Heat &, const Heat &) = default;
};

struct Refused // what the person said no to
{
    bool isolation = false; // S1, S2, S3: only looks are left
    bool off = false;       // S9
    bool never = false;     // no energized reading, no proof, in this job
    bool frame = false;     // the frame check
    friend bool operator==(const Refused &, const Refused &) = default;
};

struct Danger
{
    std::optional<AlarmKind> alarm;   // S14 is due
    std::optional<AlarmKind> stopped; // why the walk is over
    bool gasPage = false;             // the gas page was just shown: "it was not gas" leads out, once
    bool gasPageUsed = false;
    bool wasOn = false;
    friend bool operator==(const Danger &, const Danger &) = default;
};

struct JobFacts // told at the start
{
    std::string job, appliance, process;
    bool hardWired = false;
    bool proxy = false;        // a clerk with a caller
    bool energizedOn = false;  // their word for this job; a proxy's: a named manager of the shop
    bool provingOn = true;     // a proxy's: only as energizedOn
    bool textsChecked = true;  // the safety texts of this language were checked
    // Dead tests that every cord-connected metal appliance passes before power comes on with a hand near its frame: plug earth
    // pin to frame, each supply pin to frame. Empty: hard-wired, no metal, or a 3-wire cord whose frame is the neutral.
    std::vector<std::string> frameTests;
    bool frameIsNeutral = false; // that 3-wire cord: an open neutral makes the cabinet live, and the screens say so
    friend bool operator==(const JobFacts &, const JobFacts &) = default;
};

struct GateState
{
    JobFacts facts;
    MeterFit meter;
    Power power = Power::Unknown;
    Inside inside;
    Stored stored; // at the start and after any power everything may be charged
    Heat heat;
    std::optional<Acknowledgement> ack;
    std::optional<Proof> proof;
    std::string provenPlace;
    Instant deadSince;             // plug out, or proof complete
    int proofsFailed = 0;          // it was not dead
    bool notDead = false;          // the proof just failed: S9 says so
    std::vector<Veto> vetoes;
    Refused refused;
    Danger danger;
    bool asked = false;            // S0 was answered
    bool stillOut = false;         // thirty silent minutes: "Plug still out and in your sight?"
    bool plugOutOfReach = false;
    std::set<std::string> resets;  // breaker, gfci: once each
    std::map<std::string, bool> frameRead; // frame tests read in this job: whether good
    std::optional<ScreenUp> up;    // at most one of up and shown
    std::optional<StepRequest> shown;
    Instant last;                  // both clocks of the last event
    int events = 0;
    friend bool operator==(const GateState &, const GateState &) = default;
};

} // namespace core
