#include "core/load/words.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <span>
#include <vector>

namespace core {
namespace {

// clang-format off
constexpr std::array kPower = std::to_array<std::string_view>({
    "running", "while it runs", "when it runs", "run it", "run a", "run the", "let it run", "plug in", "plug it in", "plugged in",
    "plug the machine in", "power on", "power it", "powered", "switch on", "switch it on", "switched on", "turn on", "turn it on",
    "turned on", "while on", "energize", "energized", "energised", "live", "start it", "start a", "start the", "started",
    "press start", "while heating", "while turning", "breaker on", "in operation",
});
// clang-format on
constexpr std::array kVerbs = std::to_array<std::string_view>({"remove", "take", "lift", "pull", "pry", "tip", "open"});
constexpr std::array kCovers = std::to_array<std::string_view>({"panel", "panels", "cover", "covers", "cabinet", "console"});
constexpr std::size_t kReach = 4; // "take the small rear panel"

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

bool isIn(std::string_view word, std::span<const std::string_view> words)
{
    return std::ranges::find(words, word) != words.end();
}

// Letters and single blanks only, with a blank at both ends: whole words can be looked for.
std::string wordsOnly(std::string_view text)
{
    std::string out(" ");
    for (const char c : lowered(text))
        if (isLetter(c))
            out += c;
        else if (out.back() != ' ')
            out += ' ';
    if (out.back() != ' ')
        out += ' ';
    return out;
}

} // namespace

std::string wordsOfPower(std::string_view text)
{
    const std::string words = wordsOnly(text);
    for (const std::string_view phrase : kPower)
        if (words.find(" " + std::string(phrase) + " ") != std::string::npos)
            return std::string(phrase);
    return {};
}

std::string wordsOfOpening(std::string_view text)
{
    const std::string plain = wordsOnly(text);
    const std::vector<std::string_view> words = split(trimmed(plain), ' ');
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i].starts_with("unscrew"))
            return std::string(words[i]);
        if (!isIn(words[i], kVerbs))
            continue;
        std::string phrase(words[i]);
        for (std::size_t k = i + 1; k < words.size() && k <= i + kReach; ++k) {
            phrase += " " + std::string(words[k]);
            if (isIn(words[k], kCovers))
                return phrase;
        }
    }
    return {};
}

} // namespace core
