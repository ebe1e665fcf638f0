#pragma once
// What happened in a job, in the past tense and by names that stay. A job is its first event's snapshot and the events
// after it; nothing else is stored, everything on a screen is computed from them.
#include "core/gate/event.h"
#include "core/reading/meter.h"
#include "core/reading/reading.h"
#include "core/tree/appliance.h"

namespace core {

// What held when the job began. Hashes say which content it was begun with.
struct Snapshot
{
    std::string tree;      // "dryer_elec/no_heat"
    std::string appliance;
    std::map<std::string, std::string> hashes; // id of kind, appliance, tree -> content hash
    Meter meter;
    std::optional<Amount> ambient;
    std::string who = "owner"; // owner | proxy
    bool energized = false;    // energized tests allowed by the person (a proxy: by the shop's manager) for this job
    bool hardWired = false;
    std::vector<std::string> frameTests; // dead tests of the frame, read before power comes on with a hand near it
    bool toldClock = false;    // practice: both clocks move by what is told
    std::string program;       // version
};

struct Event
{
    enum class What {
        Started,      // snapshot
        Answered,     // step (S0, an ask, a look or do), value
        Read,         // test, placement, value as typed, reading as understood, reseated, reported
        Confirmed,    // step (screen), boxes, value (which way: control plug breaker connector)
        Acknowledged, // step (screen), test, boxes
        Declined,     // step (screen), test, never
        Detour,       // value: cannot_reach_plug can_reach_plug not_in_sight
        Skipped,      // step or test, value: why
        Chosen,       // test
        Shown,        // step (of the tree, or the screen), request: put on the display, logged before it was
        Undone,       // target
        Amended,      // target, value, reading
        Sheet,        // step: "component.rating", value
        MeterChanged, // meter
        Left,         // parked
        Resumed,
        Lapsed,       // value: lapsed, other_person, content
        Stopped,      // value: gas co shock smoke spark water
        NotGas,
        Mistake,
        VerdictShown, // value: kind; boxes: parts and conditions
        PutBack,      // boxes
        Outcome,      // value
        Repaired,     // test: what it found was repaired
        Proving,      // boxes: tests to be read once on what was put in, before the machine is run
        Energized,    // value: on off; energized tests for this job, by the person alone
        NeverTakenBack,
    };
    int number = 0; // from 1
    Instant at;
    std::string who;
    What what = What::Started;
    std::string step, test, value;
    int placement = 0; // index
    std::optional<Reading> reading;
    std::vector<std::string> boxes;
    bool reseated = false, reported = false, never = false, wireLeftOn = false;
    int target = 0;
    // what the gate needs to know of the step, kept here so that its fold needs no content
    std::optional<StepRequest> request; // Shown, Answered, Read
    std::string outcome;                // Answered, Read: part good failed
    std::optional<VetoReason> veto;     // Answered, Read, Amended
    std::optional<Snapshot> snapshot;   // Started
    std::optional<Meter> meter;       // MeterChanged
};

std::string_view word(Event::What what);

// The events that still count as said: undone ones left out, amended ones with their new value. What was done at the
// machine is never undone: the gate folds over all events.
std::vector<Event> effective(const std::vector<Event> &events);
// The last event a person can take back: an answer, a reading, a skip, a choice, not yet undone. 0 if there is none.
int lastUndoable(const std::vector<Event> &events);

} // namespace core
