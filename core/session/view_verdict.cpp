#include "core/base/text.h"
#include "core/belief/why.h"
#include "core/gate/inside.h"
#include "core/session/names.h"
#include "core/session/view_of.h"

#include <algorithm>

namespace core {
namespace {

std::string lower(std::string text)
{
    if (text.size() > 1 && text[0] >= 'A' && text[0] <= 'Z' && !(text[1] >= 'A' && text[1] <= 'Z'))
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

void addProofs(VerdictView &v, const Session &session, const Proven &p)
{
    const Machine &machine = session.facts().machine;
    for (const Finding &f : session.deduction().findings) {
        if (f.component != p.component || (!f.done && f.out == 0))
            continue;
        ProofLine line;
        line.test = f.test;
        line.title = titleOf(machine, f.test);
        line.failed = fails(f);
        line.said = joined(saidReadings(session.facts(), f.test), ", ");
        for (const Measured &m : session.facts().measured)
            if (m.test == f.test)
                for (const Take &take : m.takes) {
                    line.readings.push_back(take.reading);
                    line.limits = limitsFor(machine, f.test, m.placement, take.reading.with);
                }
        if (line.limits) {
            line.good = goodInWords(*line.limits);
            if (v.basis.empty() && line.failed)
                v.basis = line.limits->basisText;
        }
        const Library::Found found = machine.library->test(*machine.appliance, f.test);
        if (found.test != nullptr && !found.test->pull.empty())
            line.pulled = session.content().phrases->say("verdict.pulled");
        v.proofs.push_back(std::move(line));
    }
}

void addCauses(VerdictView &v, const Session &session, const Proven &p, const std::vector<ComponentView> &components)
{
    const Kind *kind = session.facts().machine.library->kindOf(*session.facts().machine.appliance, p.component);
    if (kind == nullptr)
        return;
    for (const auto &[cause, chance] : kind->lookBehind) {
        if (!isOn(session.facts().machine, cause))
            continue;
        const std::string owner = componentOf(cause);
        if (std::ranges::any_of(v.causes, [&](const CauseLine &c) { return componentOf(c.id) == owner; }))
            continue;
        const auto at = std::ranges::find(components, owner, &ComponentView::id);
        CauseLine line{
            cause, nameOf(session.facts().machine, owner), {}, at == components.end() ? Standing::Untested : at->standing};
        if (at != components.end())
            line.said = joined(at->readings, ", ");
        v.causes.push_back(std::move(line));
    }
    for (const std::string &found : p.behind)
        v.lookBehind.push_back(found);
}

std::string cureSentence(const Session &session, const Proven &p)
{
    const Machine &machine = session.facts().machine;
    const Kind *kind = machine.library->kindOf(*machine.appliance, p.component);
    const auto dot = p.suspect.find('.');
    const FailureMode *mode = kind == nullptr || dot == std::string::npos ? nullptr : kind->mode(p.suspect.substr(dot + 1));
    const std::string said = mode == nullptr ? std::string() : mode->say;
    if (kind == nullptr || p.cure == Cure::Replace || kind->cureSay.empty() ||
        (mode != nullptr && !mode->cure.empty() && !said.empty()))
        return said;
    return p.cure == Cure::Call && !said.empty() ? said + " " + kind->cureSay : kind->cureSay;
}

std::string headlineOf(const Session &session, const Verdict &verdict)
{
    const Phrases &phrases = *session.content().phrases;
    const Machine &machine = session.facts().machine;
    std::vector<std::string> parts;
    std::string first, cure;
    for (const Proven &p : verdict.items) {
        if (!p.listed)
            continue;
        if (p.cure == Cure::Replace)
            parts.push_back(lower(nameOf(machine, p.component)));
        if (first.empty()) {
            first = lower(nameOf(machine, p.component));
            cure = word(p.cure);
        }
    }
    switch (verdict.kind) {
    case Verdict::Kind::Replace:
        return phrases.say("verdict.replace", {{"part", joined(parts, phrases.say("and"))}});
    case Verdict::Kind::Fix:
        return phrases.say("verdict.fix." + cure, {{"part", first}});
    case Verdict::Kind::Call:
        return phrases.say("verdict.call", {{"trade", verdict.trade.empty() ? phrases.say("trade.any") : verdict.trade}});
    case Verdict::Kind::NotProven:
        return phrases.say("verdict.not_proven");
    }
    return {};
}

void sayNotProven(VerdictView &v, const Session &session, const std::vector<ComponentView> &components)
{
    const Phrases &phrases = *session.content().phrases;
    const Deduction &d = session.deduction();
    v.sentence = phrases.say("verdict.not_proven.say");
    const bool failed = std::ranges::any_of(components, [](const ComponentView &part) {
        return part.standing == Standing::Failed || part.standing == Standing::FailedOnce;
    });
    if (!failed && d.dictionary && probabilityAllGood(*d.dictionary, d.belief) >= kAllGood)
        v.sentence = phrases.say("verdict.all_good");
    if (d.dictionary && contradicts(slipShares(*d.dictionary, d.belief)))
        v.notes.push_back(phrases.say("verdict.contradict"));
    for (const NotTaken &r : d.ruling.refused)
        v.refused.push_back(phrases.say("verdict.refused", {{"test", titleOf(session.facts().machine, r.test)},
                                                            {"part", lower(nameOf(session.facts().machine, r.component))}}));
    const Cursor &cursor = session.facts().cursor;
    if (cursor.end && !cursor.end->because.empty())
        v.notes.push_back(cursor.end->because);
}

// On whose word the machine is said to be on or off.
std::string powerOn(const Session &session)
{
    const Phrases &phrases = *session.content().phrases;
    switch (session.gate().power) {
    case Power::ProvenDead:
        return phrases.say("power.measured");
    case Power::Unknown:
        return phrases.say("power.unknown");
    case Power::Stopped:
        return {};
    default:
        return phrases.say("power.word." + std::string(session.start().who == "proxy" ? "proxy" : "owner"));
    }
}

} // namespace

std::string goodInWords(const Limits &limits)
{
    if (limits.openIsGood)
        return "OL";
    const bool low = limits.lo > 0 && limits.lo < Limits::kNone, high = limits.hi < Limits::kNone;
    if (low && high)
        return plainNumber(limits.lo) == plainNumber(limits.hi)
                   ? shown({limits.lo, limits.unit})
                   : shown({limits.lo, limits.unit}) + " \u2013 " + shown({limits.hi, limits.unit});
    if (high)
        return "\u2264 " + shown({limits.hi, limits.unit});
    return low ? "\u2265 " + shown({limits.lo, limits.unit}) : std::string();
}

VerdictView verdictView(const Session &session, const std::vector<ComponentView> &components)
{
    const Phrases &phrases = *session.content().phrases;
    const Machine &machine = session.facts().machine;
    const Verdict verdict = session.verdict();
    VerdictView v;
    v.kind = verdict.kind;
    v.headline = headlineOf(session, verdict);
    v.call = verdict.trade;
    for (const Proven &p : verdict.items) {
        if (!p.listed && verdict.kind != Verdict::Kind::NotProven)
            v.alsoFound.push_back(suspectName(machine, p.suspect));
        const bool behind = std::ranges::any_of(verdict.items, [&](const Proven &other) {
            return std::ranges::any_of(other.behind, [&](const std::string &cause) { return componentOf(cause) == p.component; });
        });
        if (p.cure == Cure::Replace && (p.listed || behind))
            v.parts.push_back(p.component);
        else
            v.conditions.push_back(p.suspect);
        if (v.proof.empty() || p.proof == ProvenBy::Elimination)
            v.proof = word(p.proof);
        if (v.sentence.empty() && p.listed)
            v.sentence = cureSentence(session, p);
        if (p.causeNotFound)
            v.notes.push_back(phrases.say("verdict.cause_not_found", {{"part", lower(nameOf(machine, p.component))}}));
        const Kind *kind = machine.library->kindOf(*machine.appliance, p.component);
        if (kind != nullptr && p.cure == Cure::Replace && !kind->note.empty())
            v.notes.push_back(kind->note);
        addProofs(v, session, p);
        addCauses(v, session, p, components);
        for (std::string &line : whyInWords(session, p.component))
            if (v.why.size() < 12)
                v.why.push_back(std::move(line));
        if (p.listed && v.wouldChange.empty() && p.proof == ProvenBy::Reading && !v.proofs.empty() &&
            !v.proofs.front().good.empty())
            v.wouldChange =
                phrases.say("verdict.would_change", {{"good", v.proofs.front().good}, {"test", v.proofs.front().title}});
    }
    for (const std::string &cause : v.lookBehind)
        if (std::ranges::find(v.conditions, cause) == v.conditions.end() &&
            machine.appliance->component(componentOf(cause)) == nullptr)
            v.conditions.push_back(cause);
    for (const std::string &hazard : verdict.hazards)
        v.dangers.push_back(phrases.say("danger." + hazard));
    if (verdict.kind == Verdict::Kind::NotProven) {
        v.proof.clear();
        sayNotProven(v, session, components);
    }
    v.putBack = putBackNames(session, inserted(Screen::S8, session.gate(), verdictRequest(), session.at()).boxes);
    v.isTogether = putBackList(session.gate()).empty();
    if (v.isTogether)
        v.putBack.clear();
    if (verdict.kind == Verdict::Kind::Replace || verdict.kind == Verdict::Kind::Fix) {
        if (verdict.kind == Verdict::Kind::Replace)
            v.prove.push_back(phrases.say("prove.new_part"));
        v.prove.push_back(phrases.say("prove.together"));
        if (machine.tree != nullptr && !machine.tree->after.empty())
            v.prove.push_back(machine.tree->after);
    }
    return v;
}

StateView viewOf(const Session &session)
{
    StateView v;
    const Facts &facts = session.facts();
    const Machine &machine = facts.machine;
    v.tree = session.start().tree;
    v.appliance = session.start().appliance;
    v.applianceName = machine.appliance->name;
    v.complaint = machine.tree == nullptr ? std::string() : machine.tree->complaint;
    v.step = stepView(session);
    v.power = session.gate().power;
    v.powerSince = isDead(v.power) ? session.gate().deadSince.wallMs : session.gate().last.wallMs;
    v.powerOn = powerOn(session);
    for (const std::string &wire : session.gate().inside.pulled)
        v.wiresPulled.push_back({wire, wireName(machine, wire)});
    if (session.gate().inside.covers == Covers::Open)
        for (const std::string &place : session.gate().inside.opened)
            v.coversOpen.push_back({place, placeName(machine, place)});
    v.components = componentViews(session);
    v.suspects = suspectViews(session, v.components);
    const bool end = session.presentation().end && session.presentation().screening.what != Screening::What::Insert;
    if (!session.gate().refused.off) // it may still be on: nothing more is offered
        v.offers = offersOf(session, end);
    if (end)
        v.verdict = verdictView(session, v.components);
    v.way = wayViews(session);
    v.saved = session.saved();
    v.practice = session.start().toldClock;
    v.energizedAllowed = session.abilities().energized;
    v.stopped = session.gate().power == Power::Stopped;
    v.outcome = facts.outcome;
    for (const Component &c : machine.appliance->components) {
        const auto at = std::ranges::find(v.components, c.id, &ComponentView::id);
        if (at == v.components.end() || !c.price)
            continue;
        if (!v.atRisk || at->probability > std::ranges::find(v.components, v.atRisk->component, &ComponentView::id)->probability)
            v.atRisk =
                AtRisk{c.id, at->name, plainNumber(c.price->lo) + "\u2013" + plainNumber(c.price->hi) + " " + c.price->currency,
                       v.step.minutes};
    }
    return v;
}

} // namespace core
