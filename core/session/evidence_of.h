#pragma once
// From the facts of a job to what the belief and the verdict read.
#include "core/belief/evidence.h"
#include "core/belief/suspects.h"
#include "core/session/facts.h"
#include "core/verdict/findings.h"

namespace core {

// Suspects an id stands for: "dryer_element" all its modes, "dryer_element.open" the one, "vent_blocked" the condition.
std::vector<int> suspectsNamed(const Suspects &suspects, std::string_view id);

// What an answer of a step of the tree, or of a look "component.test", speaks for. Empty: it clears.
std::vector<int> speaksFor(const Machine &machine, const Suspects &suspects, std::string_view stepOrTest, std::string_view answer);

// All evidence in order of time. Reported values are none.
std::vector<Evidence> evidenceOf(const Facts &facts, const Suspects &suspects);

// The entry that an answer to a step of the tree or to a look would make: for "what if".
std::optional<Answered> answeredOf(const Facts &facts, const Suspects &suspects, std::string_view stepOrTest);

// Minutes of a test or step for this person now: its own, and those of the places still closed on the way to it.
double minutesOf(const Facts &facts, const std::set<std::string> &openPlaces, std::string_view stepOrTest);
// Where a test or step is done: place ids, outermost first. Empty: nothing is opened.
std::vector<std::string> placesOf(const Machine &machine, std::string_view stepOrTest);

std::vector<Finding> findingsOf(const Facts &facts, const Abilities &abilities, const Suspects &suspects,
                                const std::set<std::string> &openPlaces);

} // namespace core
