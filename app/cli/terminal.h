#pragma once
// A conversation over two streams, a line at a time. Whatever is shown is plain text.
#include <istream>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

namespace app {

class Terminal
{
public:
    Terminal(std::istream &in, std::ostream &out) : m_in(in), m_out(out) {}

    void say(std::string_view text);
    // What was typed, without the blanks around it; nullopt: nothing will come any more.
    std::optional<std::string> ask(std::string_view prompt);

private:
    std::istream &m_in;
    std::ostream &m_out;
};

// 1 to `count`, as an index; nullopt: no such number.
std::optional<std::size_t> numberIn(std::string_view typed, std::size_t count);

} // namespace app
