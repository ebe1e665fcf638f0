#include "app/walk/job_text.h"

#include "app/walk/verdict_words.h"
#include "app/walk/words.h"

namespace app {
namespace {

void addVerdict(QStringList &lines, const core::StateView &view)
{
    const core::VerdictView &verdict = *view.verdict;
    lines << QString() << qs(verdict.headline).toUpper();
    if (!verdict.sentence.empty())
        lines << qs(verdict.sentence);
    lines << VerdictWords::basis(verdict);
    for (const core::ProofLine &proof : verdict.proofs)
        lines << JobText::tr("  %1: %2 (%3)").arg(qs(proof.title), VerdictWords::readings(proof), VerdictWords::judged(proof));
    for (const core::CauseLine &cause : verdict.causes)
        lines << JobText::tr("  behind it: %1, %2").arg(lowerFirst(qs(cause.name)), cause.said.empty() ? StandingWords::word(standingOf(cause.standing)) : qs(cause.said));
    for (const std::string &note : verdict.notes)
        lines << QStringLiteral("  ") + qs(note);
    const QString phone = VerdictWords::phone(view);
    if (!phone.isEmpty())
        lines << phone;
    for (const core::Named &put : verdict.putBack)
        lines << JobText::tr("  still to be done: %1").arg(qs(put.text));
}

} // namespace

QString JobText::of(const core::StateView &view, const core::Session &session)
{
    QStringList lines{tr("Meter First · %1").arg(qs(view.job)), tr("%1: %2").arg(qs(view.applianceName), qs(view.complaint))};
    if (view.verdict)
        addVerdict(lines, view);
    lines << QString() << tr("The way so far");
    for (const core::WayView &way : view.way)
        lines << QStringLiteral("  ") + Words::time(way.wallMs) + QStringLiteral("  ") + (way.said.empty() ? qs(way.title) : tr("%1: %2").arg(qs(way.title), qs(way.said)));
    const auto &own = session.content().safety->lines;
    if (const auto end = own.find("record_end"); end != own.end())
        lines << QString() << qs(end->second);
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

} // namespace app
