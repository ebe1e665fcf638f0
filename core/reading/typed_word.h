#pragma once
// Readings that are words: OL, open, tone, silent, jumps, stays closed.
#include "core/reading/reading.h"

namespace core {

// The text with every blank a plain one, all minus signs, ohm signs and micro signs alike, fillers such as "about" and
// "it reads" taken off the front and a full stop off the end. Letters keep their size.
std::string plainTyped(std::string_view typed);

// "OL", "beeps", "wanders" ...; nullopt where it is no such word.
std::optional<Reading::What> typedWord(std::string_view plain);
// The nearest of those words to what may be a slip of the keys; "" if none is near.
std::string nearestTypedWord(std::string_view plain);

} // namespace core
