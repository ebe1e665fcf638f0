#pragma once
// The sentences with which a typed text is refused.
#include "core/reading/understand.h"

namespace core {

using Understanding = Expected<Understood, Misread>;

Understanding refused(Misread::Code code, std::string text, std::vector<std::string> suggestions = {});
// No number and no known word; the nearest word is offered where this test could read it.
Understanding notUnderstood(std::string_view plain, Measure measure);
// Understood, but `said` ("volts", "a tone") is not what this test reads.
Understanding wrongUnit(std::string_view said, Measure measure);
std::string_view plural(Unit unit); // "ohms"

} // namespace core
