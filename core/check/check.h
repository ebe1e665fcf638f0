#pragma once
// What an author did wrong that no single file shows: every tree walked to its ends.
#include "core/diag/diagnostic.h"
#include "core/session/session.h"

#include <array>
#include <functional>

namespace core {

// Whether a check is about this file.
using IsNamed = std::function<bool(const std::string &file)>;

// All of the below, sorted by place. Trees and cases that have faults of their own are passed over. With `isNamed` only
// what stands in those files and what depends on it: trees of a named appliance, of an appliance with a named kind, and
// the cases of a tree that is walked.
std::vector<Diagnostic> checkContent(const Content &content, const IsNamed &isNamed = {});

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
std::vector<Diagnostic> checkCase(const Content &content, const WorkedCase &workedCase); // one that ends otherwise than it says

// Who may be called, and what a hazard may be: closed lists, for a headline repeats the one and a sign hangs on the other.
inline constexpr std::array<std::string_view, 8> kTrades{
    "electrician", "gas technician", "refrigerant technician", "microwave technician", "appliance technician", "plumber",
    "utility",     "fire service"};
inline constexpr std::array<std::string_view, 10> kHazards{"hot_surface", "very_hot",     "sharp_edge",    "moving_belt",
                                                           "heavy",       "gloves",       "second_supply", "gas",
                                                           "microwave",   "sealed_system"};

// Shares over 100, limits in another unit than their tests read, an unknown trade.
std::vector<Diagnostic> checkKind(const Kind &kind);
std::vector<Diagnostic> checkHazards(const Appliance &appliance);
std::vector<Diagnostic> checkTrades(const Tree &tree);

} // namespace core
