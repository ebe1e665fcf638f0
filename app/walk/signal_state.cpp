#include "app/walk/signal_state.h"

#include "app/shared/counted.h"
#include "app/walk/picture_state.h"
#include "app/walk/words.h"

#include <map>

namespace app {
namespace {

// Marks round what was filled in; no text that was loaded holds control characters.
constexpr QChar kOpen(0x01), kClose(0x02);

Signal signalNamed(const std::string &word)
{
    if (word == "DANGER")
        return Signal::Danger;
    return word == "CAUTION" ? Signal::Caution : Signal::Warning;
}

Runs runsOf(const QString &marked)
{
    Runs runs;
    qsizetype at = 0;
    while (at < marked.size()) {
        const bool strong = marked[at] == kOpen;
        const qsizetype from = strong ? at + 1 : at;
        qsizetype to = marked.indexOf(strong ? kClose : kOpen, from);
        if (to < 0)
            to = marked.size();
        if (to > from)
            runs.push_back({marked.mid(from, to - from), strong ? Type::SafetyStrong : Type::Safety});
        at = strong ? to + 1 : to;
    }
    return runs;
}

SignalText::Step stepOf(QString line)
{
    SignalText::Step step;
    const qsizetype dot = line.indexOf(QLatin1String(". "));
    if (dot == 1 && line[0].isDigit()) {
        step.number = line.left(1);
        line = line.mid(3);
    }
    step.text = runsOf(line);
    return step;
}

std::map<std::string, std::string> marked(const core::StateView &view, const core::GateState &gate)
{
    std::map<std::string, std::string> params = view.step.params;
    if (gate.heat.at) // the gate speaks UTC, the person does not
        params["time"] = utf8(Words::time(gate.heat.at->wallMs));
    if (const auto wires =
            std::ranges::count_if(view.step.boxes, [](const core::Named &box) { return box.id.starts_with("wire:"); });
        wires > 0)
        params["wires"] =
            utf8(counted(wires, SafetyPicture::tr("the %1 wire of this list"), SafetyPicture::tr("the %1 wires of this list")));
    for (auto &[name, value] : params)
        value = utf8(kOpen + qs(value) + kClose);
    return params;
}

// A long page: short sentences share a line, so that the drawing and the boxes stay in sight.
void joinShort(std::vector<SignalText::Step> &steps)
{
    constexpr std::size_t kMany = 7;
    constexpr qsizetype kShort = 100; // letters
    if (steps.size() <= kMany)
        return;
    std::vector<SignalText::Step> joined;
    for (SignalText::Step &step : steps) {
        const bool fits = !joined.empty() && step.number.isEmpty() && joined.back().number.isEmpty() &&
                          plainText(joined.back().text).size() + plainText(step.text).size() < kShort;
        if (!fits) {
            joined.push_back(std::move(step));
            continue;
        }
        joined.back().text.push_back({QStringLiteral(" "), Type::Safety});
        for (Run &run : step.text)
            joined.back().text.push_back(std::move(run));
    }
    steps = std::move(joined);
}

QString unmarked(QString text)
{
    return text.remove(kOpen).remove(kClose);
}

bool hasNote(const core::StateView &view, const char *note)
{
    return std::ranges::find(view.step.conditions, note) != view.step.conditions.end();
}

// S8: the pulled wires at their parts, numbered as the boxes are.
void addWires(SafetyPictureState &state, const core::StateView &view, const core::Machine &machine)
{
    int number = 0;
    for (const core::Named &box : view.step.boxes) {
        if (!box.id.starts_with("wire:"))
            continue;
        const std::string wire = box.id.substr(5);
        const std::string component = wire.substr(0, wire.find('.'));
        const QString drawing = drawingOfPart(machine, component);
        auto part = std::ranges::find(state.parts, drawing, &SafetyPictureState::Part::drawing);
        if (part == state.parts.end()) {
            QString caption;
            for (const core::ComponentView &each : view.components)
                if (each.id == component)
                    caption = lowerFirst(qs(each.name));
            state.parts.push_back({drawing, caption, {}});
            part = std::prev(state.parts.end());
        }
        part->wires.push_back({qs(wire.substr(component.size() + 1)), QString::number(++number)});
    }
}

// S3: every conductor, with the probes on the pair that is asked for; before the first, on the first.
void addPair(SafetyPictureState &state, const core::StateView &view, const core::Session &session)
{
    for (const std::string &point : session.presentation().request.conductors)
        state.points << qs(point);
    const QStringList pair = qs(view.step.pair).split(QStringLiteral(" to "));
    state.red = pair.size() == 2 ? pair[0] : state.points.value(0);
    state.black = pair.size() == 2 ? pair[1] : state.points.value(state.points.size() - 1);
}

} // namespace

SignalText signalOf(const core::StateView &view, const core::SafetyTexts &texts, const core::GateState &gate)
{
    SignalText out;
    const auto at = texts.screens.find(view.step.screen);
    if (at == texts.screens.end())
        return out;
    const core::SafetyText &text = at->second;
    out.signal = signalNamed(core::wordOf(text, view.step.conditions));
    for (const std::string &sign : core::signsOf(text, view.step.conditions))
        out.signs.push_back(qs(sign));
    for (const core::SafetyLine &line : core::linesOf(text, view.step.conditions, marked(view, gate))) {
        const QString words = qs(line.text);
        if (line.bold)
            out.hazard += (out.hazard.isEmpty() ? QString() : QStringLiteral(" ")) + unmarked(words);
        else
            out.steps.push_back(stepOf(words));
    }
    if (view.step.screen != "S12" && view.step.screen != "S14")
        joinShort(out.steps);
    if (view.step.screen == "S12" && !hasNote(view, "co"))
        for (SignalText::Step &step : out.steps)
            if (plainText(step.text).startsWith(QLatin1String("CO")))
                step.sign = QStringLiteral("W016");
    if (!view.step.caution.empty() && view.step.screen != "S12" && view.step.screen != "S14")
        out.fromTree.push_back(qs(view.step.caution));
    return out;
}

std::optional<SafetyPictureState> sceneOf(const core::StateView &view, const core::Session &session)
{
    using Scene = SafetyPictureState::Scene;
    static const std::map<std::string, Scene> kScenes{
        {"S1", Scene::Unplug},  {"S2", Scene::BreakerOff}, {"S3", Scene::ProveDead}, {"S4", Scene::Clips},
        {"EO", Scene::Clips},   {"S5", Scene::Outlet},     {"S6", Scene::Clamp},     {"S7", Scene::Run},
        {"S8", Scene::PutBack}, {"S9", Scene::MakeItOff},  {"S10", Scene::Wait},     {"S11", Scene::Hot},
        {"S13", Scene::Closed},
    };
    const auto at = kScenes.find(view.step.screen);
    if (at == kScenes.end())
        return std::nullopt;
    const core::Machine &machine = session.facts().machine;
    SafetyPictureState state;
    state.scene = at->second;
    state.receptacle = drawingOfPart(machine, "house_supply");
    state.black = qs(view.step.picture.black);
    state.red = qs(view.step.picture.red);
    state.breaker = session.gate().facts.hardWired || session.gate().plugOutOfReach;
    state.atOutlet = hasNote(view, "at_outlet");
    state.clips = std::ranges::find(view.step.boxes, "clips_off", &core::Named::id) != view.step.boxes.end();
    if (state.scene == Scene::ProveDead)
        addPair(state, view, session);
    if (state.scene == Scene::PutBack) {
        addWires(state, view, machine);
        if (state.parts.empty())
            return std::nullopt;
    }
    return state;
}

} // namespace app
