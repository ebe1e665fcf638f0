#pragma once
// Limits and readings as they land on the number line.
#include "app/draw/number_line.h"
#include "core/reading/conformity.h"

#include <vector>

namespace app {

// `measure` and `meter` say how far a reading may be off. Readings in order; the last one has the flag.
NumberLineState lineOf(const core::Limits &limits, core::Measure measure, const core::Meter &meter,
                       const std::vector<core::Reading> &readings = {}, const QString &quantity = {});

// "9.4 to 12.3 Ω", "OL", "at most 0.5 Ω"; empty where nothing is known to be good.
QString goodWords(const core::Limits &limits);
// "Bad: below 8, above 13.9, OL." for where there is no room for the line.
QString badWords(const core::Limits &limits);

} // namespace app
