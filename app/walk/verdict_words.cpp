#include "app/walk/verdict_words.h"

#include "app/walk/line_state.h"
#include "app/walk/words.h"

#include <algorithm>
#include <set>

namespace app {
namespace {

// Parts and conditions that this complaint suspects on this machine, before anything was read.
int suspectedAtStart(const core::StateView &view, const core::Session &session)
{
    std::set<std::string> ids;
    const core::Tree *tree = session.facts().machine.tree;
    if (tree == nullptr)
        return 0;
    for (const auto &[id, weight] : tree->weights)
        for (const core::ComponentView &part : view.components)
            if (weight > 0 && part.id == id.substr(0, id.find('.')))
                ids.insert(part.id);
    return static_cast<int>(ids.size());
}

int readingsTaken(const core::StateView &view)
{
    return static_cast<int>(
        std::ranges::count_if(view.way, [](const core::WayView &way) { return !way.safety && way.amendable; }));
}

} // namespace

QString VerdictWords::caption(const core::StateView &view, std::int64_t wallMs)
{
    QString sort;
    switch (view.verdict->kind) {
    case core::Verdict::Kind::Replace:
        sort = tr("replace");
        break;
    case core::Verdict::Kind::Fix:
        sort = tr("fix, nothing to buy");
        break;
    case core::Verdict::Kind::Call:
        sort = tr("call a licensed trade");
        break;
    case core::Verdict::Kind::NotProven:
        sort = tr("not proven yet");
        break;
    }
    return tr("Verdict · %1 · %2").arg(sort, Words::time(wallMs));
}

QString VerdictWords::basis(const core::VerdictView &verdict)
{
    QStringList parts;
    if (!verdict.basis.empty())
        parts << tr("Basis: %1").arg(qs(verdict.basis));
    if (verdict.proof == "elimination")
        parts << tr("by elimination: everything it drives and hears has read good");
    parts << tr("Wiring: as assumed, not compared with the sheet");
    return parts.join(QStringLiteral(" · "));
}

QString VerdictWords::readings(const core::ProofLine &proof)
{
    return capital(qs(proof.said));
}

QString VerdictWords::judged(const core::ProofLine &proof)
{
    if (!proof.failed)
        return tr("good");
    return proof.readings.size() > 1 ? tr("failed, twice") : tr("failed");
}

QString VerdictWords::phone(const core::StateView &view)
{
    const core::VerdictView &verdict = *view.verdict;
    if (verdict.kind != core::Verdict::Kind::Call || verdict.proofs.empty())
        return {};
    QStringList said;
    for (const core::ProofLine &proof : verdict.proofs) {
        const QString good = proof.limits ? goodWords(*proof.limits) : QString();
        const QString title = lowerFirst(brief(qs(proof.title)));
        said << (good.isEmpty() ? tr("%1: %2").arg(title, qs(proof.said))
                                : tr("%1 reads %2, where %3 belongs").arg(title, qs(proof.said), good));
    }
    return tr("“%1: %2. %3.”")
        .arg(qs(view.applianceName), lowerFirst(qs(view.complaint)), capital(said.join(QStringLiteral("; "))));
}

QString VerdictWords::guessed(const core::StateView &view, const core::Session &session)
{
    const int suspects = suspectedAtStart(view, session), readings = readingsTaken(view);
    if (!view.atRisk)
        return {};
    const QString price = qs(view.atRisk->price), name = lowerFirst(qs(view.atRisk->name));
    switch (view.verdict->kind) {
    case core::Verdict::Kind::Replace:
        return tr("At the start the %1 was one of %2 suspects. Bought then: %3, a judgement, and unproven. Measured: %n answers "
                  "and readings, nothing spent.",
                  nullptr, readings)
            .arg(name, QString::number(suspects), price);
    case core::Verdict::Kind::Fix:
    case core::Verdict::Kind::Call:
        return tr("One of %1 suspects, and nothing to buy. Bought on a guess, the likeliest part (%2) would have cost %3, a "
                  "judgement, and mended nothing.")
            .arg(suspects)
            .arg(name, price);
    case core::Verdict::Kind::NotProven:
        return tr("At risk, if the likeliest part is bought now: %1, %2, a judgement.").arg(name, price);
    }
    Q_UNREACHABLE();
}

} // namespace app
