#pragma once
// A typed number with its unit: taken, or asked back where it has two meanings.
#include "core/reading/numeral.h"
#include "core/reading/refusal_text.h"

namespace core {

// `numeral` stands at the head of `plain`; what follows it must be a unit of this test.
Understanding understandNumber(const Numeral &numeral, std::string_view plain, Measure measure, const Meter &meter);

} // namespace core
