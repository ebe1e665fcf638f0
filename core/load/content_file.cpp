#include "core/load/content_file.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace core {
namespace {

constexpr std::array<std::string_view, 5> kSorts{"kind", "condition", "appliance", "tree", "cases"};

// "…/kinds/x.yaml" -> "x", "…/dryer/appliance.yaml" -> "dryer", "…/dryer/no_heat.yaml" -> "dryer/no_heat"
std::string guessedId(std::string_view file)
{
    std::vector<std::string_view> parts;
    for (std::size_t from = 0; from <= file.size();) {
        const std::size_t to = std::min(file.find('/', from), file.size());
        parts.push_back(file.substr(from, to - from));
        from = to + 1;
    }
    std::string_view name = parts.back();
    if (name.ends_with(".yaml"))
        name.remove_suffix(5);
    const std::string_view folder = parts.size() > 1 ? parts[parts.size() - 2] : std::string_view{};
    if (name == "cases")
        return {};
    if (name == "appliance")
        return std::string(folder);
    return folder.empty() || folder == "kinds" ? std::string(name) : fmt::format("{}/{}", folder, name);
}

void checkFormat(Fields &file)
{
    const Node *format = file.need("format");
    if (format != nullptr && (!format->isText() || format->text != "1"))
        file.notes().add(DiagnosticKind::UnknownFormat, *format, "a format that this program does not know",
                         "write `format: 1`; a newer one needs a newer program");
}

} // namespace

ContentFile contentOf(std::string_view text, std::string file)
{
    ContentFile content;
    content.document = documentOf(text, std::move(file), content.found);
    content.id = guessedId(content.document.file);
    const Document &document = content.document;
    Notes notes(document, content.found);
    if (!document.root.isMap()) {
        if (content.found.empty())
            notes.add(DiagnosticKind::UnknownSort, document.root, "the file is no list of `key: value`",
                      "begin with `format: 1`, then `kind:`, `condition:`, `appliance:`, `tree:` or `cases:`");
        return content;
    }
    const auto sort = std::ranges::find_if(kSorts, [&](std::string_view key) { return document.root.key(key) != nullptr; });
    if (sort == kSorts.end()) {
        if (content.found.empty())
            notes.add(DiagnosticKind::UnknownSort, document.root, "the file does not say what it is",
                      "add `kind:`, `condition:`, `appliance:`, `tree:` or `cases:`");
        return content;
    }
    Fields fields(document.root, notes, "the file");
    checkFormat(fields);
    if (*sort == "kind" || *sort == "condition")
        content.value = readKind(fields);
    else if (*sort == "appliance")
        content.value = readAppliance(fields);
    else if (*sort == "tree")
        content.value = readTree(fields);
    else
        content.value = readCases(fields);
    fields.done();
    if (const Node *id = document.root.value(*sort); id->isText() && !id->text.empty())
        content.id = id->text;
    return content;
}

} // namespace core
