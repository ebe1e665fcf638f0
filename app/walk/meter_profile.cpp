#include "app/walk/meter_profile.h"

#include "app/shared/settings.h"
#include "app/walk/words.h"

#include <QSettings>

namespace app {
namespace {

constexpr core::Measure kOnADial[] = {
    core::Measure::Resistance, core::Measure::Continuity, core::Measure::VoltageDc, core::Measure::VoltageAc,
    core::Measure::CurrentClamp, core::Measure::Capacitance, core::Measure::Temperature, core::Measure::VoltageLowImpedance,
};

} // namespace

std::optional<core::Meter> loadMeter()
{
    QSettings file(settingsFile(), QSettings::IniFormat);
    file.beginGroup(QStringLiteral("meter"));
    if (!file.contains(QStringLiteral("functions")))
        return std::nullopt;
    core::Meter meter;
    const QStringList functions = file.value(QStringLiteral("functions")).toStringList();
    for (const core::Measure measure : kOnADial)
        if (functions.contains(qs(core::word(measure))))
            meter.functions.insert(std::string(core::word(measure)));
    meter.category = utf8(file.value(QStringLiteral("category")).toString().left(40));
    meter.autoRange = file.value(QStringLiteral("auto_range"), true).toBool();
    bool ok = false;
    const double zero = file.value(QStringLiteral("probes_together")).toDouble(&ok);
    if (ok && zero >= 0 && zero < 10)
        meter.probeZero = core::Amount{zero, core::Unit::Ohm};
    return meter;
}

bool saveMeter(const core::Meter &meter)
{
    QSettings file(settingsFile(), QSettings::IniFormat);
    file.beginGroup(QStringLiteral("meter"));
    QStringList functions;
    for (const std::string &function : meter.functions)
        functions << qs(function);
    file.setValue(QStringLiteral("functions"), functions);
    file.setValue(QStringLiteral("category"), qs(meter.category));
    file.setValue(QStringLiteral("auto_range"), meter.autoRange);
    file.remove(QStringLiteral("probes_together"));
    if (meter.probeZero)
        file.setValue(QStringLiteral("probes_together"), meter.probeZero->value);
    file.sync();
    return file.status() == QSettings::NoError;
}

QString MeterWords::sign(core::Measure measure)
{
    switch (measure) {
    case core::Measure::Resistance: return QStringLiteral("Ω");
    case core::Measure::Continuity: return tr("the beeper");
    case core::Measure::VoltageAc: return QStringLiteral("V ~");
    case core::Measure::VoltageDc: return QStringLiteral("V =");
    case core::Measure::CurrentClamp: return tr("A ~ with a jaw");
    case core::Measure::Capacitance: return QStringLiteral("µF");
    case core::Measure::Temperature: return tr("°C or °F");
    case core::Measure::VoltageLowImpedance: return QStringLiteral("LoZ");
    default: return qs(core::word(measure));
    }
}

QString MeterWords::plain(core::Measure measure)
{
    switch (measure) {
    case core::Measure::Resistance: return tr("resistance");
    case core::Measure::Continuity: return tr("continuity");
    case core::Measure::VoltageAc: return tr("mains volts");
    case core::Measure::VoltageDc: return tr("battery volts");
    case core::Measure::CurrentClamp: return tr("clamp current");
    case core::Measure::Capacitance: return tr("capacitance");
    case core::Measure::Temperature: return tr("temperature");
    case core::Measure::VoltageLowImpedance: return tr("low impedance");
    default: return {};
    }
}

QString MeterWords::inShort(const core::Meter &meter)
{
    QStringList signs;
    for (const core::Measure measure : kOnADial)
        if (meter.can(measure))
            signs << (measure == core::Measure::CurrentClamp ? QStringLiteral("A ~") : sign(measure));
    if (signs.isEmpty())
        return tr("no meter");
    const QString mark = meter.category.empty() ? tr("no mark") : qs(meter.category);
    return signs.join(QStringLiteral(", ")) + QStringLiteral(" · ") + mark;
}

QString MeterWords::probes(const core::Meter &meter)
{
    if (!meter.probeZero)
        return tr("probes not zeroed yet");
    return tr("probes read %1 Ω together").arg(meter.probeZero->value);
}

core::Meter usualMeter()
{
    core::Meter meter;
    for (const core::Measure measure : {core::Measure::Resistance, core::Measure::Continuity, core::Measure::VoltageDc, core::Measure::VoltageAc})
        meter.functions.insert(std::string(core::word(measure)));
    return meter;
}

} // namespace app
