#include "core/reading/numeral.h"

#include <charconv>

namespace core {
namespace {

constexpr std::size_t kMostDigits = 12;

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

std::string_view digitsAt(std::string_view text, std::size_t at)
{
    std::size_t end = at;
    while (end < text.size() && isDigit(text[end]))
        ++end;
    return text.substr(at, end - at);
}

// IEC 60062: R, k, M (and for capacitors p, n, u) stand where the separator would. A digit must follow.
bool isCodeLetter(char c)
{
    return std::string_view("RrkKMmunp").find(c) != std::string_view::npos;
}

bool isGroupSign(char c)
{
    return c == '.' || c == ',' || c == '\'' || c == ' ';
}

double decimal(const std::string &digits, int exponent)
{
    const std::string text = digits + "e" + std::to_string(exponent);
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

// Groups of three behind the head: 1,500,000 or 1'500. `at` stands on the first separator. 0: no such grouping.
std::size_t groupedLength(std::string_view text, std::size_t at, std::string &digits)
{
    const char sign = text[at];
    std::size_t groups = 0;
    while (at < text.size() && text[at] == sign) {
        const auto group = digitsAt(text, at + 1);
        if (group.size() != 3)
            break;
        digits += group;
        at += 4;
        ++groups;
    }
    const bool other = at + 1 < text.size() && (text[at] == '.' || text[at] == ',') && isDigit(text[at + 1]);
    const bool onlyGroups = sign == '\'' || sign == ' ' || other;
    return groups >= 2 || (groups == 1 && onlyGroups) ? at : 0;
}

// 1,500,000 and 1,500.5: groups, then perhaps one separator of the other sort.
std::optional<Numeral> groupedAt(std::string_view text, Numeral n, std::size_t at)
{
    const char sign = text[at];
    std::string digits;
    const std::size_t end = n.whole.empty() || n.whole.size() > 3 ? 0 : groupedLength(text, at, digits);
    if (end == 0)
        return std::nullopt;
    n.form = Numeral::Form::Grouped;
    n.whole += digits;
    n.length = end;
    if (end < text.size() && (text[end] == '.' || text[end] == ',') && text[end] != sign) {
        n.fraction = digitsAt(text, end + 1);
        n.length = end + 1 + n.fraction.size();
    }
    return n;
}

std::optional<Numeral> checked(const Numeral &n, std::string_view text)
{
    if (n.whole.empty() && n.fraction.empty())
        return std::nullopt;
    if (n.whole.size() + n.fraction.size() > kMostDigits)
        return std::nullopt;
    // another number right behind it: 1.2.3, 10 8
    const std::size_t next = text.find_first_not_of(' ', n.length);
    if (next != std::string_view::npos && (isDigit(text[next]) || text[next] == ',' || text[next] == '\''))
        return std::nullopt;
    if (next != std::string_view::npos && text[next] == '.' && !n.fraction.empty())
        return std::nullopt;
    return n;
}

Numeral separated(std::string_view text, Numeral n, std::size_t at)
{
    n.fraction = digitsAt(text, at + 1);
    n.length = at + 1 + n.fraction.size();
    const bool leadingZero = n.whole.empty() || n.whole.front() == '0';
    if (n.fraction.empty())
        n.form = Numeral::Form::Unended;
    else if (n.fraction.size() == 3 && n.whole.size() <= 3 && !leadingZero)
        n.form = Numeral::Form::Doubtful;
    return n;
}

} // namespace

std::optional<Numeral> numeralAt(std::string_view text)
{
    Numeral n;
    std::size_t at = 0;
    if (!text.empty() && (text[0] == '-' || text[0] == '+')) {
        n.negative = text[0] == '-';
        at = text.find_first_not_of(' ', 1);
        if (at == std::string_view::npos)
            return std::nullopt;
    }
    n.whole = digitsAt(text, at);
    at += n.whole.size();
    n.length = at;
    if (at == text.size())
        return checked(n, text);
    if (isGroupSign(text[at]))
        if (const auto grouped = groupedAt(text, n, at))
            return checked(*grouped, text);
    if (text[at] == '.' || text[at] == ',')
        return checked(separated(text, n, at), text);
    const auto behind = digitsAt(text, at + 1);
    if (isCodeLetter(text[at]) && !behind.empty()) {
        n.letter = text[at];
        n.fraction = behind;
        n.length = at + 1 + behind.size();
    }
    return checked(n, text);
}

Counted counted(const Numeral &n, int exponent)
{
    const std::string digits = n.whole + n.fraction;
    const int last = exponent - static_cast<int>(n.fraction.size());
    const double size = decimal(digits, last);
    return {n.negative ? -size : size, decimal("1", last)};
}

Numeral withoutSeparator(const Numeral &numeral)
{
    Numeral n = numeral;
    n.whole += n.fraction;
    n.fraction.clear();
    n.form = Numeral::Form::Plain;
    return n;
}

} // namespace core
