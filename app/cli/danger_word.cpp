#include "app/cli/danger_word.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <vector>

namespace app {
namespace {

struct Said
{
    std::string_view word, why;
};

// the worst first
constexpr auto kDanger = std::to_array<Said>({
    {"gas", "gas"},
    {"stop", "gas"},
    {"co", "co"},
    {"monoxide", "co"},
    {"shock", "shock"},
    {"shocked", "shock"},
    {"tingle", "shock"},
    {"tingles", "shock"},
    {"smoke", "smoke"},
    {"smokes", "smoke"},
    {"smoking", "smoke"},
    {"fire", "smoke"},
    {"flame", "smoke"},
    {"flames", "smoke"},
    {"spark", "spark"},
    {"sparks", "spark"},
    {"sparking", "spark"},
    {"water", "water"},
});

std::vector<std::string> wordsIn(std::string_view typed)
{
    std::string plain = core::lowered(typed);
    for (char &c : plain)
        if (c == ',' || c == '.' || c == ':' || c == ';' || c == '?' || c == '\t')
            c = ' ';
    std::vector<std::string> words;
    for (const std::string_view word : core::split(plain, ' ')) {
        const auto last = word.find_last_not_of('!');
        if (!word.empty() && last != std::string_view::npos)
            words.emplace_back(word.substr(0, last + 1));
    }
    return words;
}

} // namespace

std::optional<std::string> dangerIn(std::string_view typed)
{
    const std::vector<std::string> words = wordsIn(typed);
    if (words.empty() || words.front() == "no")
        return std::nullopt;
    const auto said =
        std::ranges::find_if(kDanger, [&](const Said &d) { return std::ranges::find(words, d.word) != words.end(); });
    return said == kDanger.end() ? std::nullopt : std::optional(std::string(said->why));
}

} // namespace app
