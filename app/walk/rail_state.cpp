#include "app/walk/rail_state.h"

#include "app/walk/words.h"
#include "core/session/names.h"

namespace app {
namespace {

PowerPlace placeOf(core::Power power)
{
    switch (power) {
    case core::Power::Energized:
        return PowerPlace::Energized;
    case core::Power::Running:
        return PowerPlace::Running;
    case core::Power::ProvenDead:
        return PowerPlace::ProvenDead;
    case core::Power::Isolated:
        return PowerPlace::Isolated;
    case core::Power::OffUnproven:
        return PowerPlace::NotProven;
    case core::Power::Unknown:
    case core::Power::Stopped:
        return PowerPlace::Unknown;
    }
    Q_UNREACHABLE();
}

} // namespace

RailState railOf(const core::StateView &view, const core::GateState &gate)
{
    RailState rail;
    rail.place = placeOf(view.power);
    rail.onHoldPoint = view.step.kind == core::StepView::Kind::Hold || (view.step.screen == "S3" && view.step.phase == "hold");
    const QString since = Words::time(gate.deadSince.wallMs);
    switch (view.power) {
    case core::Power::Isolated:
        rail.since = PowerWords::tr("plug out,\nin sight\n%1").arg(since);
        break;
    case core::Power::ProvenDead:
        rail.since = PowerWords::tr("measured\n%1").arg(since);
        break;
    case core::Power::OffUnproven:
        rail.since = PowerWords::tr("breaker off,\ntaped, told");
        break;
    case core::Power::Running:
        rail.since = PowerWords::tr("closed up");
        break;
    case core::Power::Energized:
        rail.since = gate.proof ? PowerWords::tr("proving")
                     : gate.ack ? PowerWords::tr("one reading")
                                : PowerWords::tr("counts as on");
        break;
    default:
        rail.since = gate.asked ? PowerWords::tr("not said\nyet") : QString();
        break;
    }
    return rail;
}

QString PowerWords::state(const core::StateView &view)
{
    switch (view.power) {
    case core::Power::Isolated:
        return tr("Power: isolated, plug out, in sight.");
    case core::Power::ProvenDead:
        return tr("Power: measured dead, at this place.");
    case core::Power::OffUnproven:
        return tr("Power: breaker off, not proven.");
    case core::Power::Running:
        return tr("Power: on, running closed up.");
    case core::Power::Energized:
        return tr("Power: counts as on.");
    case core::Power::Stopped:
        return tr("The walk is stopped.");
    case core::Power::Unknown:
        return tr("Power: unknown.");
    }
    Q_UNREACHABLE();
}

QString PowerWords::inside(const core::StateView &view, const core::GateState &gate, const core::Machine &machine)
{
    QString covers;
    switch (gate.inside.covers) {
    case core::Covers::Open:
        covers = tr("Open: %1").arg(tr("a cover"));
        break;
    case core::Covers::Closed:
        covers = tr("Covers closed");
        break;
    case core::Covers::Unknown:
        covers = tr("Covers not known");
        break;
    }
    if (gate.inside.covers == core::Covers::Open && !view.coversOpen.empty()) {
        QStringList names;
        for (const core::Named &cover : view.coversOpen)
            names << lowerFirst(qs(core::coverName(machine, cover.id)));
        covers = tr("Open: %1").arg(names.join(QStringLiteral("; ")));
    }
    const int pulled = static_cast<int>(view.wiresPulled.size());
    const QString wires = !gate.inside.wiresKnown && gate.asked && pulled == 0 ? tr("wires pulled: not known")
                          : pulled == 0                                        ? tr("wires pulled: none")
                                                                               : tr("wires pulled: %1").arg(pulled);
    return tr("%1, %2.").arg(covers, wires);
}

} // namespace app
