#include "app/cli/terminal.h"

#include "core/base/text.h"

#include <charconv>

namespace app {

void Terminal::say(std::string_view text)
{
    m_out << core::printable(text) << '\n';
}

std::optional<std::string> Terminal::ask(std::string_view prompt)
{
    m_out << core::printable(prompt) << std::flush;
    std::string line;
    if (!std::getline(m_in, line))
        return std::nullopt;
    return std::string(core::trimmed(line));
}

std::optional<std::size_t> numberIn(std::string_view typed, std::size_t count)
{
    std::size_t n = 0;
    const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), n);
    const bool whole = error == std::errc{} && end == typed.data() + typed.size();
    return whole && n >= 1 && n <= count ? std::optional(n - 1) : std::nullopt;
}

} // namespace app
