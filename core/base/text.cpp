#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace core {
namespace {

constexpr std::string_view kBlank = " \t\r\n";

// Length of the well-formed sequence at `at` and its code point; 0 where it is not well-formed.
std::size_t decode(std::string_view text, std::size_t at, unsigned &point)
{
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(at);
    const std::size_t length = lead < 0x80 ? 1 : lead >= 0xC2 && lead <= 0xDF ? 2 : lead >= 0xE0 && lead <= 0xEF ? 3 : lead >= 0xF0 && lead <= 0xF4 ? 4 : 0;
    if (length == 0 || at + length > text.size())
        return 0;
    point = length == 1 ? lead : lead & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(at + i) & 0xC0) != 0x80)
            return 0;
        point = point << 6 | (byte(at + i) & 0x3FU);
    }
    const bool overlong = (length == 3 && point < 0x800) || (length == 4 && point < 0x10000);
    const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
    return overlong || surrogate || point > 0x10FFFF ? 0 : length;
}

} // namespace

std::string_view trimmed(std::string_view text)
{
    const auto first = text.find_first_not_of(kBlank);
    if (first == std::string_view::npos)
        return {};
    return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::string lowered(std::string_view text)
{
    std::string out(text);
    std::ranges::transform(out, out.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return out;
}

std::vector<std::string_view> split(std::string_view text, char at)
{
    std::vector<std::string_view> parts;
    for (std::size_t from = 0;;) {
        const auto to = text.find(at, from);
        parts.push_back(text.substr(from, to == std::string_view::npos ? to : to - from));
        if (to == std::string_view::npos)
            return parts;
        from = to + 1;
    }
}

std::string joined(std::span<const std::string> parts, std::string_view between)
{
    std::string out;
    for (const std::string &part : parts) {
        if (!out.empty())
            out += between;
        out += part;
    }
    return out;
}

std::string capitalised(std::string_view text)
{
    std::string out(text);
    if (!out.empty() && out.front() >= 'a' && out.front() <= 'z')
        out.front() = static_cast<char>(out.front() - 'a' + 'A');
    return out;
}

std::size_t editDistance(std::string_view a, std::string_view b)
{
    constexpr std::size_t kMost = 64;
    if (a.size() > kMost || b.size() > kMost)
        return a == b ? 0 : kMost;
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                now[j] = std::min(now[j], before[j - 2] + 1);
        }
        std::swap(before, last);
        std::swap(last, now);
    }
    return last[b.size()];
}

std::string nearestWord(std::string_view word, std::span<const std::string> words)
{
    std::string best;
    std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
    for (const std::string &candidate : words) {
        const std::size_t distance = editDistance(lowered(word), lowered(candidate));
        if (distance < least) {
            least = distance;
            best = candidate;
        }
    }
    return best;
}

std::size_t firstBadByte(std::string_view text)
{
    for (std::size_t at = 0; at < text.size();) {
        unsigned point = 0;
        const std::size_t length = decode(text, at, point);
        const bool control = (point < 0x20 && point != '\t' && point != '\n' && point != '\r') || (point >= 0x7F && point <= 0x9F);
        if (length == 0 || control || point == 0xFFFE || point == 0xFFFF)
            return at;
        at += length;
    }
    return std::string_view::npos;
}

bool hasHiddenCharacters(std::string_view text)
{
    for (std::size_t at = 0; at < text.size();) {
        unsigned point = 0;
        const std::size_t length = decode(text, at, point);
        if (length == 0)
            return false;
        if (point == 0x061C || (point >= 0x200B && point <= 0x200F) || (point >= 0x202A && point <= 0x202E) || (point >= 0x2060 && point <= 0x2069) || point == 0xFEFF)
            return true;
        at += length;
    }
    return false;
}

std::string printable(std::string_view text)
{
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        unsigned point = 0;
        const std::size_t length = decode(text, at, point);
        const bool control = length == 0 || (point < 0x20 && point != '\n' && point != '\t') || (point >= 0x7F && point <= 0x9F);
        if (control)
            out += fmt::format("\\x{:02x}", static_cast<unsigned char>(text[at]));
        else
            out += text.substr(at, length);
        at += length == 0 ? 1 : length;
    }
    return out;
}

} // namespace core
