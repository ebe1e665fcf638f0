#include "app/walk/safety_words.h"

#include "app/walk/words.h"
#include "core/session/names.h"

#include <algorithm>
#include <array>

namespace app {

bool SafetyWords::isOn(const std::string &way)
{
    static constexpr std::array<std::string_view, 7> kOn{"confirm", "acknowledge", "control", "plug",
                                                         "breaker", "connector",   "reading"};
    return std::ranges::find(kOn, way) != kOn.end();
}

QString SafetyWords::why(const core::StateView &view, const core::Session &session)
{
    const core::Presentation &p = session.presentation();
    if (p.end)
        return view.step.screen == "S9" ? tr("Nothing else is shown before this.") : tr("The walk is at its end.");
    const QString next = lowerFirst(brief(qs(core::titleOf(session.facts().machine, p.wanted.id))));
    const std::string &screen = view.step.screen;
    if (screen == "S1" || screen == "S2" || screen == "S3")
        return tr("Next: %1; it needs the power off.").arg(next);
    if (screen == "S8")
        return tr("Before power returns, everything goes back.");
    if (screen == "S9")
        return tr("No other step is shown before this.");
    if (screen == "S7")
        return tr("Next it runs. Then: %1.").arg(next);
    if (screen == "S4" || screen == "S5" || screen == "S6" || screen == "EO")
        return tr("No dead test is left that can answer. Next: %1.").arg(next);
    return {};
}

QString SafetyWords::without(const core::StepView &step)
{
    const std::string &screen = step.screen;
    if (screen == "S1" || screen == "S2" || screen == "S3")
        return tr("Without this no panel is opened. Looks with everything closed stay possible.");
    if (screen == "S4" || screen == "S5" || screen == "S6" || screen == "EO")
        return tr("Not this one: the walk goes on without it, or ends “not proven” with what to tell an electrician. No is "
                  "answered once, and costs nothing.");
    if (screen == "S7" || screen == "S8")
        return tr("Not now: what needs it to run is left out, and the walk goes on.");
    if (screen == "S10" || screen == "S11")
        return tr("Not now: this test is left out, and the walk goes on.");
    return {};
}

core::Command SafetyWords::commandOf(const core::StepView &step, const std::string &way)
{
    using What = core::Command::What;
    core::Command command;
    command.step = {};
    if (way == "confirm" || way == "control" || way == "plug" || way == "breaker" || way == "connector") {
        command.what = What::Confirm;
        command.way = way == "confirm" ? std::string() : way;
    } else if (way == "acknowledge") {
        command.what = What::Acknowledge;
        command.step = step.screen;
    } else if (way == "never" || way == "decline") {
        command.what = What::Decline;
        command.never = way == "never";
    } else if (way == "reading") {
        command.what = What::Reading;
    } else if (way == "not_gas" || way == "mistake") {
        command.what = What::Stop;
        command.why = way;
    } else {
        command.what = What::Detour;
        command.way = way;
    }
    return command;
}

} // namespace app
