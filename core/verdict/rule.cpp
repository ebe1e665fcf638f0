#include "core/verdict/verdict.h"

#include <algorithm>

namespace core {
namespace {

using Findings = std::vector<Finding>;

// One thing to be judged: a component or condition with its likeliest suspect.
struct Case
{
    std::string id;      // component, or condition without its mode
    std::string suspect; // likeliest
    std::string mode;    // "" = it has none
    double chance = 0;   // of the whole: every fault of it
    const Kind *kind = nullptr;
    Cure cure = Cure::Replace;
    std::string trade;
};

std::string modeOf(const std::string &suspect)
{
    const auto dot = suspect.find('.');
    return dot == std::string::npos ? std::string() : suspect.substr(dot + 1);
}

std::string ownerOf(const std::string &suspect)
{
    return suspect.substr(0, suspect.find('.'));
}

std::vector<const Finding *> findingsOf(const Findings &all, const std::string &component, std::string_view mode)
{
    std::vector<const Finding *> own;
    for (const Finding &f : all)
        if (f.component == component && (mode.empty() || shows(f, mode)))
            own.push_back(&f);
    return own;
}

void addDue(Ruling &ruling, Due::Why why, const std::string &component, std::vector<const Finding *> tests)
{
    std::ranges::stable_sort(tests, [](const Finding *a, const Finding *b) {
        return std::tuple(a->energized, a->minutes, a->test) < std::tuple(b->energized, b->minutes, b->test);
    });
    Due due{why, component, {}};
    for (const Finding *f : tests)
        due.tests.push_back(f->test);
    ruling.due.push_back(std::move(due));
}

std::vector<const Finding *> open(const std::vector<const Finding *> &tests)
{
    std::vector<const Finding *> left;
    for (const Finding *f : tests)
        if (!f->done && f->possible && !f->refused)
            left.push_back(f);
    return left;
}

struct Evidence
{
    int out = 0, yes = 0, no = 0;
    bool reading = false;
    bool energizedOnly = true;
    std::vector<const Finding *> failing;
};

Evidence weigh(const std::vector<const Finding *> &own)
{
    Evidence e;
    for (const Finding *f : own) {
        if (f->byEye) {
            e.yes += f->out;
            e.no += f->good;
            if (fails(*f))
                e.failing.push_back(f);
        } else if (fails(*f)) {
            e.reading = true;
            e.out += f->out;
            e.energizedOnly = e.energizedOnly && f->energized;
            e.failing.push_back(f);
        }
    }
    return e;
}

bool meterCanTell(const std::vector<const Finding *> &own)
{
    return std::ranges::any_of(own, [](const Finding *f) { return !f->byEye; });
}

// Looks at what may stand behind a protector. True when every cause is closed; adds what is still due.
bool behindClosed(const Machine &machine, const Chances &chances, const Findings &all, const Case &c, Ruling &ruling, Proven &proven)
{
    bool closed = true;
    for (const auto &[cause, chance] : c.kind->lookBehind) {
        const std::string owner = ownerOf(cause);
        if (!isOn(machine, cause))
            continue;
        const auto tests = findingsOf(all, owner, modeOf(cause));
        const bool answered = std::ranges::any_of(tests, [](const Finding *f) { return f->done; });
        const double likely = chances.of(cause);
        const double theta = machine.library->kindOf(*machine.appliance, owner) != nullptr &&
                                     buysNothing(cureNamed(machine.library->kindOf(*machine.appliance, owner)->cureOf(modeOf(cause))).value_or(Cure::Replace))
                                 ? kToFix
                                 : kToBuy;
        if (likely >= theta)
            proven.behind.push_back(cause);
        if (answered && (likely <= .05 || likely >= theta))
            continue;
        const auto left = open(tests);
        if (!left.empty()) {
            addDue(ruling, Due::Why::Behind, c.id, left);
            closed = false;
        } else if (!answered) {
            proven.causeNotFound = true;
        }
    }
    return closed;
}

bool needsMet(const Machine &machine, const Findings &all, const Case &c, Ruling &ruling)
{
    bool met = true;
    for (const std::string &need : c.kind->needsFor(c.mode)) {
        const std::string id = need.find('.') == std::string::npos ? c.id + "." + need : need;
        if (!isOn(machine, ownerOf(id)))
            continue;
        const auto at = std::ranges::find(all, id, &Finding::test);
        if (at == all.end() || at->done)
            continue;
        met = false;
        if (at->possible && !at->refused)
            addDue(ruling, Due::Why::Need, c.id, {&*at});
        else
            ruling.refused.push_back({c.id, id});
    }
    return met;
}

void proveByMeasuring(const Machine &machine, const Chances &chances, const Findings &all, const Case &c, Ruling &ruling)
{
    const auto own = findingsOf(all, c.id, c.mode);
    const Evidence e = weigh(own);
    const bool eyeOnly = !meterCanTell(own);
    const bool failing = eyeOnly ? e.yes >= 1 && e.yes >= e.no : e.reading;
    if (!failing) {
        const auto left = open(own);
        std::vector<const Finding *> direct;
        for (const Finding *f : left)
            if (eyeOnly || !f->byEye)
                direct.push_back(f);
        if (!direct.empty())
            addDue(ruling, Due::Why::Proof, c.id, direct);
        else
            for (const Finding *f : own)
                if (f->refused && !f->done)
                    ruling.refused.push_back({c.id, f->test});
        return;
    }
    const bool confirmed = eyeOnly ? e.yes >= 2 : e.out >= 2 || (e.out == 1 && e.yes >= 1);
    if (!confirmed) {
        std::vector<const Finding *> again;
        for (const Finding *f : e.failing)
            if (f->possible && !f->refused)
                again.push_back(f);
        if (!again.empty())
            addDue(ruling, Due::Why::Confirm, c.id, again);
    }
    Proven proven{c.id, c.suspect, c.cure, c.trade, eyeOnly ? ProvenBy::Look : c.kind->byElimination && e.energizedOnly ? ProvenBy::Elimination : ProvenBy::Reading, true, false, {}, {}};
    const bool needs = needsMet(machine, all, c, ruling);
    const bool closed = behindClosed(machine, chances, all, c, ruling, proven);
    if (!confirmed || !needs || !closed)
        return;
    if (c.chance < kToBuy) {
        std::vector<const Finding *> again;
        for (const Finding *f : e.failing)
            if (f->possible && f->out + f->good < 4 && !f->energized)
                again.push_back(f);
        if (!again.empty())
            addDue(ruling, Due::Why::Confirm, c.id, again);
        return;
    }
    for (const Finding *f : e.failing)
        proven.by.push_back(f->test);
    proven.listed = machine.tree == nullptr || machine.tree->weightOf(c.id) > 0 || machine.tree->weightOf(c.suspect) > 0;
    ruling.proven.push_back(std::move(proven));
}

void proveWithoutBuying(const Machine &machine, const Findings &all, const Case &c, Ruling &ruling)
{
    const auto own = findingsOf(all, c.id, c.mode);
    const Evidence e = weigh(own);
    const bool call = c.cure == Cure::Call || !c.trade.empty();
    const bool worked = std::ranges::any_of(own, [](const Finding *f) { return f->tried && f->out > 0; });
    const bool enough = worked || e.yes > e.no || (e.reading && (call || e.out >= 2));
    if (!enough || c.chance < (call ? kToCall : kToFix)) {
        if (e.reading && !enough)
            addDue(ruling, Due::Why::Confirm, c.id, e.failing);
        else if (const auto left = open(own); !left.empty())
            addDue(ruling, Due::Why::Proof, c.id, left);
        return;
    }
    Proven proven{c.id, c.suspect, c.cure, c.trade, e.reading ? ProvenBy::Reading : ProvenBy::Look, true, false, {}, {}};
    for (const Finding *f : e.failing)
        proven.by.push_back(f->test);
    proven.listed = machine.tree == nullptr || machine.tree->weightOf(c.id) > 0 || machine.tree->weightOf(c.suspect) > 0;
    ruling.proven.push_back(std::move(proven));
}

// Every component and condition that is likely enough, with its likeliest suspect.
std::vector<Case> casesOf(const Machine &machine, const Chances &chances)
{
    std::map<std::string, Case> cases;
    for (const auto &[suspect, chance] : chances.suspect) {
        Case &c = cases[ownerOf(suspect)];
        if (c.id.empty() || chance > chances.of(c.suspect)) {
            c.id = ownerOf(suspect);
            c.suspect = suspect;
        }
    }
    std::vector<Case> likely;
    for (auto &[id, c] : cases) {
        c.chance = chances.component.contains(id) ? chances.component.find(id)->second : chances.of(c.suspect);
        c.kind = machine.library->kindOf(*machine.appliance, id);
        if (c.kind == nullptr || c.chance < kDueFrom)
            continue;
        c.mode = modeOf(c.suspect);
        c.cure = cureNamed(c.kind->cureOf(c.mode)).value_or(Cure::Replace);
        c.trade = c.cure == Cure::Call || c.cure == Cure::Replace ? (c.cure == Cure::Call ? c.kind->call : c.kind->fittedBy) : std::string();
        likely.push_back(c);
    }
    std::ranges::stable_sort(likely, [](const Case &a, const Case &b) { return a.chance > b.chance; });
    return likely;
}

} // namespace

Ruling rule(const Machine &machine, const Chances &chances, const std::vector<Finding> &findings)
{
    Ruling ruling;
    for (const Case &c : casesOf(machine, chances)) {
        if (c.cure == Cure::Replace)
            proveByMeasuring(machine, chances, findings, c, ruling);
        else
            proveWithoutBuying(machine, findings, c, ruling);
    }
    return ruling;
}

} // namespace core
