#pragma once
// What a person or a program says to a session. One message, one command.
#include "core/reading/meter.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace core {

struct Command
{
    enum class What {
        State, Reading, Answer, Confirm, Acknowledge, Decline, Detour, Choose, Skip, Amend, Undo, Stop, Park, Outcome, Sheet, MeterChanged, Prove, Energized,
    };
    What what = What::State;
    std::string value;                 // reading as typed, answer, outcome, sheet value
    std::string test;                  // another test than the one shown
    std::string step;                  // a hold that must still be the one shown
    std::string why;                   // Skip, Stop
    std::string way;                   // Confirm of S9, S11: control plug breaker connector; Detour: which
    std::optional<std::size_t> placement; // from 1
    std::optional<std::vector<std::string>> boxes; // nullopt: all of them
    std::map<std::string, std::string> with; // temperatures as typed
    bool reseated = false, reported = false, never = false, wireLeftOn = false;
    int event = 0;                     // Amend
    double afterS = 0;                 // told clock
    std::string who;
    std::optional<Meter> meter;
};

// Why nothing was taken. The gate's codes are in gate/refusal.h, those of readings in reading/understand.h; the session's
// own: bad_message not_an_answer unknown_test unknown_event nothing_to_undo with_missing with_outside cannot_amend
// not_possible unknown_tree faulty_tree.
struct Denial
{
    std::string code, text;
    std::vector<std::string> suggestions; // of a reading that is asked back
};

} // namespace core
