#pragma once
// One component as branches between its terminals, healthy or in a failure mode.
#include "core/belief/network.h"
#include "core/belief/suspects.h"

namespace core {

struct PartState
{
    const Kind *kind = nullptr;
    std::string component;     // nodes are "component.terminal"
    MachineFacts facts;
    const FailureMode *mode = nullptr; // nullptr: healthy
    Cell cell;
    // path id -> whether its contact stands closed while this is read; a path that is not named follows its kind
    std::map<std::string, bool> closed;
};

// Healthy: the middle of good, with a quarter of its width as standard deviation (of a plate's rating: / 1.04, cold);
// a contact, link or wire whose good begins at 0: .16 and .10 of its limit (.08 +- .05 of 0.5 ohm); judgement. A path the
// mode does not name is healthy. A ground splits the conductor it lies along.
std::vector<Branch> branchesOf(const PartState &part);

} // namespace core
