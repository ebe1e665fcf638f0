#pragma once
// Several parts and the wires between them as one network.
#include "core/belief/ladder.h"
#include "core/belief/part_network.h"

#include <set>

namespace core {

// A fault of this machine: which component in which mode, or which wire of the ladder.
struct Faulty
{
    std::string component;
    const FailureMode *mode = nullptr;
    Cell cell;
};

struct Excerpt // what of the machine is in the network
{
    const Machine *machine = nullptr;
    std::set<std::string, std::less<>> components;
    const Test *test = nullptr;       // position and what is held by hand
    bool ownKind = false;             // contacts as the kind's own test holds them, not as the appliance's position has them
    bool pulled = true;               // the wires the test asks for are off
    std::map<std::string, Amount> with;
    std::vector<Wire> wires;          // of the whole ladder and the supply's lugs
    std::map<std::string, std::vector<Branch>, std::less<>> healthy; // of components without a fault; see keepHealthy()
};

// Works the healthy branches of every component out once, for the many networks that differ in a fault or two.
void keepHealthy(Excerpt &excerpt);

// Components on the rungs of this machine, with the cord that feeds them.
std::set<std::string, std::less<>> componentsOnLadder(const Machine &machine, const std::vector<Wire> &wires);
std::vector<Branch> networkOf(const Excerpt &chosen, const std::vector<Faulty> &faults);
// The node a probe touches: "part.t1" the tab, "wire(part.t1)" the end of the wire pulled from it.
std::string nodeOf(std::string_view probe, std::string_view component, const Excerpt &chosen);

} // namespace core
