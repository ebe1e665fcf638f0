#pragma once
// Words that contradict the power a step has. A help for authors, never the guard: the gate goes by what is measured.
#include <string>
#include <string_view>

namespace core {

// The words of a text that ask for power ("plug it in", "while it runs"), or "".
std::string wordsOfPower(std::string_view text);
// The words of a text that ask to open something ("remove the panel"), or "".
std::string wordsOfOpening(std::string_view text);

} // namespace core
