#pragma once
// What the events of a job say, put in order: answers, readings by placement, what was not done, and where the tree
// stands. A pure fold over the effective events (event.h).
#include "core/reading/conformity.h"
#include "core/reading/machine.h"
#include "core/session/event.h"

namespace core {

struct Take // one seating of the probes: off and on again
{
    Reading reading;
    int event = 0;
    bool contrast = false; // tips together in between, back on the part named
};

struct Measured // one placement of one test, as far as it still counts
{
    std::string test;
    std::size_t placement = 0;
    std::vector<Take> takes;
    bool wireLeftOn = false;
    bool past = false; // read before something that changed it: evidence of what was, nothing to go by now
};

struct Looked // answers to a step of the tree, or to a look, hand or ear test "component.test"
{
    std::string id;
    std::vector<std::string> answers;
    std::vector<int> events;
};

struct ReportedValue // a value the person already had: kept, never proof
{
    std::string test, value;
    int event = 0;
};

struct WayStop // a step of the tree that lies behind
{
    std::string step;
    std::string result; // answer, reading name; "" = not done
};

struct Cursor
{
    std::string step;        // where the tree stands; "" = it has ended
    std::optional<Then> end; // how it ended
    std::vector<WayStop> way;
    int moves = 0;
};

struct Proving // a repair is being proven, see proving.h
{
    std::vector<std::string> toRead; // tests
    std::vector<Measured> read;      // of what was put in; no evidence of the fault
};

struct Facts
{
    std::optional<std::string> atStart; // answer to S0
    Machine machine;
    std::vector<Measured> measured;
    std::vector<Looked> looked;
    std::vector<ReportedValue> reported;
    std::map<std::string, std::string> notDone; // step or test -> why
    std::set<std::string> found;                // causes the tree says were found
    std::set<std::string> replaced;             // components a person says were replaced, without cure
    std::optional<std::string> chosen;          // test asked for by the person, until it is read or skipped
    std::optional<std::string> outcome;
    std::optional<Proving> proving;
    std::string running;       // step that was shown while the machine ran, not answered yet
    std::set<std::string> ran; // steps whose run is over, and that wait for what was seen
    Cursor cursor;
};

// What this person, with this meter and in this job, can do at all.
struct Abilities
{
    bool energized = false; // energized tests allowed, not declined for the job, no veto
    bool running = true;    // no veto on power
    bool dead = true;       // inside with the plug out: not refused for good
};

bool canDo(const Facts &facts, const Abilities &abilities, const Library::Found &test);

// Where a placement stands, from its seatings. A first dead reading that convicts is taken again at once; near a limit a
// better one is asked for; two that differ let a third decide, four at most.
struct PlacementState
{
    enum class Next { Unread, Reseat, Again, Settled };
    Next next = Next::Unread;
    ReadingName name = ReadingName::Unnamed;
    int out = 0, good = 0; // seatings that convict, that clear (p >= .5)
    bool jumps = false;
};
PlacementState placementState(const Facts &facts, const Library::Found &found, std::string_view test, std::size_t placement);

// What the test read before something was changed: its worst placement.
PlacementState pastState(const Facts &facts, const Library::Found &found, std::string_view test);

// The whole test: done when every placement is settled. Its name is the worst of its placements, and so are `out` and
// `good` once one reads out.
struct TestState
{
    bool begun = false, done = false;
    std::optional<std::size_t> nextPlacement;
    std::size_t worstPlacement = 0; // to be read once more, if any is
    PlacementState::Next why = PlacementState::Next::Unread;
    ReadingName name = ReadingName::Unnamed;
    int out = 0, good = 0;
    bool jumps = false;
};
TestState testState(const Facts &facts, std::string_view test);

// Whether the tests that must have read good first have done so.
bool onceGoodHolds(const Facts &facts, const Test &test, std::string_view component);
// Names as the file writes them are for a kind's own component: "ohm" of overload is "overload.ohm".
std::string qualified(std::string_view test, std::string_view component);

// The entry that still counts; nullptr if there is none.
const Measured *measuredAt(const Facts &facts, std::string_view test, std::size_t placement);
const Looked *lookedAt(const Facts &facts, std::string_view id);

// The component a suspect id belongs to: "dryer_element.open" -> "dryer_element".
std::string componentOf(std::string_view suspect);

Facts factsFrom(const std::vector<Event> &effectiveEvents, const Library &library, const Abilities &abilities);

} // namespace core
