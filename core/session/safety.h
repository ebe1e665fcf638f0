#pragma once
// The session's side of the gate: which events of a job the gate folds over, and what a wanted step asks of it.
#include "core/gate/gate.h"
#include "core/session/facts.h"
#include "core/session/phrases.h"
#include "core/session/wanted.h"
#include "core/verdict/hazard.h"

namespace core {

// What an event is to the gate; nullopt: nothing. Needs no content: events keep what the gate must know.
std::optional<GateEvent> gateEventOf(const Event &event);
GateState gateFrom(const std::vector<Event> &events); // all of them, undone ones included

// The request for a wanted step or test. `process` is of the running program.
StepRequest requestFor(const Facts &facts, const Wanted &wanted, const std::string &process, const Phrases &phrases);

// Whether a settled reading or answer means that no power may be asked for any more.
std::optional<VetoReason> vetoOf(const Facts &facts, std::string_view test, const Reading &reading, std::size_t placement);
std::optional<VetoReason> vetoNamed(std::string_view why); // gas etc. are alarms, not vetoes
std::optional<AlarmKind> alarmNamed(std::string_view why); // gas co shock smoke spark water

// Of kDangers; nullopt for any other word.
std::optional<VetoReason> vetoNamed(std::string_view danger);
// What an answer to a step of the tree or a look forbids from now on.
std::optional<VetoReason> vetoOfAnswer(const Machine &machine, std::string_view id, const std::string &answer);
// What stands against power in this job, as the verdict needs it.
std::vector<Hazard> hazardsOf(const GateState &gate);

Abilities abilitiesOf(const GateState &gate);
std::set<std::string> openPlacesOf(const GateState &gate);
MeterFit meterFitOf(const Meter &meter);

} // namespace core
