#include "core/base/text.h"
#include "core/load/document.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

int charactersIn(std::string_view bytes)
{
    return static_cast<int>(
        std::ranges::count_if(bytes, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

// The code point of the well-formed sequence at `at`, which is moved behind it.
unsigned nextPoint(std::string_view text, std::size_t &at)
{
    const auto lead = static_cast<unsigned char>(text[at++]);
    if (lead < 0x80)
        return lead;
    const int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
    unsigned point = lead & (0x3FU >> more);
    for (int i = 0; i < more; ++i)
        point = point << 6 | (static_cast<unsigned char>(text[at++]) & 0x3FU);
    return point;
}

// Characters that are not seen, or turn the direction of others (Unicode 15, "Default_Ignorable_Code_Point" and
// "Bidi_Control"), and the two line breaks that YAML 1.1 knows and editors do not show as such.
bool isHidden(unsigned point)
{
    struct Range
    {
        unsigned from, to;
    };
    static constexpr Range kHidden[] = {{0xAD, 0xAD},     {0x61C, 0x61C},     {0x115F, 0x1160},   {0x17B4, 0x17B5},
                                        {0x180B, 0x180F}, {0x200B, 0x200F},   {0x2028, 0x202E},   {0x2060, 0x206F},
                                        {0x3164, 0x3164}, {0xFE00, 0xFE0F},   {0xFEFF, 0xFEFF},   {0xFFA0, 0xFFA0},
                                        {0xFFF0, 0xFFFB}, {0x1BCA0, 0x1BCA3}, {0x1D173, 0x1D17A}, {0xE0000, 0xE0FFF}};
    return std::ranges::any_of(kHidden, [point](Range r) { return point >= r.from && point <= r.to; });
}

struct Line
{
    const Document &document;
    std::string_view text;
    int number;

    void add(std::vector<Diagnostic> &found, DiagnosticKind kind, std::size_t at, std::string what, std::string hint) const
    {
        found.push_back({kind, {document.file, number, charactersIn(text.substr(0, at)) + 1}, std::move(what), std::move(hint)});
    }
};

void findHidden(const Line &line, std::vector<Diagnostic> &found)
{
    for (std::size_t at = 0; at < line.text.size();) {
        const std::size_t from = at;
        const unsigned point = nextPoint(line.text, at);
        if (point >= 0x80 && isHidden(point))
            line.add(found, DiagnosticKind::HiddenCharacter, from,
                     fmt::format("a character that cannot be seen, U+{:04X}", point), "delete it");
    }
}

// true: YAML can make something of the line
bool checkLine(const Line &line, std::vector<Diagnostic> &found)
{
    const std::size_t before = found.size();
    if (const std::size_t bad = firstBadByte(line.text); bad != std::string_view::npos) {
        line.add(found, DiagnosticKind::NotUtf8, bad,
                 fmt::format("a byte that is no text, 0x{:02X}", static_cast<unsigned char>(line.text[bad])),
                 "save the file as UTF-8, without control characters");
        return false;
    }
    if (line.text.size() > kMostLine)
        line.add(found, DiagnosticKind::LineTooLong, 0, fmt::format("a line of {} bytes", line.text.size()),
                 fmt::format("{} at most", kMostLine));
    if (line.text.find('\r') < line.text.size() - 1)
        line.add(found, DiagnosticKind::NotUtf8, line.text.find('\r'), "a carriage return inside a line",
                 "end lines with a line feed");
    if (line.text.starts_with('%'))
        line.add(found, DiagnosticKind::Directive, 0, "a directive", "take out the line that begins with %");
    const std::size_t indent = line.text.find_first_not_of(' ');
    if (indent != std::string_view::npos && line.text[indent] == '\t')
        line.add(found, DiagnosticKind::TabIndent, indent, "a tab in the indentation", "indent with spaces");
    const bool readable = found.size() == before;
    findHidden(line, found);
    return readable;
}

} // namespace

Place Document::place(const Node &node) const
{
    if (node.line <= 0)
        return {file, 0, 0};
    const std::size_t at = std::min(node.offset, text.size());
    const std::size_t lineStart = at == 0 ? 0 : text.rfind('\n', at - 1) + 1; // npos + 1 is 0
    return {file, node.line, charactersIn(std::string_view(text).substr(lineStart, at - lineStart)) + 1};
}

std::size_t quoteEnd(std::string_view text, std::size_t open)
{
    const char quote = text[open];
    for (std::size_t i = open + 1; i < text.size(); ++i) {
        if (quote == '"' && text[i] == '\\')
            ++i;
        else if (quote == '\'' && text.substr(i, 2) == "''")
            ++i;
        else if (text[i] == quote)
            return i;
    }
    return std::string_view::npos;
}

bool checkText(const Document &document, std::vector<Diagnostic> &found)
{
    if (document.text.size() > kMostBytes) {
        found.push_back({DiagnosticKind::TooLarge,
                         {document.file, 0, 0},
                         fmt::format("a file of {} bytes", document.text.size()),
                         fmt::format("{} at most", kMostBytes)});
        return false;
    }
    bool readable = true;
    const std::string_view text = document.text;
    int number = 1;
    for (std::size_t from = 0; from < text.size(); ++number) {
        const std::size_t to = std::min(text.find('\n', from), text.size());
        readable = checkLine({document, text.substr(from, to - from), number}, found) && readable;
        from = to + 1;
    }
    return readable;
}

} // namespace core
