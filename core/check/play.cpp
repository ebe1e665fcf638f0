#include "core/base/text.h"
#include "core/check/check.h"
#include "core/session/names.h"
#include "core/session/view_of.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

constexpr int kMostSteps = 200;

std::string healthyValue(const StepView &step)
{
    if (step.unit == "continuity")
        return step.good && step.good->openIsGood ? "no tone" : "tone";
    if (!step.good)
        return "OL";
    const Limits &limits = *step.good;
    if (limits.openIsGood)
        return "OL";
    const bool low = std::isfinite(limits.lo), high = std::isfinite(limits.hi);
    const double value = low && limits.lo > 0 && high ? (limits.lo + limits.hi) / 2
                         : low && limits.lo > 0       ? limits.lo * 1.1
                                                      : std::min(limits.hi / 4, .1);
    return written({std::round(value * 10) / 10, limits.unit});
}

// What the case tells for a step, for its test, or for another step of the tree with the same test; pieces by placement
// are parted with semicolons.
std::optional<std::string> told(const WorkedCase &c, const Tree &tree, const StepView &step)
{
    std::vector<std::string> ids{step.id, step.test};
    for (const Step &other : tree.steps)
        if (!step.test.empty() && other.test == step.test)
            ids.push_back(other.id);
    for (const std::string &id : ids) {
        const auto at = c.answers.find(id);
        if (id.empty() || at == c.answers.end())
            continue;
        const auto pieces = split(at->second, ';');
        return std::string(trimmed(pieces[std::min(step.placement, pieces.size() - 1)]));
    }
    return std::nullopt;
}

std::string figureFor(const Demanded &d, const std::string &said)
{
    const auto at = said.find(" at ");
    if (d.id == "printed_temperature")
        return "63 Cel";
    if (at != std::string::npos)
        return said.substr(at + 4);
    if (d.id == "reached_temperature")
        return "85 Cel";
    if (!d.limits)
        return "22 Cel";
    return written({std::isfinite(d.limits->lo) ? d.limits->lo : d.limits->hi, Unit::Celsius});
}

std::string healthyAnswer(const StepView &step)
{
    const auto points = [](const Option &o) { return o.pointsTo.empty(); };
    const auto clears = std::ranges::find_if(step.answers, [&](const Option &o) { return points(o) && !o.clears.empty(); });
    if (clears != step.answers.end())
        return clears->value;
    const auto calm = std::ranges::find_if(step.answers, points);
    return calm != step.answers.end() ? calm->value : step.answers.front().value;
}

Command safetyCommand(const StepView &step)
{
    Command c;
    c.afterS = step.waitS;
    if (step.screen == "S0") {
        c.what = Command::What::Answer;
        c.value = "closed";
    } else if (!step.unit.empty()) {
        c.what = Command::What::Reading;
        c.value = step.phase.starts_with("known") ? "120.1 V" : "0.0 V";
    } else {
        const bool hold = step.kind == StepView::Kind::Hold || step.kind == StepView::Kind::ProveDead;
        c.what = hold ? Command::What::Acknowledge : Command::What::Confirm;
    }
    return c;
}

Command commandFor(const WorkedCase &c, const Tree &tree, const StepView &step)
{
    if (!step.screen.empty())
        return safetyCommand(step);
    Command command;
    command.afterS = step.waitS;
    if (step.kind == StepView::Kind::Test) {
        command.what = Command::What::Reading;
        const std::string said = told(c, tree, step).value_or(healthyValue(step));
        for (const Demanded &d : step.with)
            command.with[d.id] = figureFor(d, said);
        command.value = said.substr(0, said.find(" at "));
        return command;
    }
    command.what = Command::What::Answer;
    const auto ask = c.asks.find(step.id);
    command.value = ask != c.asks.end() ? ask->second : told(c, tree, step).value_or(healthyAnswer(step));
    return command;
}

bool chooseNext(Session &session, std::set<std::string> &tried)
{
    for (const Offer &offer : offersOf(session, true)) {
        if (!tried.insert(offer.test).second)
            continue;
        Command choose;
        choose.what = Command::What::Choose;
        choose.test = offer.test;
        if (!session.handle(choose, {1, 1}))
            return true;
    }
    return false;
}

bool matches(const std::vector<std::string> &given, const std::string &wanted)
{
    return std::ranges::any_of(given, [&](const std::string &g) { return g == wanted || componentOf(g) == wanted; });
}

std::string described(const Played &p)
{
    return p.kind + " " + joined(p.parts, ", ") + (p.conditions.empty() ? "" : " + " + joined(p.conditions, ", "));
}

} // namespace

Played play(const Content &content, const WorkedCase &c)
{
    Played played;
    Snapshot snapshot;
    snapshot.tree = c.tree;
    snapshot.energized = c.energized;
    snapshot.toldClock = true;
    snapshot.ambient = Amount{22, Unit::Celsius};
    for (int m = 0; m <= static_cast<int>(Measure::OpensAt); ++m)
        snapshot.meter.functions.insert(std::string(word(static_cast<Measure>(m))));
    snapshot.meter.category = "CAT III 600 V";
    auto session = Session::begin(content, std::move(snapshot), "case", {1, 1}, {});
    if (!session) {
        played.stuck = session.error().text;
        return played;
    }
    std::set<std::string> tried; // somebody with patience takes what is still offered
    for (int n = 0; n < kMostSteps; ++n) {
        const StepView step = stepView(*session);
        if (step.kind == StepView::Kind::Verdict) {
            if (step.screen.empty() && session->verdict().kind == Verdict::Kind::NotProven && chooseNext(*session, tried))
                continue;
            const VerdictView v = verdictView(*session, componentViews(*session));
            played.kind = word(v.kind);
            played.parts = v.parts;
            played.conditions = v.conditions;
            return played;
        }
        const Command command = commandFor(c, *content.library->tree(c.tree), step);
        played.readings += command.what == Command::What::Reading ? 1 : 0;
        if (const auto denial = session->handle(command, {1, 1})) {
            played.stuck = "at `" + (step.test.empty() ? step.id : step.test) + "`: " + denial->text;
            return played;
        }
    }
    played.stuck = "it comes to no end";
    return played;
}

std::vector<Diagnostic> checkCase(const Content &content, const WorkedCase &c)
{
    const Played p = play(content, c);
    const auto all = [](const std::vector<std::string> &given, const std::vector<std::string> &wanted) {
        return std::ranges::all_of(wanted, [&](const std::string &w) { return matches(given, w); });
    };
    const bool nothingElse = std::ranges::all_of(p.parts, [&](const std::string &part) { return matches(c.parts, part); });
    if (p.stuck.empty() && p.kind == c.kind && all(p.parts, c.parts) && all(p.conditions, c.conditions) && nothingElse)
        return {};
    return {
        {DiagnosticKind::CaseEndsOtherwise, c.place,
         "the case `" + c.id + "` ends otherwise: " + (p.stuck.empty() ? described(p) : p.stuck),
         "expected " + c.kind + " " + joined(c.parts, ", ") + (c.conditions.empty() ? "" : " + " + joined(c.conditions, ", "))}};
}

} // namespace core
