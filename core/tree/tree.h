#pragma once
// A tree: one complaint of one appliance. Immutable once loaded.
#include "core/tree/appliance.h"

namespace core {

struct Then // what follows an answer or a reading
{
    enum class What { Go, Claim, Fix, Call, Stop, Found };
    What what = What::Go;
    std::string step;    // Go, Found: the next step
    std::string suspect; // Claim: component or component.mode; Fix, Found: condition or component.mode; Call: `for`
    std::string trade;   // Call
    std::string because; // Call, Stop
    Place place;
};

struct Step
{
    enum class What { Ask, Look, Do, Test };
    std::string id;
    What what = What::Ask;
    std::string text; // Ask, Look, Do
    std::string test; // "component.test" or a loop
    std::string why;
    ApplianceState appliance = ApplianceState::Unsaid;
    std::string at, touches;
    std::vector<std::string> changes; // suspects or components that a `do` changes
    std::vector<std::string> unsure;
    std::map<std::string, std::string> danger; // answer -> of kDangers
    std::map<std::string, std::vector<std::string>> shows; // answer -> suspects it speaks for, instead of its `then`
    double sensitivity = .85, falseAlarm = .06;
    double minutes = 0; // filled in by the loader
    Only only;
    std::string otherwise;
    std::vector<std::pair<std::string, Then>> then; // in the order of the file; answers, reading names, `else`, `not_done`
    Place place;

    const Then *thenFor(std::string_view reading) const; // the branch, or `else`, or nullptr
    std::vector<std::string> answers() const; // Ask, Look, Do: the branches apart from else and not_done
};

struct Tree
{
    std::string id;        // "dryer_elec/no_heat"
    std::string appliance;
    std::string complaint; // "The drum turns but the air stays cold"
    std::string say;       // one sentence the counter reads aloud
    std::vector<std::string> alsoCalled; // other words a caller may use, for finding it
    std::string during;    // `seen`: position
    std::map<std::string, std::string> seen; // rung -> runs | weak | nothing | always
    std::vector<std::pair<std::string, double>> weights; // component or condition -> weight
    std::vector<Step> steps; // the first is where it begins
    std::string after;     // how the repair is proven
    Place place;

    const Step *step(std::string_view id) const;
    double weightOf(std::string_view id) const;
};

struct WorkedCase // cases.yaml: a hidden fault, the answers it gives, the verdict expected
{
    std::string id, tree, story;
    Answers asks;
    std::vector<std::string> truth;            // suspects
    std::map<std::string, std::string> answers; // step or test -> answer or reading ("10.8 ohm", "OL; OL")
    std::string kind;                          // replace | fix | call | not_proven
    std::vector<std::string> parts, conditions;
    bool energized = true;
    Place place;
};

} // namespace core
