#pragma once
// Where the tree stands: follows the branches as far as what is known answers them.
#include "core/session/facts.h"

namespace core {

// Moves facts.cursor on over every step that is answered, not on this machine, or cannot be done.
void settle(Facts &facts, const Abilities &abilities);

// Every ask of the appliance has its answer.
bool asksAnswered(const Facts &facts);

// Whether a look or do of the tree can be done by this person in this job.
bool canDoStep(const Facts &facts, const Abilities &abilities, const Step &step);

} // namespace core
