// Standing of every component and condition, the suspects, the offers, the way so far.
#include "core/belief/why.h"
#include "core/reading/understand.h"
#include "core/session/names.h"
#include "core/session/proving.h"
#include "core/session/view_of.h"

#include <algorithm>

namespace core {
namespace {

// From here a component counts as suspected rather than untested, while nothing of its own was read. Judgement.
constexpr double kSuspectedFrom = .08;
// A test that could move less than this is no offer.
constexpr std::size_t kMostOffers = 5;

bool isProven(const Deduction &d, const std::string &id)
{
    return std::ranges::any_of(d.ruling.proven, [&](const Proven &p) { return p.component == id; });
}

Standing standingOf(const Deduction &d, const std::string &id, double chance)
{
    if (isProven(d, id))
        return Standing::Proven;
    bool done = false, failing = false, once = false, doubtful = false;
    for (const Finding &f : d.findings) {
        if (f.component != id || (!f.done && f.out == 0))
            continue;
        done = true;
        failing = failing || (fails(f) && f.out >= 2);
        once = once || (fails(f) && f.out == 1);
        doubtful = doubtful || (f.out == 0 && f.good == 0);
    }
    if (failing)
        return Standing::Failed;
    if (once)
        return Standing::FailedOnce;
    if (doubtful)
        return Standing::NoConclusion;
    if (done && chance < kDueFrom)
        return Standing::Cleared;
    return chance >= kSuspectedFrom ? Standing::Suspected : Standing::Untested;
}

bool clearedFromAfar(const Facts &facts, const std::string &component)
{
    return std::ranges::any_of(facts.machine.appliance->loops, [&](const Test &loop) {
        return std::ranges::find(loop.covers, component) != loop.covers.end() &&
               testState(facts, loop.id).name == ReadingName::Good;
    });
}

ComponentView partView(const Session &session, const std::string &id, bool condition)
{
    const Deduction &d = session.deduction();
    ComponentView v;
    v.id = id;
    v.name = nameOf(session.facts().machine, id);
    v.condition = condition;
    const auto chance = d.chances.component.find(id);
    v.probability = chance == d.chances.component.end() ? 0 : chance->second;
    v.standing = standingOf(d, id, v.probability);
    if (v.standing == Standing::Untested && clearedFromAfar(session.facts(), id)) {
        v.standing = Standing::Cleared;
        v.fromAfar = true;
    }
    if (const Kind *kind = session.facts().machine.library->kindOf(*session.facts().machine.appliance, id))
        for (const Test &test : kind->tests)
            for (std::string &said : saidReadings(session.facts(), id + "." + test.id))
                v.readings.push_back(std::move(said));
    if (const Component *c = session.facts().machine.appliance->component(id))
        v.place = c->at;
    return v;
}

Standing markOf(const Facts &facts, const Event &e)
{
    if (e.what == Event::What::Answered)
        return Standing::Noted;
    if (e.step == kProofStep)
        return e.outcome == "failed" ? Standing::Failed : Standing::Cleared;
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, e.test);
    if (found.test == nullptr)
        return Standing::Noted;
    const PlacementState state = placementState(facts, found, e.test, static_cast<std::size_t>(e.placement));
    if (fails({.test = {}, .component = {}, .modes = {}, .out = state.out, .good = state.good, .jumps = state.jumps}))
        return state.out >= 2 ? Standing::Failed : Standing::FailedOnce;
    if (state.name == ReadingName::Good || state.name == ReadingName::Tone)
        return Standing::Cleared;
    return found.kind == nullptr ? Standing::Suspected : Standing::NoConclusion;
}

bool isSafety(const Event &e)
{
    return e.what == Event::What::Confirmed || e.what == Event::What::Acknowledged || e.what == Event::What::Declined ||
           e.what == Event::What::PutBack || e.what == Event::What::Stopped || e.what == Event::What::Lapsed ||
           e.what == Event::What::Resumed || e.what == Event::What::Left || e.what == Event::What::Repaired ||
           e.what == Event::What::Energized || e.what == Event::What::NeverTakenBack;
}

std::string answerSaid(const Machine &machine, const Phrases &phrases, const Event &e)
{
    if (e.step == "S0")
        return phrases.say("s0." + e.value);
    if (e.step == kProofStep)
        return phrases.say("proof." + e.value);
    const Ask *ask = machine.appliance->asked(e.step);
    if (ask != nullptr)
        if (const auto says = ask->says.find(e.value); says != ask->says.end())
            return says->second;
    return e.value;
}

} // namespace

std::string_view word(Standing standing)
{
    switch (standing) {
    case Standing::Untested:
        return "untested";
    case Standing::Suspected:
        return "suspected";
    case Standing::Cleared:
        return "cleared";
    case Standing::NoConclusion:
        return "no conclusion";
    case Standing::FailedOnce:
        return "failed once";
    case Standing::Failed:
        return "failed its test";
    case Standing::Proven:
        return "proven";
    case Standing::Noted:
        return "noted";
    }
    return "";
}

std::vector<std::string> saidReadings(const Facts &facts, std::string_view test)
{
    std::vector<std::string> said;
    for (const Measured &m : facts.measured)
        if (m.test == test)
            for (const Take &take : m.takes)
                said.push_back(saidBack(take.reading));
    if (const Looked *looked = lookedAt(facts, test))
        for (const std::string &answer : looked->answers)
            said.push_back(answer);
    return said;
}

std::vector<ComponentView> componentViews(const Session &session)
{
    const Machine &machine = session.facts().machine;
    std::vector<ComponentView> views;
    for (const Component &c : machine.appliance->components)
        if (isOn(machine, c.id) || !holds(c.only, machine.answers))
            if (holds(c.only, machine.answers))
                views.push_back(partView(session, c.id, false));
    std::set<std::string> seen;
    if (session.deduction().dictionary)
        for (const Suspect &s : session.deduction().dictionary->suspects()) {
            const std::string owner = componentOf(s.id);
            if (machine.appliance->component(owner) == nullptr && seen.insert(owner).second)
                views.push_back(partView(session, owner, true));
        }
    const auto most = std::ranges::max_element(views, {}, &ComponentView::probability);
    const bool open = std::ranges::count_if(views, [](const ComponentView &v) { return v.probability >= kSuspectedFrom; }) > 1;
    if (most != views.end() && open && most->standing != Standing::Proven)
        most->likeliest = true;
    return views;
}

std::vector<SuspectView> suspectViews(const Session &session, const std::vector<ComponentView> &components)
{
    std::vector<SuspectView> views;
    const Deduction &d = session.deduction();
    if (!d.dictionary)
        return views;
    for (const auto &[id, chance] : d.chances.suspect) {
        const std::string owner = componentOf(id);
        const auto at = std::ranges::find(components, owner, &ComponentView::id);
        views.push_back({id, owner, chance, at == components.end() ? Standing::Untested : at->standing});
    }
    std::ranges::stable_sort(views, [](const SuspectView &a, const SuspectView &b) { return a.probability > b.probability; });
    return views;
}

std::vector<Offer> offersOf(const Session &session, bool atTheEnd)
{
    std::vector<Offer> offers;
    const Phrases &phrases = *session.content().phrases;
    for (const Useful &u : session.deduction().useful) {
        if (u.gain < kWorthOffering || (!atTheEnd && (u.refused || offers.size() >= kMostOffers)))
            continue;
        const std::string why = u.energized ? "offer.energized" : u.refused ? "offer.refused" : "offer.open";
        offers.push_back({u.id, titleOf(session.facts().machine, u.id), phrases.say(why), u.minutes, u.energized});
    }
    return offers;
}

std::vector<WayView> wayViews(const Session &session)
{
    std::vector<WayView> way;
    const Facts &facts = session.facts();
    const Phrases &phrases = *session.content().phrases;
    for (const Event &e : effective(session.events())) {
        WayView v;
        v.event = e.number;
        v.wallMs = e.at.wallMs;
        v.id = e.test.empty() ? e.step : e.test;
        if (e.what == Event::What::Answered || (e.what == Event::What::Read && e.step != "S3" && e.step != "S10")) {
            v.title = v.id == "S0"         ? phrases.say("way.start")
                      : v.id == kProofStep ? phrases.say("proof.title")
                                           : titleOf(facts.machine, v.id);
            v.said = e.reading ? saidBack(*e.reading) : answerSaid(facts.machine, phrases, e);
            v.mark = e.reported ? Standing::Noted : markOf(facts, e);
            v.amendable = e.step != "S0" && !e.reported;
        } else if (e.what == Event::What::Skipped) {
            v.title = titleOf(facts.machine, v.id);
            v.said = phrases.say("way.skipped");
        } else if (isSafety(e)) {
            v.safety = true;
            v.id = e.step;
            const std::string key = "way." + std::string(word(e.what)) + (e.step.empty() ? "" : "." + e.step) +
                                    (e.value.empty() || e.what != Event::What::Confirmed ? "" : "." + e.value);
            v.title = phrases.has(key) ? phrases.say(key) : phrases.say("way." + std::string(word(e.what)));
        } else if (e.what == Event::What::Read) {
            v.safety = true;
            v.id = e.step;
            v.title = phrases.say("way.proof");
            v.said = e.reading ? saidBack(*e.reading) : std::string();
        } else {
            continue;
        }
        way.push_back(std::move(v));
    }
    return way;
}

std::vector<std::string> whyInWords(const Session &session, std::string_view component)
{
    std::vector<std::string> lines;
    const Deduction &d = session.deduction();
    if (!d.dictionary)
        return lines;
    std::vector<int> suspects = suspectsNamed(d.dictionary->known(), component);
    for (std::size_t i = 0; i < d.dictionary->suspects().size() && suspects.empty(); ++i)
        if (componentOf(d.dictionary->suspects()[i].id) == component)
            suspects.push_back(static_cast<int>(i));
    if (suspects.empty())
        return lines;
    const std::vector<double> weight = weights(*d.dictionary, d.belief, suspects);
    for (std::size_t n = 0; n < weight.size() && n < d.belief.factors.size(); ++n) {
        const Evidence &e = d.belief.factors[n].evidence;
        const std::string id = std::holds_alternative<Placed>(e) ? std::get<Placed>(e).placement.test : std::get<Answered>(e).id;
        const std::vector<std::string> said = saidReadings(session.facts(), id);
        std::string readings;
        for (const std::string &s : said)
            readings += (readings.empty() ? "" : ", ") + s;
        lines.push_back(titleOf(session.facts().machine, id) + ": " + readings + " \u2013 " + std::string(inWords(weight[n])));
    }
    return lines;
}

} // namespace core
