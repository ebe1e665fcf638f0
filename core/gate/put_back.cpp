// What may be open or hanging on the machine, and what has to be back before power returns.
#include "core/gate/inside.h"

#include <algorithm>

namespace core {
namespace {

bool contains(const std::vector<std::string> &list, const std::string &name)
{
    return std::ranges::find(list, name) != list.end();
}

bool coversDone(const Inside &inside, const StepRequest *live)
{
    if (inside.covers == Covers::Closed)
        return true;
    if (inside.covers == Covers::Unknown || !inside.coversKnown || !live || !live->coverOff)
        return false;
    return std::ranges::all_of(inside.opened, [&](const std::string &place) { return place == live->place; });
}

bool wiresDone(const Inside &inside, const StepRequest *live)
{
    if (!inside.wiresKnown)
        return false;
    return std::ranges::all_of(inside.pulled, [&](const std::string &wire) { return live && contains(live->pulls, wire); });
}

bool meterDone(const Inside &inside, const StepRequest *live)
{
    const bool forThis = inside.clips == Clips::Live && live && inside.clipsFor && sameStep(*inside.clipsFor, *live);
    return inside.clips == Clips::None || forThis;
}

} // namespace

std::string placedKey(const StepRequest &request)
{
    return request.step + '\n' + request.test + '\n' + request.placement;
}

void reachIn(Inside &inside, const StepRequest &request, Clips clips)
{
    if (request.coverOff) {
        inside.covers = Covers::Open;
        inside.opened.insert(request.place);
    }
    inside.pulled.insert(request.pulls.begin(), request.pulls.end());
    inside.clips = clips;
    inside.clipsFor.reset();
    if (clips == Clips::Live)
        inside.clipsFor = request;
    inside.untouched = false;
}

bool closedUp(const Inside &inside, const Rules &rules)
{
    return (coversDone(inside, nullptr) || !rules.coversBack) && (wiresDone(inside, nullptr) || !rules.wiresBack) &&
           (meterDone(inside, nullptr) || !rules.meterOff);
}

bool closedExceptFor(const Inside &inside, const StepRequest &request, const Rules &rules)
{
    return (coversDone(inside, &request) || !rules.coversBack) && (wiresDone(inside, &request) || !rules.wiresBack) &&
           (meterDone(inside, &request) || !rules.meterOff);
}

PutBack putBackExceptFor(const GateState &state, const StepRequest *live)
{
    const Inside &inside = state.inside;
    PutBack back;
    for (const std::string &wire : inside.pulled)
        if (!live || !contains(live->pulls, wire))
            back.wires.push_back(wire);
    for (const std::string &place : inside.opened)
        if (inside.covers != Covers::Closed && !(live && live->coverOff && place == live->place))
            back.covers.push_back(place);
    back.everyWire = !inside.wiresKnown;
    back.everyCover = inside.covers != Covers::Closed && !inside.coversKnown;
    back.meter = !meterDone(inside, live);
    return back;
}

PutBack putBackList(const GateState &state)
{
    return putBackExceptFor(state, nullptr);
}

std::vector<std::string> pairsOf(const std::vector<std::string> &conductors)
{
    std::vector<std::string> pairs;
    for (std::size_t i = 0; i < conductors.size(); ++i)
        for (std::size_t j = i + 1; j < conductors.size(); ++j)
            pairs.push_back(conductors[i] + " to " + conductors[j]);
    return pairs;
}

} // namespace core
