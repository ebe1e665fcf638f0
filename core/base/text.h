#pragma once
// Small helpers for plain text. Everything works on bytes of valid UTF-8.
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace core {

std::string_view trimmed(std::string_view text);
std::string lowered(std::string_view text); // ASCII only
std::vector<std::string_view> split(std::string_view text, char at);
std::string joined(std::span<const std::string> parts, std::string_view between);
// First letter large, the rest as it is (ASCII first letters; others stay).
std::string capitalised(std::string_view text);
// Damerau-Levenshtein distance over bytes, for "did you mean". Texts over 64 bytes count as far apart.
std::size_t editDistance(std::string_view a, std::string_view b);
// The nearest of `words` if it is within a third of the length (at least 1), else "".
std::string nearestWord(std::string_view word, std::span<const std::string> words);
// Valid UTF-8 without C0/C1 controls other than tab and newlines. Returns the offset of the first bad byte, or npos.
std::size_t firstBadByte(std::string_view text);
// Bidirectional controls and zero-width characters, which can make a text read as another one.
bool hasHiddenCharacters(std::string_view text);
// The text with control characters and escapes made visible, for a terminal.
std::string printable(std::string_view text);

} // namespace core
