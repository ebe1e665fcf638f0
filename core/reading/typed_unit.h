#pragma once
// The unit behind a typed number, as people write it: "k", "kOhms", "V~", "deg F", "mfd".
#include "core/tree/kind.h"

namespace core {

struct TypedUnit
{
    enum class Note {
        Clear,
        Nothing, // no unit was written: the test's own
        Fahrenheit,
        Milli,      // m with ohms: milli or mega
        MilliFarad, // mF: milli, or micro as old labels have it
    };
    Unit unit = Unit::None;
    int exponent = 0; // power of ten to the plain unit
    Note note = Note::Clear;
    enum class Sort { Unsaid, Alternating, Direct } sort = Sort::Unsaid; // of volts and amps
};

// `behind` is all that stands behind the number, blanks around it taken off. What it names may be of another test than
// `measure`; that decides only what a bare "k", "m", "C" or "F" means. nullopt: no unit known.
std::optional<TypedUnit> typedUnit(std::string_view behind, Measure measure);

} // namespace core
