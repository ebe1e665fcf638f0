#include "app/walk/landed.h"

#include "app/walk/words.h"
#include "core/session/names.h"

#include <algorithm>

namespace app {
namespace {

using core::ReadingName;

QString valueOf(const Landed &landed)
{
    return capital(qs(core::saidBack(landed.reading)));
}

QString meaningOf(const Landed &landed, const core::Judgement &judged)
{
    const QString value = valueOf(landed);
    switch (judged.name) {
    case ReadingName::Good: return LandedWords::tr("%1: good.").arg(value);
    case ReadingName::Open:
    case ReadingName::NoTone: return LandedWords::tr("%1: nothing gets through.").arg(value);
    case ReadingName::Jumps: return LandedWords::tr("It jumps: a break that comes and goes.");
    case ReadingName::Tone: return LandedWords::tr("A tone: something gets through.");
    case ReadingName::StaysClosed: return LandedWords::tr("%1: it should have opened.").arg(value);
    case ReadingName::None: return LandedWords::tr("%1: nothing there.").arg(value);
    case ReadingName::Low: return judged.convicts ? LandedWords::tr("%1: too little.").arg(value) : LandedWords::tr("%1: between good and bad.").arg(value);
    case ReadingName::High: return judged.convicts ? LandedWords::tr("%1: too much.").arg(value) : LandedWords::tr("%1: between good and bad.").arg(value);
    case ReadingName::Unnamed: return LandedWords::tr("%1: noted.").arg(value);
    }
    Q_UNREACHABLE();
}

QString probesTogether(const core::Meter &meter)
{
    return meter.probeZero ? LandedWords::tr("touch them together (%1 Ω again)").arg(meter.probeZero->value) : LandedWords::tr("touch them together");
}

const core::ComponentView *partOf(const Landed &landed, const core::StateView &after)
{
    const auto at = std::ranges::find(after.components, landed.step.picture.component, &core::ComponentView::id);
    return at == after.components.end() ? nullptr : &*at;
}

QString namesOf(const std::vector<std::string> &ids, const core::StateView &after)
{
    QStringList names;
    for (const std::string &id : ids)
        for (const core::ComponentView &part : after.components)
            if (part.id == id)
                names << lowerFirst(qs(part.name));
    return listed(names);
}

QString saysOfPart(const Landed &landed, const core::StateView &after, const core::Judgement &judged)
{
    const bool loop = !landed.step.test.starts_with(landed.step.picture.component + ".");
    if (loop) {
        if (landed.step.picture.path.empty())
            return {};
        const QString names = namesOf(landed.step.picture.path, after);
        if (judged.name == ReadingName::Good)
            return LandedWords::tr("Cleared, if it is wired so: %1.").arg(names);
        return LandedWords::tr("It is one of these, or a wire between them: %1.").arg(names);
    }
    const core::ComponentView *part = partOf(landed, after);
    if (part == nullptr)
        return {};
    const QString name = capital(qs(part->name));
    switch (part->standing) {
    case core::Standing::Cleared: return LandedWords::tr("%1: cleared.").arg(name);
    case core::Standing::Failed: return LandedWords::tr("%1: failed its test, twice.").arg(name);
    case core::Standing::FailedOnce: return LandedWords::tr("%1: failed, once.").arg(name);
    case core::Standing::Proven: return LandedWords::tr("%1: proven.").arg(name);
    case core::Standing::NoConclusion: return LandedWords::tr("No part moves on this. The sheet in the cabinet says what is right.");
    default: return {};
    }
}

bool differ(const core::StepView &step, const Landed &landed)
{
    return step.soFar.size() >= 2 && step.soFar.front() != core::saidBack(landed.reading);
}

} // namespace

core::Judgement judgedOf(const Landed &landed, const core::Meter &meter)
{
    return core::judge(landed.reading, landed.step.good.value_or(core::Limits{}), landed.step.picture.measure, meter);
}

bool isAskedAgain(const Landed &landed, const core::StateView &after)
{
    return after.step.kind == core::StepView::Kind::Test && after.step.test == landed.step.test && after.step.placement == landed.step.placement && !after.step.soFar.empty();
}

LandedWords LandedWords::of(const Landed &landed, const core::StateView &after, const core::Session &session)
{
    const core::Meter &meter = session.facts().machine.meter;
    const core::Judgement judged = judgedOf(landed, meter);
    LandedWords words{meaningOf(landed, judged), {}};
    if (!isAskedAgain(landed, after)) {
        const bool more = after.step.test == landed.step.test && after.step.placement != landed.step.placement;
        words.second = more ? tr("One more place to measure.") : saysOfPart(landed, after, judged);
        return words;
    }
    if (differ(after.step, landed)) {
        words.sentence = tr("%1 now, %2 before. A third decides.").arg(valueOf(landed), qs(after.step.soFar.front()));
        words.second = tr("Lift both probes, %1, set them back and press firmly.").arg(probesTogether(meter));
    } else if (after.step.reseat) {
        words.sentence += QLatin1Char(' ') + tr("Take it once more.");
        words.second = tr("A slipped probe reads the same. Lift both probes, %1, set them back.").arg(probesTogether(meter));
    } else {
        words.sentence += QLatin1Char(' ') + tr("Take it again.");
        words.second = tr("Clean the tips, %1, press hard, let the digits settle.").arg(probesTogether(meter));
    }
    return words;
}

QString LandedWords::again(const core::StepView &step)
{
    return step.reseat ? tr("Once more: lift both probes, touch them together, set them back on the part.")
                       : tr("Once more: press the tips on firmly and let the digits settle.");
}

} // namespace app
