#include "app/cli/meaning.h"

#include "core/base/text.h"

#include <algorithm>

namespace app {
namespace {

using core::ReadingName;

std::string ofItself(const core::Reading &reading, const core::Judgement &judged)
{
    const std::string value = core::capitalised(core::saidBack(reading));
    switch (judged.name) {
    case ReadingName::Good:
        return value + ": good.";
    case ReadingName::Open:
    case ReadingName::NoTone:
        return value + ": nothing gets through.";
    case ReadingName::Jumps:
        return "It jumps: a break that comes and goes.";
    case ReadingName::Tone:
        return "A tone: something gets through.";
    case ReadingName::StaysClosed:
        return value + ": it should have opened.";
    case ReadingName::None:
        return value + ": nothing there.";
    case ReadingName::Low:
        return value + (judged.convicts ? ": too little." : ": between good and bad.");
    case ReadingName::High:
        return value + (judged.convicts ? ": too much." : ": between good and bad.");
    case ReadingName::Unnamed:
        break;
    }
    return value + ": noted.";
}

std::string namesOf(const std::vector<std::string> &ids, const core::StateView &after)
{
    std::vector<std::string> names;
    for (const std::string &id : ids)
        for (const core::ComponentView &part : after.components)
            if (part.id == id)
                names.push_back(part.name);
    return core::joined(names, ", ");
}

std::string ofTheWay(const core::StepView &asked, const core::StateView &after, const core::Judgement &judged)
{
    const std::string names = namesOf(asked.picture.path, after);
    if (names.empty())
        return {};
    return judged.name == ReadingName::Good ? " Cleared, if it is wired so: " + names + "."
                                            : " It is one of these, or a wire between them: " + names + ".";
}

std::string ofThePart(const core::StepView &asked, const core::StateView &after)
{
    const auto part = std::ranges::find(after.components, asked.picture.component, &core::ComponentView::id);
    if (part == after.components.end())
        return {};
    const std::string name = " " + core::capitalised(part->name);
    switch (part->standing) {
    case core::Standing::Cleared:
        return name + ": cleared.";
    case core::Standing::Failed:
        return name + ": failed its test, twice.";
    case core::Standing::FailedOnce:
        return name + ": failed, once.";
    case core::Standing::Proven:
        return name + ": proven.";
    case core::Standing::NoConclusion:
        return " No part moves on this. The sheet in the cabinet says what is right.";
    default:
        return {};
    }
}

} // namespace

std::string meaningOf(const core::StepView &asked, const core::Reading &reading, const core::StateView &after,
                      const core::Session &session)
{
    const core::Meter &meter = session.facts().machine.meter;
    const core::Judgement judged = core::judge(reading, asked.good.value_or(core::Limits{}), asked.picture.measure, meter);
    const std::string said = ofItself(reading, judged);
    if (after.step.test == asked.test && after.step.screen.empty()) {
        if (after.step.placement != asked.placement)
            return said + " One more place to measure.";
        const bool differs = after.step.soFar.size() >= 2 && after.step.soFar.front() != core::saidBack(reading);
        return differs ? said + " Before it was " + after.step.soFar.front() + ": a third reading decides."
                       : said + " Once more, to be sure.";
    }
    const bool loop = !asked.test.starts_with(asked.picture.component + ".");
    return said + (loop ? ofTheWay(asked, after, judged) : ofThePart(asked, after));
}

} // namespace app
