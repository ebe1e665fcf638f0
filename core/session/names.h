#pragma once
// What things are called to a person: components, terminals, wires, places, tests.
#include "core/reading/machine.h"
#include "core/session/phrases.h"

namespace core {

std::string nameOf(const Machine &machine, std::string_view componentOrCondition); // "heating element" as the kind says it
std::string titleOf(const Machine &machine, std::string_view stepOrTest);          // "Element, end to end"
// "t1" of a component, "component.t1" of a loop, "wire(...)": "one end of the heating element"
std::string terminalName(const Machine &machine, std::string_view component, std::string_view terminal, bool withOwner);
// "dryer_element.t1" for a terminal of a test of `component`, or of a loop
std::string wireId(std::string_view component, std::string_view terminal);
std::string wireName(const Machine &machine, std::string_view wire); // of such an id
std::string placeName(const Machine &machine, std::string_view place);
std::string coverName(const Machine &machine, std::string_view place); // "rear panel"
std::string suspectName(const Machine &machine, std::string_view suspect); // "heating element: the coil is broken"

// The sentence of a test: its own `say`, or one made of what is pulled and where the probes go.
std::string sentenceFor(const Machine &machine, const Library::Found &found, std::size_t placement, const Phrases &phrases);

} // namespace core
