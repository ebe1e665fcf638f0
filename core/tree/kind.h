#pragma once
// A kind: what a component is, how it fails, how it is tested. A condition (a cause with nothing to buy) is a kind
// without terminals. Immutable once loaded. Words and keys are those of trees/README.md.
#include "core/base/amount.h"
#include "core/diag/place.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace core {

// Where a number comes from. A limit that is common practice alone convicts only far outside (reading/limits.h).
enum class Basis { CommonPractice, Plate, Sheet, Published };

// lo to hi in `unit`, or as a factor of the part's plate value or of its curve. An open end is +-infinity.
struct Span
{
    enum class Of { Itself, Rating, Curve };
    double lo = 0;
    double hi = 0;
    Unit unit = Unit::None;
    Of of = Of::Itself;
    friend bool operator==(const Span &, const Span &) = default;
};

// What a path or placement shows: a value, OL, or jumps.
struct Shown
{
    enum class What { Value, Open, Jumps };
    What what = What::Value;
    Span span; // for Value
    friend bool operator==(const Shown &, const Shown &) = default;
};

// A value that may depend on the supply's nominal voltage; key 0 holds for every supply.
template<class T>
using ByVoltage = std::map<int, T>;

struct Curve
{
    enum class Family { Ntc, Platinum, Copper };
    Family family = Family::Ntc;
    double r0 = 0; // ohm: at 25 C for an NTC, at 0 C for platinum, at 20 C for copper
    double beta = 0; // K, NTC alone
};

struct PathLimits // good, and apart from it what is surely bad; between them: no conclusion
{
    ByVoltage<Shown> good;
    ByVoltage<Span> badBelow; // the edge is span.lo
    ByVoltage<Span> badAbove; // the edge is span.hi
    Basis basis = Basis::CommonPractice;
    std::string source; // for Published: the source with its clause
};

struct Path
{
    enum class Normally { Always, Closed, Open }; // Always: no contact
    std::string id, from, to;
    std::string along; // a ground path: the path whose conductor may touch
    PathLimits limits;
    std::optional<Curve> curve;
    std::optional<Span> working; // value when running, used for energized readings
    double settlesS = 0;
    std::optional<Span> closesBelow, opensAbove; // temperatures of a thermostat
    Normally normally = Normally::Always;
    Place place;
};

// What was seen that forbids power on this machine until it was looked after: words of a file. "" none.
inline constexpr std::string_view kDangers[] = {"damaged_cord", "trips_again", "hot_when_off", "water", "smoke", "sparks", "shock", "door_latch"};

struct FailureMode
{
    std::string id; // open, short, ground, ... or a combined mode of the kind's own (open_ground)
    double share = 0; // of this kind's faults; judgement
    std::map<std::string, Shown> paths; // what a path becomes
    std::string cure; // "" = the kind's
    std::string say;  // one plain sentence: what is wrong with the part
    std::string danger; // of kDangers: an answer that speaks for this mode alone forbids power
    Place place;
};

enum class Measure {
    Resistance, Continuity, Capacitance, Diode, VoltageAc, VoltageDc, VoltageLowImpedance, CurrentClamp, Frequency, Duty,
    Temperature, OpensAt, Look, Hand, Ear,
};

enum class ApplianceState { Unsaid, AsIs, NoPower, InUse };

// red probe, black probe: terminal names "t1", "main.t1", "wire(t1)"; in a loop "component.t1".
struct Probes
{
    std::string red, black;
    friend bool operator==(const Probes &, const Probes &) = default;
};

struct Condition // a figure that must be given with a reading, and what it must lie in
{
    std::string id; // part_temperature, printed_temperature, ambient ...
    std::optional<Span> limits;
};

// A procedure. `placements` has one entry for `probes`, several for `each`, one without names for a clamp (`jaw`) or
// for what is looked at.
struct Test
{
    std::string id;   // within its kind: "ohm"; of a loop: its name
    std::string name; // "Element, end to end"
    std::string say;  // what to do, one sentence; "" = the program writes it from probes and pulls
    Measure measure = Measure::Resistance;
    std::vector<Probes> placements;
    std::string jaw; // terminal whose wire is in the clamp
    std::vector<std::string> pull; // terminals whose wires come off
    std::vector<std::string> hold; // contacts worked by hand
    std::string position; // a position of the appliance; "" = its first
    std::string run; // what the machine must be doing
    double waitS = 0, withinS = 0;
    std::vector<Condition> with;
    std::vector<std::string> onceGood; // tests "component.test" that must have read good before this one convicts
    std::vector<std::string> convicts; // modes; empty: all that it shows
    std::optional<PathLimits> limits; // overrides the path's
    std::string ask; // look, hand, ear: the question
    std::vector<std::string> answers; // in the order of the file
    std::map<std::string, std::vector<std::string>> proves; // answer -> modes it speaks for; none: it clears
    std::vector<std::string> unsure; // answers that say nothing
    double sensitivity = .85, falseAlarm = .06;
    double minutes = 0; // filled in by the loader where the file is silent
    ApplianceState appliance = ApplianceState::Unsaid;
    std::string touches; // breaker | plug | outlet | ""
    bool frameCheck = false;   // a loop that is read before power comes on with a hand near the frame
    bool storedCharge = false; // a capacitor in reach: class DS
    bool hot = false; // the part is hot after use: S11 first
    std::string standsFor; // a loop that stands for "component.test"
    std::vector<std::string> at; // loops: every place that must be open
    std::vector<std::string> covers; // loops: components whose opens a good reading clears
    std::string why;
    std::vector<std::pair<std::string, std::vector<std::string>>> only; // loops: ask -> answers
    Place place;

    bool byEye() const { return measure == Measure::Look || measure == Measure::Hand || measure == Measure::Ear; }
    bool isLoop() const { return !at.empty(); }
};

struct Kind
{
    std::string id, name, does;
    bool isPart = true; // false: a condition
    std::vector<std::string> terminals;
    std::map<std::string, std::string> called; // terminal -> what a person calls it
    std::vector<Path> paths;
    std::vector<FailureMode> fails; // of a condition: the ways it can be, "" where it has but one
    std::vector<Test> tests;
    std::map<std::string, std::vector<std::string>> buyNeeds; // mode -> tests; key "else" for the rest
    std::map<std::string, double> lookBehind; // suspect or condition -> chance it stands behind this protector
    std::string cure = "replace"; // replace reset clean free reconnect adjust call
    std::string cureSay; // conditions: what to do, one sentence
    std::string call; // licensed trade who must do it; "" = nobody
    std::string fittedBy; // "" = the owner
    bool byElimination = false; // a board: no meter reading of its own convicts it
    double beside = 0; // engine's beta: chance that it is there beside anything
    std::string note; // what to know when buying or fitting it
    Place place;

    const Path *path(std::string_view name) const;
    const Test *test(std::string_view name) const;
    const FailureMode *mode(std::string_view name) const;
    // the path whose two terminals these are, either way round; nullptr if none
    const Path *pathBetween(std::string_view a, std::string_view b) const;
    // mode's cure, or the kind's
    std::string_view cureOf(std::string_view modeId) const;
    const std::vector<std::string> &needsFor(std::string_view modeId) const;
};

std::string_view word(Measure measure);
std::string_view word(Basis basis);
// current or voltage: what is measured decides, and no file can lower it (gate.md 3.2)
bool isEnergized(Measure measure);
bool isDead(Measure measure); // resistance, continuity, capacitance, diode, opens_at
Unit unitOf(Measure measure);

} // namespace core
