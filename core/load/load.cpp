#include "core/load/load.h"

#include "core/base/hash.h"
#include "core/load/content_file.h"
#include "core/load/link.h"

#include <algorithm>
#include <fmt/format.h>
#include <new>

namespace core {
namespace {

struct Reader // what is known while the texts are read
{
    Loaded loaded;
    std::vector<ContentFile> files;
    std::vector<const SourceText *> sources;
    std::map<std::string, std::size_t, std::less<>> firstOf; // id -> the file that has it
    std::set<std::string, std::less<>> broken;
};

// Takes the file's value into the library, or keeps it out because another has its id.
void take(Reader &reader, std::size_t at)
{
    ContentFile &file = reader.files[at];
    Library &library = reader.loaded.library;
    if (auto *cases = std::get_if<std::vector<WorkedCase>>(&file.value)) {
        library.cases.insert(library.cases.end(), cases->begin(), cases->end());
        return;
    }
    if (file.id.empty())
        return; // broken cases: nothing needs them
    const auto [first, isNew] = reader.firstOf.try_emplace(file.id, at);
    if (!isNew) {
        if (reader.sources[first->second]->folder == reader.sources[at]->folder)
            file.found.push_back({DiagnosticKind::DuplicateId, file.document.place(file.document.root),
                                  fmt::format("`{}` a second time", file.id),
                                  fmt::format("it is in {} already", reader.files[first->second].document.file)});
        file.value = std::monostate{};
        return;
    }
    if (std::holds_alternative<std::monostate>(file.value)) {
        reader.broken.insert(file.id);
        return;
    }
    library.hashes[file.id] = sha256Hex(file.document.text);
    if (auto *kind = std::get_if<Kind>(&file.value))
        library.kinds[file.id] = std::move(*kind);
    else if (auto *appliance = std::get_if<Appliance>(&file.value))
        library.appliances[file.id] = std::move(*appliance);
    else if (auto *tree = std::get_if<Tree>(&file.value)) {
        library.trees[file.id] = std::move(*tree);
        if (reader.sources[at]->own)
            library.ownTrees.insert(file.id);
    }
}

void link(Reader &reader)
{
    Library &library = reader.loaded.library;
    const Surroundings around{library, reader.broken};
    const auto each = [&](auto &&linkOne) {
        for (ContentFile &file : reader.files) {
            Linker linker(file.document, file.found, around);
            linkOne(file, linker);
        }
    };
    // contacts of an appliance are spelt out before its trees are looked at
    each([&](ContentFile &file, Linker &l) {
        if (std::holds_alternative<Kind>(file.value))
            linkKind(library.kinds[file.id], l);
        else if (std::holds_alternative<Appliance>(file.value))
            linkAppliance(library.appliances[file.id], l);
    });
    each([&](ContentFile &file, Linker &l) {
        if (std::holds_alternative<Appliance>(file.value))
            linkAsks(library.appliances[file.id], l);
        else if (std::holds_alternative<Tree>(file.value))
            linkTree(library.trees[file.id], l);
        else if (auto *cases = std::get_if<std::vector<WorkedCase>>(&file.value))
            linkCases(*cases, l);
    });
}

// A condition that can stand behind a protector is there beside other things now and then, where its file is silent.
void fillBeside(Reader &reader)
{
    constexpr double kBeside = 0.02;
    Library &library = reader.loaded.library;
    std::set<std::string, std::less<>> behind;
    for (const auto &[id, kind] : library.kinds)
        for (const auto &[name, chance] : kind.lookBehind)
            behind.insert(name.substr(0, name.find('.')));
    for (const ContentFile &file : reader.files)
        if (std::holds_alternative<Kind>(file.value) && !library.kinds[file.id].isPart && behind.contains(file.id) &&
            file.document.root.key("beside") == nullptr)
            library.kinds[file.id].beside = kBeside;
}

void findFaulty(Reader &reader)
{
    Library &library = reader.loaded.library;
    library.faulty = reader.broken;
    for (const ContentFile &file : reader.files)
        if (const auto first = reader.firstOf.find(file.id);
            first != reader.firstOf.end() && &reader.files[first->second] == &file && hasFault(file.found))
            library.faulty.insert(file.id);
    for (const auto &entry : library.appliances) {
        const Appliance &a = entry.second;
        const auto isFaulty = [&](const std::string &kind) {
            return library.faulty.contains(kind) || library.kind(kind) == nullptr;
        };
        const bool parts = std::ranges::any_of(a.components, [&](const Component &c) { return isFaulty(c.kind); });
        const bool causes = std::ranges::any_of(a.conditions, [&](const ConditionUse &use) {
            const Kind *kind = library.kindOf(a, use.id);
            return kind == nullptr || library.faulty.contains(kind->id);
        });
        if (parts || causes)
            library.faulty.insert(entry.first);
    }
    for (const auto &[id, tree] : library.trees)
        if (library.appliance(tree.appliance) == nullptr || library.faulty.contains(tree.appliance))
            library.faulty.insert(id);
}

Loaded loadAll(std::span<const SourceText> texts)
{
    Reader reader;
    for (const SourceText &source : texts)
        reader.sources.push_back(&source);
    std::ranges::stable_sort(reader.sources, {}, [](const SourceText *s) { return s->folder; });
    reader.files.reserve(texts.size()); // documents are referred to
    for (const SourceText *source : reader.sources)
        reader.files.push_back(contentOf(source->text, source->file));
    for (std::size_t at = 0; at < reader.files.size(); ++at)
        take(reader, at);
    link(reader);
    fillBeside(reader);
    findFaulty(reader);
    for (const ContentFile &file : reader.files)
        reader.loaded.diagnostics.insert(reader.loaded.diagnostics.end(), file.found.begin(), file.found.end());
    sortByPlace(reader.loaded.diagnostics);
    return std::move(reader.loaded);
}

template<class T>
Parsed<T> parse(std::string_view text, std::string_view fileName, std::string_view sort)
{
    Parsed<T> parsed;
    try {
        ContentFile file = contentOf(text, std::string(fileName));
        T *value = std::get_if<T>(&file.value);
        if (value == nullptr && !hasFault(file.found))
            file.found.push_back({DiagnosticKind::UnknownSort, file.document.place(file.document.root),
                                  fmt::format("the file is not {}", sort), ""});
        parsed.diagnostics = std::move(file.found);
        sortByPlace(parsed.diagnostics);
        if (value != nullptr && !hasFault(parsed.diagnostics))
            parsed.value = std::move(*value);
    } catch (const std::exception &e) {
        parsed.diagnostics.push_back({DiagnosticKind::CannotRead, {std::string(fileName), 0, 0}, e.what(), ""});
    }
    return parsed;
}

} // namespace

Loaded loadTexts(std::span<const SourceText> texts)
{
    try {
        return loadAll(texts);
    } catch (const std::exception &e) {
        return {{}, {{DiagnosticKind::CannotRead, {}, e.what(), ""}}};
    }
}

Parsed<Kind> parseKind(std::string_view text, std::string_view fileName)
{
    return parse<Kind>(text, fileName, "a kind or condition");
}
Parsed<Appliance> parseAppliance(std::string_view text, std::string_view fileName)
{
    return parse<Appliance>(text, fileName, "an appliance");
}
Parsed<Tree> parseTree(std::string_view text, std::string_view fileName)
{
    return parse<Tree>(text, fileName, "a tree");
}
Parsed<std::vector<WorkedCase>> parseCases(std::string_view text, std::string_view fileName)
{
    return parse<std::vector<WorkedCase>>(text, fileName, "a list of cases");
}

} // namespace core
