#pragma once
// What an author did wrong that no single file shows: every tree walked to its ends.
#include "core/diag/diagnostic.h"
#include "core/session/session.h"

namespace core {

// All of the below, sorted by place. Trees and cases that have faults of their own are passed over.
std::vector<Diagnostic> checkContent(const Content &content);

// Every combination of answers to `asks` that the appliance allows.
std::vector<Answers> combinationsOf(const Appliance &appliance);

// Steps that no combination reaches, walks that come back to where they were, branches that lead nowhere.
std::vector<Diagnostic> checkSteps(const Library &library, const Tree &tree);

// Each suspect, on each machine it can be on, gives the readings its kind's bands say; the tree has to end where that
// suspect is claimed, fixed, called for, or found on the way.
std::vector<Diagnostic> checkClaims(const Library &library, const Tree &tree);

// Plays a worked case through a session, its safety screens confirmed, its readings told or healthy.
struct Played
{
    std::string kind;
    std::vector<std::string> parts, conditions;
    std::string stuck; // why it came to no verdict
    int readings = 0;
};
Played play(const Content &content, const WorkedCase &workedCase);
std::vector<Diagnostic> checkCases(const Content &content);

} // namespace core
