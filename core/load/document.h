#pragma once
// A YAML text as a light tree of nodes that know where they stand. Strict: one document, no anchors, aliases, tags or
// directives, every key plain text and used once, every value there. Only yaml_document.cpp knows yaml-cpp.
#include "core/diag/diagnostic.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace core {

struct Node
{
    enum class What : std::uint8_t { Text, List, Map };
    What what = What::Text;
    bool plain = false;      // text without quotes: other readers may take it for a number or a yes
    int line = 0;            // from 1; 0: nowhere
    std::size_t offset = 0;  // in bytes, of the first character of the value
    std::string text;        // Text
    std::vector<Node> items; // List: the items; Map: key, value, key, value ...

    bool isText() const { return what == What::Text; }
    bool isList() const { return what == What::List; }
    bool isMap() const { return what == What::Map; }
    const Node *value(std::string_view key) const; // of a map; nullptr if it has no such key
    const Node *key(std::string_view key) const;   // the key's own node
};

struct Document
{
    std::string file; // as it is to be shown
    std::string text; // without a byte order mark
    Node root;        // a map, or empty where the text is no YAML of ours

    Place place(const Node &node) const; // column in characters
};

// Limits that no file of an author comes near; they keep a hostile one from costing time or memory.
inline constexpr std::size_t kMostBytes = 2U << 20, kMostLine = 10'000, kMostNodes = 200'000, kMostText = 20'000;
inline constexpr int kMostDepth = 32;

// Never throws. Faults go to `found`; with one that breaks the text off the root is what was read so far.
Document documentOf(std::string_view text, std::string file, std::vector<Diagnostic> &found);

// Where the quote that is opened at `open` is closed; npos if it never is.
std::size_t quoteEnd(std::string_view text, std::size_t open);
// What is wrong with the bytes before any YAML is read (text_faults.cpp). True: it can be read on.
bool checkText(const Document &document, std::vector<Diagnostic> &found);

} // namespace core
