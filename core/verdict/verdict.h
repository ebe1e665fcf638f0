#pragma once
// Whether to buy, to put right, to call, or to say that nothing is proven. Each fault is judged alone; another fault is no
// rival.
#include "core/verdict/findings.h"

namespace core {

// Probability that must be reached before a part is bought, a trade is called, or a cure that buys nothing is done.
inline constexpr double kToBuy = .95, kToCall = .90, kToFix = .80;
// A part this likely is led to its proof; below it nothing is due.
inline constexpr double kDueFrom = .5;

// Posterior by id, as the verdict needs it: of components and conditions, and of their suspects.
struct Chances
{
    std::map<std::string, double, std::less<>> component; // "dryer_element", "vent_blocked", "house_supply"
    std::map<std::string, double, std::less<>> suspect;   // "dryer_element.open", "house_supply.lost_leg", "vent_blocked"
    double of(std::string_view id) const;
};

enum class Cure { Replace, Reset, Clean, Free, Reconnect, Adjust, Call };
std::optional<Cure> cureNamed(std::string_view word);
std::string_view word(Cure cure);
bool buysNothing(Cure cure); // all but Replace and Call

enum class ProvenBy { Reading, Look, Elimination };
std::string_view word(ProvenBy proof);

struct Proven
{
    std::string component, suspect; // of a condition without modes both are its id
    Cure cure = Cure::Replace;
    std::string trade;              // who must do it; "" = the owner
    ProvenBy proof = ProvenBy::Reading;
    bool listed = true;             // it explains the complaint; otherwise it was "also found"
    bool causeNotFound = false;     // a protector whose cause stayed open: expect it to open again
    std::vector<std::string> behind; // suspects found behind it
    std::vector<std::string> by;     // tests that prove it
};

struct Due // what is missing before a likely part is proven
{
    enum class Why { Proof, Confirm, Need, Behind };
    Why why = Why::Proof;
    std::string component;
    std::vector<std::string> tests; // any one of them; cheapest first
};

struct NotTaken // a test the rule needs and this person does not do
{
    std::string component, test;
};

struct Ruling
{
    std::vector<Proven> proven;
    std::vector<Due> due;
    std::vector<NotTaken> refused;
};

// The rule, for every component and condition of the machine.
//   replace P  (a) a failing reading of P itself, or, where no meter can tell, two yes answers of its own look, hand or
//                  operation test;  (b) confirmed: two readings out, or one and a yes look;  (c) the kind's buy_needs for
//                  that mode;  (d) every look_behind answered and closed, or "cause not found";  (e) P >= .95
//   fix        P >= .80 and a yes look, a try that worked, or a confirmed failing reading
//   call       P >= .90 and a failing reading or a yes look; one reading of a supply is enough
// Modes of one thing that buy nothing and go to the same trade are judged by their summed probability.
Ruling rule(const Machine &machine, const Chances &chances, const std::vector<Finding> &findings);

struct Verdict
{
    enum class Kind { Replace, Fix, Call, NotProven };
    Kind kind = Kind::NotProven;
    std::vector<Proven> items; // parts first
    std::string trade;         // Call, or who fits the part
    std::vector<std::string> hazards; // found on the way, see hazard.h
};
std::string_view word(Verdict::Kind kind);
// What the ruling amounts to: what explains the complaint first; also-found items stay in the list.
Verdict verdictOf(const Ruling &ruling);

} // namespace core
