#pragma once
// What follows from the facts of a job: belief, ruling, and which tests could still change something.
#include "core/belief/belief.h"
#include "core/session/evidence_of.h"
#include "core/verdict/verdict.h"

namespace core {

struct Useful // a test or look this person may still do
{
    std::string id;       // "component.test", a loop, or a step of the tree
    double gain = 0;      // posterior mass that would show another reading than the likeliest, and still explains the complaint
    double minutes = 0;
    bool energized = false;
    bool refused = false; // skipped or declined before
};

struct Deduction
{
    std::shared_ptr<Dictionary> dictionary; // of this machine, meter and tree; nullptr for a job without a tree
    Belief belief;
    Chances chances;
    std::vector<Finding> findings;
    Ruling ruling;
    std::vector<Useful> useful; // best first: dead before energized, then gain per minute
};

// The dictionary of `before` serves again while the machine is the same.
// Expected doubt it takes away, in doublings, below which a test is not worth a line. Judgement.
inline constexpr double kWorthOffering = .01;

// The components whose replacement the ruling asks for.
std::vector<std::string> replacedBy(const Deduction &deduction);

Deduction deduce(const Facts &facts, const Abilities &abilities, const std::set<std::string> &openPlaces, const Deduction *before,
                 const Facts *factsBefore);

// A test is worth its minutes while gain x this >= minutes: what a person would spend to remove a doubt. Judgement.
inline constexpr double kMinutesPerDoubt = 60;

} // namespace core
