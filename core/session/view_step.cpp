#include "core/base/text.h"
#include "core/gate/inside.h"
#include "core/reading/understand.h"
#include "core/session/names.h"
#include "core/session/proving.h"
#include "core/session/view_of.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

// Suspects an answer would make likelier or unlikelier by this many decibans are named with it.
constexpr double kTelling = 5;

double decibans(double p)
{
    const double kept = std::clamp(p, 1e-12, 1 - 1e-12);
    return 10 * std::log10(kept / (1 - kept));
}

void pointOut(const Session &session, std::string_view id, Option &option)
{
    const Deduction &d = session.deduction();
    if (!d.dictionary)
        return;
    auto entry = answeredOf(session.facts(), d.dictionary->known(), id);
    if (!entry || std::ranges::find(entry->answers, option.value) == entry->answers.end())
        return;
    entry->given.push_back(option.value);
    const Posterior then = whatIf(*d.dictionary, d.belief, *entry);
    for (std::size_t i = 0; i < d.dictionary->suspects().size(); ++i) {
        const double change = decibans(then.suspects[i]) - decibans(d.belief.now.suspects[i]);
        if (change >= kTelling)
            option.pointsTo.push_back(d.dictionary->suspects()[i].id);
        else if (change <= -kTelling)
            option.clears.push_back(d.dictionary->suspects()[i].id);
    }
}

std::string spaced(std::string text)
{
    std::ranges::replace(text, '_', ' ');
    return text;
}

void fillAsk(StepView &v, const Session &session, const Ask &ask)
{
    v.kind = StepView::Kind::Ask;
    v.id = ask.id;
    v.text = ask.ask;
    v.mayDecline = false;
    for (const std::string &answer : ask.answers) {
        const auto says = ask.says.find(answer);
        v.answers.push_back({answer, says == ask.says.end() ? spaced(answer) : says->second, {}, {}});
    }
    v.minutes = 0;
    (void)session;
}

void fillStep(StepView &v, const Session &session, const Step &step)
{
    v.kind = step.what == Step::What::Ask  ? StepView::Kind::Ask
             : step.what == Step::What::Do ? StepView::Kind::Do
                                           : StepView::Kind::Look;
    v.id = step.id;
    v.text = step.text;
    v.why = step.why;
    for (const std::string &answer : step.answers()) {
        Option option{answer, answer, {}, {}};
        pointOut(session, step.id, option);
        v.answers.push_back(std::move(option));
    }
}

std::string unitWord(Measure measure)
{
    return measure == Measure::Continuity ? "continuity" : std::string(unitCode(unitOf(measure)));
}

void fillPicture(StepView &v, const Machine &machine, const Library::Found &found, std::size_t placement)
{
    const Test &test = *found.test;
    v.picture.measure = test.measure;
    v.picture.component = found.component;
    v.picture.kind = found.kind == nullptr ? std::string() : found.kind->id;
    v.picture.jaw = test.jaw;
    v.picture.held = test.hold;
    v.picture.path = test.covers;
    for (const std::string &pull : test.pull)
        v.picture.pulled.push_back({wireId(found.component, pull), wireName(machine, wireId(found.component, pull))});
    if (placement < test.placements.size()) {
        v.picture.red = test.placements[placement].red;
        v.picture.black = test.placements[placement].black;
    }
    if (found.kind == nullptr && v.picture.component.empty()) { // a loop is drawn at the part the red probe is on
        v.picture.component = v.picture.red.substr(0, v.picture.red.find('.'));
        if (const Kind *kind = machine.library->kindOf(*machine.appliance, v.picture.component))
            v.picture.kind = kind->id;
    } else {
        v.picture.path.push_back(found.component);
    }
}

void fillTest(StepView &v, const Session &session, const Wanted &wanted)
{
    const Facts &facts = session.facts();
    const Library::Found found = facts.machine.library->test(*facts.machine.appliance, wanted.id);
    const Test &test = *found.test;
    v.kind = test.byEye() ? StepView::Kind::Look : StepView::Kind::Test;
    v.id = wanted.step.empty() ? wanted.id : wanted.step;
    v.test = wanted.id;
    v.standsFor = test.standsFor;
    v.title = test.name;
    v.why = test.why;
    v.placement = wanted.placement;
    v.placements = std::max<std::size_t>(1, test.placements.size());
    v.reseat = wanted.reseat;
    v.near = wanted.near;
    v.waitS = test.waitS;
    fillPicture(v, facts.machine, found, wanted.placement);
    if (test.byEye()) {
        v.text = test.ask;
        for (const std::string &answer : test.answers) {
            Option option{answer, answer, {}, {}};
            pointOut(session, wanted.id, option);
            v.answers.push_back(std::move(option));
        }
        return;
    }
    v.unit = unitWord(test.measure);
    v.text = sentenceFor(facts.machine, found, wanted.placement, *session.content().phrases);
    std::map<std::string, Amount> with;
    const Measured *m = isOfProof(facts, wanted.id) ? nullptr : measuredAt(facts, wanted.id, wanted.placement);
    if (m != nullptr)
        for (const Take &take : m->takes) {
            v.soFar.push_back(saidBack(take.reading));
            with = take.reading.with;
        }
    if (with.empty() && facts.machine.ambient)
        with["part_temperature"] = *facts.machine.ambient;
    v.good = limitsFor(facts.machine, wanted.id, wanted.placement, with);
    for (const Condition &condition : test.with)
        v.with.push_back({condition.id, session.content().phrases->say("with." + condition.id), condition.limits});
    if (test.measure == Measure::OpensAt) // for the case that it never opened
        v.with.push_back({"reached_temperature", session.content().phrases->say("with.reached_temperature"), std::nullopt});
}

std::string reasonFor(const Session &session, const Wanted &wanted)
{
    const Phrases &phrases = *session.content().phrases;
    const Params params{{"part", wanted.component.empty() ? std::string() : nameOf(session.facts().machine, wanted.component)}};
    switch (wanted.reason) {
    case Wanted::Reason::Tree:
        return {};
    case Wanted::Reason::Again:
        return {};
    case Wanted::Reason::Chosen:
        return phrases.say("reason.chosen");
    case Wanted::Reason::Confirm:
        return phrases.say("reason.confirm", params);
    case Wanted::Reason::Need:
        return wanted.component.empty() ? phrases.say("reason.frame") : phrases.say("reason.need", params);
    case Wanted::Reason::Behind:
        return phrases.say("reason.behind", params);
    case Wanted::Reason::Proof:
        return phrases.say("reason.proof", params);
    case Wanted::Reason::Doubt:
        return phrases.say("reason.doubt");
    case Wanted::Reason::Repair:
        return phrases.say(wanted.what == Wanted::What::Run ? "reason.run" : "reason.repaired", params);
    }
    return {};
}

// The gate counts ids; a person reads names.
std::string named(const std::string &ids, const auto &nameOfOne)
{
    std::vector<std::string> names;
    for (const std::string_view id : split(ids, ','))
        if (!trimmed(id).empty())
            names.push_back(nameOfOne(trimmed(id)));
    return joined(names, "; ");
}

void nameParams(StepView &v, const Machine &machine)
{
    const auto wire = [&](std::string_view id) { return wireName(machine, id); };
    const auto cover = [&](std::string_view id) { return coverName(machine, id); };
    for (const char *key : {"wires", "left_off"})
        if (const auto at = v.params.find(key); at != v.params.end())
            at->second = named(at->second, wire);
    if (const auto at = v.params.find("covers"); at != v.params.end())
        at->second = named(at->second, cover);
    if (const auto at = v.params.find("cover"); at != v.params.end())
        at->second = cover(at->second);
}

void fillSafety(StepView &v, const Session &session, const Presentation &p)
{
    const Screening &s = p.screening;
    v.screen = std::string(word(s.screen));
    v.phase = s.phase;
    v.pair = s.pair;
    v.conditions = s.notes;
    v.params = s.params;
    nameParams(v, session.facts().machine);
    v.waitS = s.waitS;
    v.boxes = putBackNames(session, s.boxes);
    const auto texts = session.content().safety->screens.find(v.screen);
    for (const std::string &way : s.ways)
        v.ways.push_back({way, texts != session.content().safety->screens.end() && texts->second.ways.contains(way)
                                   ? filled(texts->second.ways.at(way), v.params)
                                   : way});
    v.answers.clear();
    v.test.clear();
    v.unit.clear();
    v.with.clear();
    v.soFar.clear();
    v.reseat = v.near = false;
    const bool proof = s.screen == Screen::S3;
    v.kind = StepView::Kind::Isolate;
    if (isHold(s.screen)) {
        v.kind = StepView::Kind::Hold;
        v.test = p.request.test;
    } else if (proof) {
        v.kind = StepView::Kind::ProveDead;
        v.unit = s.phase == "hold" ? "" : "V";
    } else if (s.screen == Screen::S0) {
        v.kind = StepView::Kind::Look;
        for (const char *answer : {"alarm", "open", "closed"})
            v.answers.push_back({answer, session.content().phrases->say(std::string("s0.") + answer), {}, {}});
    } else if (s.screen == Screen::S12 || s.screen == Screen::S13) {
        v.kind = StepView::Kind::Verdict;
    } else if (s.screen == Screen::S10 && s.phase != "confirm" && s.form == "motor") {
        v.unit = "V";
    }
    v.id = v.screen;
    v.good.reset();
    if (texts != session.content().safety->screens.end()) {
        v.text.clear();
        for (const SafetyLine &line : linesOf(texts->second, s.notes, v.params))
            v.text += (v.text.empty() ? "" : " ") + line.text;
    }
}

void fillRun(StepView &v, const Session &session)
{
    const Phrases &phrases = *session.content().phrases;
    const Tree *tree = session.facts().machine.tree;
    v.kind = StepView::Kind::Look;
    v.id = kProofStep;
    v.title = phrases.say("proof.title");
    v.text = tree == nullptr || tree->after.empty() ? phrases.say("proof.run") : tree->after;
    for (const std::string_view answer : kProofAnswers)
        v.answers.push_back({std::string(answer), phrases.say("proof." + std::string(answer)), {}, {}});
}

} // namespace

std::string_view word(StepView::Kind kind)
{
    switch (kind) {
    case StepView::Kind::Ask:
        return "ask";
    case StepView::Kind::Look:
        return "look";
    case StepView::Kind::Do:
        return "do";
    case StepView::Kind::Test:
        return "test";
    case StepView::Kind::Isolate:
        return "isolate";
    case StepView::Kind::ProveDead:
        return "prove_dead";
    case StepView::Kind::Hold:
        return "hold";
    case StepView::Kind::Verdict:
        return "verdict";
    }
    return "";
}

std::vector<Named> putBackNames(const Session &session, const std::vector<Box> &boxes)
{
    const Content &content = session.content();
    std::vector<Named> named;
    for (const Box &box : boxes) {
        const std::string sort = box.id.substr(0, box.id.find(':'));
        std::string text = sort;
        for (const auto &[screen, texts] : content.safety->screens)
            if (const auto at = texts.boxes.find(sort); at != texts.boxes.end())
                text = at->second;
        const std::string name = sort == "wire"    ? wireName(session.facts().machine, box.name)
                                 : sort == "cover" ? coverName(session.facts().machine, box.name)
                                                   : box.name;
        named.push_back({box.id, filled(text, {{"name", name}})});
    }
    return named;
}

StepView stepView(const Session &session)
{
    const Presentation &p = session.presentation();
    const Facts &facts = session.facts();
    StepView v;
    if (p.end) {
        v.kind = StepView::Kind::Verdict;
        v.id = "verdict";
        v.mayDecline = false;
    } else if (p.wanted.what == Wanted::What::Ask) {
        fillAsk(v, session, *facts.machine.appliance->asked(p.wanted.id));
    } else if (p.wanted.what == Wanted::What::Run) {
        fillRun(v, session);
    } else if (p.wanted.what == Wanted::What::Step) {
        fillStep(v, session, *facts.machine.tree->step(p.wanted.id));
    } else {
        fillTest(v, session, p.wanted);
    }
    if (facts.ran.contains(p.wanted.id))
        v.why = session.content().phrases->say("reason.ran");
    else if (v.why.empty())
        v.why = reasonFor(session, p.wanted);
    if (!p.end) {
        v.minutes = minutesOf(facts, openPlacesOf(session.gate()), p.wanted.id);
        v.picture.place = p.request.place;
        v.placeSay = p.request.place.empty() ? std::string() : placeName(facts.machine, p.request.place);
        v.caution = facts.machine.appliance->caution;
    }
    if (p.screening.what == Screening::What::Insert)
        fillSafety(v, session, p);
    return v;
}

} // namespace core
