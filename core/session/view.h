#pragma once
// What every face shows: the window, the terminal, the JSON lines. Computed from the session's state; holds no logic.
#include "core/gate/power.h"
#include "core/reading/limits.h"
#include "core/session/phrases.h"
#include "core/session/event.h"
#include "core/verdict/verdict.h"

namespace core {

struct Option // an answer that may be given
{
    std::string value, text;
    std::vector<std::string> pointsTo, clears; // suspects it would make likelier, unlikelier, by 5 dB or more
};

struct Named // a box to tick, a way on, a wire to put back: an id and its words
{
    std::string id, text;
    friend bool operator==(const Named &, const Named &) = default;
};

struct Demanded // a figure that must be given with a reading
{
    std::string id, text;
    std::optional<Span> limits;
};

struct Picture // what a drawing of this step shows
{
    std::string component, kind;           // whose drawing
    std::string red, black;                // terminals, of `component` in a part's own test; "component.terminal" in a loop
    std::vector<Named> pulled;             // terminals whose wires are off for this reading
    std::vector<std::string> held;         // contacts worked by hand
    std::string jaw;
    Measure measure = Measure::Look;
    std::string place;                     // where it is done; "" = nothing opened
    std::vector<std::string> path;         // components the reading goes through, in the order of the wires
};

struct StepView
{
    enum class Kind { Ask, Look, Do, Test, Isolate, ProveDead, Hold, Verdict };
    Kind kind = Kind::Ask;
    std::string id, test, standsFor;
    std::string title;   // "Element, end to end"
    std::string text;    // what to do, one sentence
    std::string why;     // why this step, from the tree or the engine
    std::string placeSay; // how to get there
    std::string caution; // lines of the appliance's own, under a safety text
    // safety screens
    std::string screen;  // "S1"
    std::string phase;   // S3
    std::string pair;    // S3
    std::vector<std::string> conditions; // which conditional lines of the text apply
    Params params;
    std::vector<Named> boxes, ways;
    // readings
    std::string unit; // ohm, V, A, uF, Hz, Cel, continuity
    std::optional<Limits> good;
    std::size_t placement = 0, placements = 1;
    std::vector<Demanded> with;
    double waitS = 0;
    bool reseat = false, near = false;
    std::vector<std::string> soFar; // readings of this placement already taken
    std::vector<Option> answers;
    Picture picture;
    double minutes = 0;
    bool mayDecline = true;
};
std::string_view word(StepView::Kind kind);

enum class Standing { Untested, Suspected, Cleared, NoConclusion, FailedOnce, Failed, Proven, Noted };
std::string_view word(Standing standing);

struct SuspectView
{
    std::string id, component;
    double probability = 0;
    Standing standing = Standing::Untested;
};

struct ComponentView
{
    std::string id, name;
    Standing standing = Standing::Untested;
    bool fromAfar = false;      // cleared by a reading over several parts: if wired so
    bool likeliest = false;
    std::vector<std::string> readings; // as said back, of its own tests
    std::string place;
    double probability = 0;
    bool condition = false;
};

struct Offer
{
    std::string test, title, why;
    double minutes = 0;
    bool energized = false;
};

struct ProofLine // one test behind a verdict
{
    std::string test, title, pulled, good, said;
    std::vector<Reading> readings;
    std::optional<Limits> limits;
    bool failed = false;
};

struct CauseLine // what was looked at behind a part
{
    std::string id, name, said;
    Standing standing = Standing::Untested;
};

struct VerdictView
{
    Verdict::Kind kind = Verdict::Kind::NotProven;
    std::string headline, sentence, call;
    std::vector<std::string> parts, conditions, lookBehind;
    std::string proof;                // reading | look | elimination
    std::vector<std::string> why;     // each reading that led here, in words
    std::vector<ProofLine> proofs;
    std::vector<CauseLine> causes;
    std::vector<Named> putBack;       // wires, meter, covers still to be ticked
    bool isTogether = false;
    std::vector<std::string> prove;   // how to prove the repair
    std::string wouldChange;
    std::string basis;
    std::vector<std::string> alsoFound, refused, notes;
    std::vector<std::string> dangers; // found on the way, a sentence each; said before anything else
};

struct WayView // one stub of the way so far
{
    int event = 0;
    std::string id, title, said;
    Standing mark = Standing::Noted;
    bool amendable = false;
    bool safety = false;
    std::int64_t wallMs = 0;
};

struct AtRisk // if the likeliest part were bought now
{
    std::string component, name, price; // "30-140 USD", judgement
    double minutes = 0;                 // of the next test
};

struct StateView
{
    std::string job, tree, appliance, applianceName, complaint;
    StepView step;
    Power power = Power::Unknown;
    std::int64_t powerSince = 0;
    std::string powerOn; // on whose word, in words
    std::vector<Named> wiresPulled, coversOpen;
    std::vector<SuspectView> suspects;     // likeliest first
    std::vector<ComponentView> components; // in the order of the appliance
    std::vector<Offer> offers;
    std::optional<AtRisk> atRisk;
    std::optional<VerdictView> verdict;
    std::vector<WayView> way;
    std::vector<std::string> vetoes;
    bool saved = true;       // false: the disk did not take the last event
    bool practice = false;
    bool energizedAllowed = false;
    bool stopped = false;
    std::optional<std::string> outcome;
};

} // namespace core
