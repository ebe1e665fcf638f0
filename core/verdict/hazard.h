#pragma once
// What was found on the way that forbids power, whether or not it explains the complaint. It is said before anything is
// bought or put right, and somebody is called for it.
#include "core/verdict/verdict.h"

namespace core {

struct Hazard
{
    std::string id;          // damaged_cord trips_again ... ; how it is said goes by this
    std::string component;   // where it was found; "" = nowhere in particular
    std::string trade;       // who looks after it
    bool isSearched = false; // a part of the machine makes it, and the dead tests find which
};

// A danger in a part that is itself proven is over with that part. With any other, what was not proven or costs nothing
// becomes a call; a part that was proven stays proven. `searchOpen`: dead tests are left that may find its part.
Verdict withHazards(Verdict verdict, std::vector<Hazard> hazards, bool searchOpen);

} // namespace core
