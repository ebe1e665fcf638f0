#pragma once
// An appliance: components, places, ladder, loops, variants. Immutable once loaded.
#include "core/tree/kind.h"

#include <set>

namespace core {

using Only = std::vector<std::pair<std::string, std::vector<std::string>>>; // ask -> answers it holds for; empty: always
using Answers = std::map<std::string, std::string>;                         // ask -> answer given

bool holds(const Only &only, const Answers &answers); // an ask without an answer yet: does not hold

struct Ask
{
    std::string id, ask;
    std::vector<std::string> answers;
    std::map<std::string, std::string> says; // answer -> how it is put to a person
    Only only; // by answers to questions before it; not asked otherwise
    Place place;
};

struct ServicePlace // what is open when a probe gets there
{
    std::string id, say, after;
    std::string called; // what is put back there: "rear panel"; "" = the words of `say`
    double minutes = 0;
    bool cover = true; // false: nothing is taken off
    Place place;
};

struct Price
{
    double lo = 0, hi = 0;
    std::string currency;
};

struct Rating // of the plate: volts and watts, or a single value
{
    double volts = 0, watts = 0;
    std::optional<Amount> value;
    bool assumed = true; // until the plate was read
};

struct Component
{
    std::string id, kind, at, name;
    std::map<std::string, std::string> reach; // test -> place where it is done, if not `at`
    Only only;
    std::map<std::string, Only> skips; // test -> machines on which it says nothing of this component
    std::optional<Price> price;
    std::map<std::string, Rating> ratings; // answer of the ask that a rating goes by -> rating; key "" = always
    std::string workedBy; // its actuator, a component of its own
    Place place;
};

struct ConditionUse // where a condition acts
{
    std::string id; // "vent_blocked", "house_supply.lost_leg"
    std::string at;
    std::string loses; // rail
    std::vector<std::string> opens; // contacts "timer_contacts.heat"
    std::vector<std::string> overheats; // components
    Only only;
    Place place;
};

struct RungItem // a component's path, a rail, or a named wire point
{
    enum class What { Rail, Part, Point };
    What what = What::Part;
    std::string component, path; // Part; Rail and Point: component holds the name
    bool flipped = false; // entered at the path's second terminal
};

struct Rung
{
    std::string id;
    Only only;
    std::vector<RungItem> items;
    Place place;
};

struct Appliance
{
    std::string id, name;
    bool hardWired = false;
    std::string caution; // a sentence of the appliance's own for the safety screens ("from the tree")
    std::vector<std::string> hazards;
    std::vector<Ask> asks;
    std::vector<ServicePlace> places;
    std::vector<Component> components;
    std::map<std::string, std::map<std::string, double>> rails; // answer to `supply` -> rail -> volts; key "" = always
    std::vector<std::string> frame; // terminals joined to G
    std::vector<ConditionUse> conditions;
    std::vector<Rung> rungs;
    std::vector<std::pair<std::string, std::vector<std::string>>> closed; // position -> contacts closed in it
    std::vector<Test> loops;
    Place place;

    const Ask *nextAsk(const Answers &answers) const; // the first that is to be put and has no answer yet; nullptr: none
    const Component *component(std::string_view id) const;
    const ServicePlace *servicePlace(std::string_view id) const;
    const Test *loop(std::string_view id) const;
    const ConditionUse *condition(std::string_view id) const;
    const Ask *asked(std::string_view id) const;
};

} // namespace core
