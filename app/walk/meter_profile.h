#pragma once
// The person's meter between two jobs: functions, mark, range, what the probes read together. Never a maker.
#include "core/reading/meter.h"

#include <QCoreApplication>
#include <QString>

#include <optional>

namespace app {

std::optional<core::Meter> loadMeter(); // nullopt: it was never described
bool saveMeter(const core::Meter &meter); // false: it could not be written

struct MeterWords
{
    Q_DECLARE_TR_FUNCTIONS(app::MeterWords)
public:
    static QString inShort(const core::Meter &meter);  // "Ω, beeper, V~ · CAT III 300 V"
    static QString probes(const core::Meter &meter);   // "probes read 0.2 Ω together"
    static QString sign(core::Measure measure);        // "Ω", "V ~", as printed round a dial
    static QString plain(core::Measure measure);       // "resistance", "mains volts"
};

// A hand-held as most people have it; what is asked first is offered with these ticked.
core::Meter usualMeter();

} // namespace app
