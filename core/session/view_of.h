#pragma once
// From a session to what is shown of it. Pure.
#include "core/session/session.h"
#include "core/session/view.h"

namespace core {

StateView viewOf(const Session &session);

// Parts of it, each in a file of its own.
StepView stepView(const Session &session);
std::vector<ComponentView> componentViews(const Session &session);
std::vector<SuspectView> suspectViews(const Session &session, const std::vector<ComponentView> &components);
VerdictView verdictView(const Session &session, const std::vector<ComponentView> &components);
std::vector<WayView> wayViews(const Session &session);
std::vector<Offer> offersOf(const Session &session, bool atTheEnd);
std::vector<Named> putBackNames(const Session &session, const std::vector<Box> &boxes);

// Readings of a test as said back, in order.
std::vector<std::string> saidReadings(const Facts &facts, std::string_view test);
// "9.4 to 12.3 ohm", "OL", "at most 0.5 ohm"
std::string goodInWords(const Limits &limits);
// What the readings of each test are to the likeliest suspect, in words, strongest first: behind "why?".
std::vector<std::string> whyInWords(const Session &session, std::string_view component);

} // namespace core
