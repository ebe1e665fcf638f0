#pragma once
// Which tests could still change what is believed, and what they cost.
#include "core/session/deduction.h"

namespace core {

// Every test of the machine that this person can do and that is not done; `gain` of each.
std::vector<Useful> usefulTests(const Facts &facts, const Abilities &abilities, const std::set<std::string> &openPlaces, const Deduction &deduction);

} // namespace core
