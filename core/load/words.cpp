#include "core/load/words.h"

#include "core/base/text.h"

#include <array>
#include <span>

namespace core {
namespace {

constexpr std::array kPower = std::to_array<std::string_view>({
    "running", "while it runs", "when it runs", "run it", "run a", "run the", "let it run", "plug in", "plug it in", "plugged in",
    "plug the machine in", "power on", "power it", "powered", "switch on", "switch it on", "switched on", "turn on", "turn it on",
    "turned on", "while on", "energize", "energized", "energised", "live", "start it", "start a", "start the", "started",
    "press start", "while heating", "while turning", "breaker on", "in operation",
});
constexpr std::array kOpening = std::to_array<std::string_view>({
    "remove the panel", "remove the cover", "remove the rear panel", "remove the back", "take off the panel", "take off the cover",
    "take off the rear panel", "take off the back", "take the panel off", "take the cover off", "take the back off",
    "open the panel", "open the cabinet", "open the console", "unscrew", "behind the panel", "tip the console",
});

bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

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

std::string firstOf(std::string_view text, std::span<const std::string_view> phrases)
{
    const std::string words = wordsOnly(text);
    for (const std::string_view phrase : phrases) {
        const std::string wanted = " " + std::string(phrase) + " ";
        if (words.find(wanted) != std::string::npos)
            return std::string(phrase);
    }
    return {};
}

} // namespace

std::string wordsOfPower(std::string_view text) { return firstOf(text, kPower); }
std::string wordsOfOpening(std::string_view text) { return firstOf(text, kOpening); }

} // namespace core
