#pragma once
// One map of a document, read key by key; a key that nobody asked for is a fault. All readers of load_*.cpp stand on this.
#include "core/load/document.h"
#include "core/load/quantity.h"

#include <array>
#include <initializer_list>
#include <optional>
#include <utility>

namespace core {

// Where the faults of one file go. At most kMost are kept: a file with more is not read by anyone.
class Notes
{
public:
    Notes(const Document &document, std::vector<Diagnostic> &found) : m_document(document), m_found(found) {}
    void add(DiagnosticKind kind, const Node &at, std::string text, std::string hint = {});
    Place place(const Node &node) const { return m_document.place(node); }
    const Document &document() const { return m_document; }

private:
    const Document &m_document;
    std::vector<Diagnostic> &m_found;
};

bool isId(std::string_view text);       // "dryer_element": a to z, digits, underscores; begins with a letter
bool isDottedId(std::string_view text); // ids with points between them

class Fields
{
public:
    // `sort` and the key name the map in messages: "the test `ohm`"; what it lacks is said at the key. A node that is no
    // map is a fault and reads as an empty one. All arguments must outlive the object.
    Fields(const Node &key, const Node &node, Notes &notes, std::string_view sort);
    Fields(const Node &node, Notes &notes, std::string_view sort);

    const Node &node() const { return m_node; }
    Notes &notes() const { return m_notes; }
    std::string what() const; // "the test `ohm`"

    // A fault about the map as a whole; nothing is said of what is no map at all.
    void lacks(DiagnosticKind kind, std::string text, std::string hint) const;
    const Node *find(std::string_view key);
    const Node *need(std::string_view key);
    bool has(std::string_view key) const { return m_node.key(key) != nullptr; }

    std::string sentence(std::string_view key, bool needed = false); // any text that is not blank
    std::string id(std::string_view key, bool needed = false);
    std::string dottedId(std::string_view key, bool needed = false);
    bool flag(std::string_view key); // true or false
    std::optional<double> number(std::string_view key, double lo, double hi);
    double seconds(std::string_view key);
    std::vector<std::string> texts(std::string_view key);     // a list of texts, or one alone
    std::vector<std::string> dottedIds(std::string_view key); // the same, each an id
    template<class T>
    T word(std::string_view key, std::initializer_list<std::pair<std::string_view, T>> words, T otherwise);
    Only only(std::string_view key); // ask -> answer or list of answers

    void done(); // unknown keys are faults from here on; the keys asked for are what it may be called

private:
    int wordIn(const Node &value, std::string_view key, std::span<const std::string> words);

    const Node *m_key;
    const Node &m_node;
    Notes &m_notes;
    std::string_view m_sort;
    std::array<std::string_view, 64> m_known; // no reader asks for more keys of one map
    std::size_t m_knownCount = 0;
};

// The parts of readers that need no key.
std::string textOf(const Node &node, Notes &notes);            // "" with a fault if it is no text, blank, or a bare true
std::string idOf(const Node &node, Notes &notes, bool dotted); // the same for an id
std::vector<std::string> textsOf(const Node &node, Notes &notes, bool ids); // a list or a single text, each once
std::optional<double> numberOf(const Node &node, Notes &notes, double lo, double hi);
// Where a text stands in a list (or the text itself), a key in a map; the node as a whole where it does not.
const Node &itemOf(const Node &node, std::string_view text);
const Node &keyOf(const Node &node, std::string_view key);
void noteQuantity(const QuantityFault &fault, const Node &at, Notes &notes);

// Every key and value of a map; a fault if it is none, and nothing is called.
template<class F>
void eachEntry(const Node *map, Notes &notes, F &&take)
{
    if (map == nullptr)
        return;
    if (!map->isMap()) {
        notes.add(DiagnosticKind::WrongShape, *map, "not a list of `name: value`", "write `{name: value}`, or one name a line");
        return;
    }
    for (std::size_t i = 0; i + 1 < map->items.size(); i += 2)
        if (map->items[i].isText())
            take(map->items[i], map->items[i + 1]);
}

template<class T>
T Fields::word(std::string_view key, std::initializer_list<std::pair<std::string_view, T>> words, T otherwise)
{
    const Node *value = find(key);
    if (value == nullptr)
        return otherwise;
    std::vector<std::string> names;
    for (const auto &entry : words)
        names.emplace_back(entry.first);
    const int at = wordIn(*value, key, names);
    return at < 0 ? otherwise : (words.begin() + at)->second;
}

} // namespace core
