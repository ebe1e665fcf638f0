#include "app/cli/state_json.h"

#include "core/session/event_text.h"
#include "core/session/view_of.h"

namespace app {
namespace {

using Json = nlohmann::json;
using core::StepView;

Json names(const std::vector<core::Named> &items)
{
    Json list = Json::array();
    for (const core::Named &item : items)
        list.push_back({{"id", item.id}, {"text", item.text}});
    return list;
}

Json goodJson(const core::Limits &limits)
{
    if (limits.openIsGood)
        return {{"text", "OL"}};
    const double scale = limits.unit == core::Unit::Farad ? 1e6 : 1;
    Json good{{"u", core::unitCode(limits.unit)}};
    if (limits.lo > -core::Limits::kNone)
        good["lo"] = limits.lo * scale;
    if (limits.hi < core::Limits::kNone)
        good["hi"] = limits.hi * scale;
    good["text"] = core::goodInWords(limits);
    good["basis"] = limits.basisText;
    return good;
}

Json answersJson(const std::vector<core::Option> &answers)
{
    Json list = Json::array();
    for (const core::Option &a : answers)
        list.push_back({{"value", a.value}, {"text", a.text}, {"points_to", a.pointsTo}, {"clears", a.clears}});
    return list;
}

Json withJson(const std::vector<core::Demanded> &demanded)
{
    Json list = Json::array();
    for (const core::Demanded &d : demanded) {
        Json item{{"id", d.id}, {"text", d.text}};
        if (d.limits)
            item["limits"] =
                core::written({d.limits->lo, core::Unit::None}) + " to " + core::written({d.limits->hi, core::Unit::Celsius});
        list.push_back(std::move(item));
    }
    return list;
}

void addReading(Json &j, const StepView &step)
{
    if (!step.unit.empty())
        j["unit"] = step.unit;
    if (step.good)
        j["good"] = goodJson(*step.good);
    if (!step.standsFor.empty())
        j["stands_for"] = step.standsFor;
    if (!step.with.empty())
        j["with"] = withJson(step.with);
    if (step.reseat)
        j["reseat"] = true;
    if (step.near)
        j["near"] = true;
    if (step.kind == StepView::Kind::Test)
        j["placement"] = {{"n", step.placement + 1}, {"of", step.placements}, {"probes", {step.picture.red, step.picture.black}}};
}

void addSafety(Json &j, const StepView &step)
{
    if (step.screen.empty())
        return;
    j["screen"] = step.screen;
    j["boxes"] = names(step.boxes);
    j["ways"] = names(step.ways);
    if (!step.phase.empty())
        j["phase"] = step.phase;
    if (!step.pair.empty())
        j["pair"] = step.pair;
}

Json stepJson(const core::StateView &view)
{
    const StepView &step = view.step;
    Json j{{"id", step.id},       {"kind", word(step.kind)},   {"text", step.text},
           {"title", step.title}, {"power", word(view.power)}, {"minutes", step.minutes}};
    if (!step.test.empty())
        j["test"] = step.test;
    if (!step.why.empty())
        j["why"] = step.why;
    if (!step.placeSay.empty())
        j["place"] = step.placeSay;
    if (!step.answers.empty())
        j["answers"] = answersJson(step.answers);
    if (step.waitS > 0)
        j["wait_s"] = step.waitS;
    addReading(j, step);
    addSafety(j, step);
    if (view.verdict)
        j["put_back"] = names(view.verdict->putBack);
    return j;
}

Json verdictJson(const core::VerdictView &v)
{
    return {{"kind", word(v.kind)},
            {"parts", v.parts},
            {"conditions", v.conditions},
            {"proof", v.proof},
            {"look_behind", v.lookBehind},
            {"call", v.call},
            {"why", v.why},
            {"headline", v.headline},
            {"text", v.sentence},
            {"notes", v.notes},
            {"also_found", v.alsoFound},
            {"refused", v.refused},
            {"prove", v.prove},
            {"would_change", v.wouldChange},
            {"basis", v.basis}};
}

Json stopJson(const core::StateView &view)
{
    return {{"kind", "call"},
            {"parts", Json::array()},
            {"conditions", Json::array()},
            {"proof", ""},
            {"look_behind", Json::array()},
            {"call", view.step.screen},
            {"why", Json::array({view.step.text})}};
}

} // namespace

Json stateJson(const core::StateView &view, const core::Session &session, std::size_t eventsFrom)
{
    Json j{{"tree", view.tree},
           {"step", stepJson(view)},
           {"power", word(view.power)},
           {"wires_pulled", names(view.wiresPulled)},
           {"covers_open", names(view.coversOpen)}};
    j["suspects"] = Json::array();
    for (const core::SuspectView &s : view.suspects)
        j["suspects"].push_back(
            {{"id", s.id}, {"component", s.component}, {"probability", s.probability}, {"standing", word(s.standing)}});
    if (session.deduction().dictionary)
        j["not_listed"] = {{"quiet", session.deduction().belief.now.quiet}, {"loud", session.deduction().belief.now.loud}};
    j["offers"] = Json::array();
    for (const core::Offer &o : view.offers)
        j["offers"].push_back(
            {{"test", o.test}, {"title", o.title}, {"minutes", o.minutes}, {"why", o.why}, {"energized", o.energized}});
    if (view.atRisk)
        j["at_risk"] = {{"component", view.atRisk->component},
                        {"price", view.atRisk->price},
                        {"basis", "judgement"},
                        {"minutes", view.atRisk->minutes}};
    if (view.verdict)
        j["verdict"] = verdictJson(*view.verdict);
    else if (view.step.kind == StepView::Kind::Verdict)
        j["verdict"] = stopJson(view);
    if (!view.saved)
        j["not_saved"] = true;
    if (view.practice)
        j["practice"] = true;
    if (view.outcome)
        j["outcome"] = *view.outcome;
    j["events"] = Json::array();
    for (std::size_t n = eventsFrom; n < session.events().size(); ++n)
        j["events"].push_back(Json::parse(core::toLine(session.events()[n]), nullptr, false));
    return j;
}

} // namespace app
