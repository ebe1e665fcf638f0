#pragma once
// Small moves of the state that fold, expiry and screens share.
#include "core/gate/gate.h"

namespace core {

std::string placedKey(const StepRequest &request); // step, test and placement as one text
double secondsSince(Instant then, Instant now);    // by the clock that ran less: waits end late rather than early
double longestSince(Instant then, Instant now);    // by the clock that ran more: what was granted ends early

// With what time alone took away taken away.
GateState asOf(GateState state, Instant now, const Rules &rules);
// The same to look at, copied only if time took something.
class Present
{
public:
    Present(const GateState &state, Instant now, const Rules &rules);
    Present(const Present &) = delete;
    Present &operator=(const Present &) = delete;
    const GateState &state() const { return m_state; }

private:
    std::optional<GateState> m_changed;
    const GateState &m_state;
};
// Nobody knows any more: on counts as on, everything else as unknown.
void goAway(GateState &state, const Rules &rules);
// The acknowledgement and a proof under way are gone; what was running counts as on.
void spend(GateState &state);
// Covers, wires and clips as they are from the moment a dead or live step, or its hold point, is on the screen.
void reachIn(Inside &inside, const StepRequest &request, Clips clips);

bool closedUp(const Inside &inside, const Rules &rules);
// All back but the one cover and the wires this very step needs open.
bool closedExceptFor(const Inside &inside, const StepRequest &request, const Rules &rules);
PutBack putBackExceptFor(const GateState &state, const StepRequest *live);
std::vector<std::string> pairsOf(const std::vector<std::string> &conductors); // each to each, "L1 to L2"

// The screen filled in: form, boxes, ways, wait, phase, pair, words.
Screening inserted(Screen screen, const GateState &state, const StepRequest &wanted, Instant now);

} // namespace core
