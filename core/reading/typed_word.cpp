#include "core/reading/typed_word.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>

namespace core {
namespace {

using What = Reading::What;

struct Word
{
    std::string_view text;
    What what;
};

// Displays write OL in many ways (0.L, O.L, .OL where the point stays lit); people write what they see or hear.
constexpr std::array kWords = std::to_array<Word>({
    {"ol", What::OverLimit},
    {"0l", What::OverLimit},
    {"o.l", What::OverLimit},
    {"0.l", What::OverLimit},
    {".ol", What::OverLimit},
    {"o.l.", What::OverLimit},
    {"ol.", What::OverLimit},
    {"o l", What::OverLimit},
    {"0 l", What::OverLimit},
    {"open", What::OverLimit},
    {"open line", What::OverLimit},
    {"open circuit", What::OverLimit},
    {"over", What::OverLimit},
    {"over limit", What::OverLimit},
    {"over-limit", What::OverLimit},
    {"overlimit", What::OverLimit},
    {"over range", What::OverLimit},
    {"overload", What::OverLimit},
    {"over load", What::OverLimit},
    {"out of range", What::OverLimit},
    {"infinite", What::OverLimit},
    {"infinity", What::OverLimit},
    {"inf", What::OverLimit},
    {"\u221e", What::OverLimit},
    {"no continuity", What::NoTone},
    {"tone", What::Tone},
    {"a tone", What::Tone},
    {"beep", What::Tone},
    {"beeps", What::Tone},
    {"beeped", What::Tone},
    {"beeping", What::Tone},
    {"a beep", What::Tone},
    {"buzz", What::Tone},
    {"buzzes", What::Tone},
    {"sound", What::Tone},
    {"sounds", What::Tone},
    {"no tone", What::NoTone},
    {"no beep", What::NoTone},
    {"no buzz", What::NoTone},
    {"no sound", What::NoTone},
    {"silent", What::NoTone},
    {"silence", What::NoTone},
    {"quiet", What::NoTone},
    {"does not beep", What::NoTone},
    {"doesn't beep", What::NoTone},
    {"did not beep", What::NoTone},
    {"didn't beep", What::NoTone},
    {"jumps", What::Jumps},
    {"jump", What::Jumps},
    {"jumping", What::Jumps},
    {"jumps around", What::Jumps},
    {"jumpy", What::Jumps},
    {"unstable", What::Jumps},
    {"unsteady", What::Jumps},
    {"wanders", What::Jumps},
    {"wandering", What::Jumps},
    {"flickers", What::Jumps},
    {"flickering", What::Jumps},
    {"fluctuates", What::Jumps},
    {"erratic", What::Jumps},
    {"comes and goes", What::Jumps},
    {"on and off", What::Jumps},
    {"stays closed", What::StaysClosed},
    {"stayed closed", What::StaysClosed},
    {"never opens", What::StaysClosed},
    {"never opened", What::StaysClosed},
    {"does not open", What::StaysClosed},
    {"doesn't open", What::StaysClosed},
    {"did not open", What::StaysClosed},
    {"didn't open", What::StaysClosed},
});

struct Same
{
    std::string_view from, to;
};
constexpr std::array kSame = std::to_array<Same>({
    {"\u00a0", " "},
    {"\u2007", " "},
    {"\u2009", " "},
    {"\u202f", " "},
    {"\t", " "},
    {"\r", " "},
    {"\n", " "},
    {"\u2212", "-"},
    {"\u2013", "-"},
    {"\u2010", "-"},
    {"\u2011", "-"},
    {"\u2126", "\u03a9"},
    {"\u03bc", "\u00b5"},
    {"\u2019", "'"},
    {"\u02bc", "'"},
    {"\uff0c", ","},
});

// Words that change nothing of the number behind them.
constexpr std::array<std::string_view, 24> kFillers{
    "about", "approx", "approx.", "approximately", "around", "roughly", "ca",    "ca.",     "circa",   "it", "it's", "reads",
    "read",  "shows",  "showed",  "says",          "is",     "the",     "meter", "display", "reading", "i",  "get",  "got"};

std::string withPlainSigns(std::string_view typed)
{
    std::string out;
    for (std::size_t at = 0; at < typed.size();) {
        const auto *const same = std::ranges::find_if(kSame, [&](const Same &s) { return typed.substr(at).starts_with(s.from); });
        if (same != kSame.end()) {
            out += same->to;
            at += same->from.size();
        } else {
            out += typed[at++];
        }
    }
    out.erase(std::unique(out.begin(), out.end(), [](char a, char b) { return a == ' ' && b == ' '; }), out.end());
    return out;
}

std::string_view withoutFillers(std::string_view text)
{
    for (;;) {
        text = trimmed(text);
        while (!text.empty() && (text.front() == '=' || text.front() == ':' || text.front() == '~'))
            text = trimmed(text.substr(1));
        if (text.starts_with("\u2248"))
            text = trimmed(text.substr(std::string_view("\u2248").size()));
        const auto blank = text.find(' ');
        std::string first = lowered(text.substr(0, blank));
        if (first.ends_with(':'))
            first.pop_back();
        if (blank == std::string_view::npos || std::ranges::find(kFillers, first) == kFillers.end())
            return text;
        text = text.substr(blank);
    }
}

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

} // namespace

std::string plainTyped(std::string_view typed)
{
    const std::string plain = withPlainSigns(typed);
    std::string_view text = withoutFillers(plain);
    // a full stop behind a word; behind a digit it may be the display's own point
    while (text.size() > 1 &&
           (text.back() == '!' || text.back() == ',' || (text.back() == '.' && isLetter(text[text.size() - 2]))))
        text = trimmed(text.substr(0, text.size() - 1));
    return std::string(text);
}

std::optional<Reading::What> typedWord(std::string_view plain)
{
    const auto *const at = std::ranges::find(kWords, lowered(plain), &Word::text);
    return at == kWords.end() ? std::nullopt : std::optional(at->what);
}

std::string nearestTypedWord(std::string_view plain)
{
    static const std::vector<std::string> kSaid{"OL",     "open",  "tone",     "no tone",     "beeps",
                                                "silent", "jumps", "unstable", "stays closed"};
    return plain.size() < 3 ? "" : nearestWord(plain, kSaid);
}

} // namespace core
