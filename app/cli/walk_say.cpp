// What the walk tells when it is asked: why, suspects, the price of guessing.
#include "app/cli/walk.h"
#include "app/cli/walk_show.h"
#include "core/base/text.h"

#include <algorithm>
#include <fmt/format.h>

namespace app {
namespace {

constexpr double kWorthSaying = .02; // below it a part is not listed

const core::ComponentView *partNamed(const core::StateView &view, const std::string &name)
{
    const auto is = [&](const core::ComponentView &c) {
        return name.empty() ? c.likeliest : c.id == name || core::lowered(c.name).find(name) != std::string::npos;
    };
    if (const auto at = std::ranges::find_if(view.components, is); at != view.components.end())
        return &*at;
    const auto most = std::ranges::max_element(view.components, {}, &core::ComponentView::probability);
    return name.empty() && most != view.components.end() ? &*most : nullptr;
}

} // namespace

void Walk::sayWhy(const View &view, const std::string &name)
{
    const core::ComponentView *part = partNamed(view, name);
    if (part == nullptr) {
        m_terminal.say("No part of this machine is called so. `suspects` names them.");
        return;
    }
    m_terminal.say(fmt::format("{}: {}. Standing: {}.", part->name, aboutOneIn(part->probability), word(part->standing)));
    const std::vector<std::string> lines = core::whyInWords(m_session, part->id);
    for (const std::string &line : lines)
        m_terminal.say("  " + line);
    if (lines.empty())
        m_terminal.say("  Nothing was read or said yet: only how often each part is behind this complaint.");
    m_terminal.say("  A likelihood is never a proof: only a reading of the part itself is.");
}

void Walk::saySuspects(const View &view)
{
    std::vector<const core::ComponentView *> parts;
    for (const core::ComponentView &part : view.components)
        if (part.probability >= kWorthSaying)
            parts.push_back(&part);
    std::ranges::stable_sort(parts, std::greater{}, [](const core::ComponentView *part) { return part->probability; });
    for (const core::ComponentView *part : parts)
        m_terminal.say(fmt::format("  {}: {}", part->name, word(part->standing)));
    m_terminal.say(parts.empty() ? "Nothing is suspected yet." : "`why` and a name says more.");
}

void Walk::sayPrice(const View &view)
{
    if (!view.atRisk) {
        m_terminal.say("No price is known of what is suspected now.");
        return;
    }
    m_terminal.say(fmt::format(
        "If the likeliest part were bought now: {}, {} (judgement), not proven. The next step takes about {:.0f} min.",
        view.atRisk->name, view.atRisk->price, view.atRisk->minutes));
}

} // namespace app
