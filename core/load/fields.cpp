#include "core/load/fields.h"

#include "core/base/text.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

constexpr std::size_t kMostNotes = 500;

bool isLetter(char c)
{
    return c >= 'a' && c <= 'z';
}
bool isIdCharacter(char c)
{
    return isLetter(c) || (c >= '0' && c <= '9') || c == '_';
}
bool isBareFlag(const Node &node)
{
    return node.plain && (lowered(node.text) == "true" || lowered(node.text) == "false");
}

} // namespace

void Notes::add(DiagnosticKind kind, const Node &at, std::string text, std::string hint)
{
    if (m_found.size() < kMostNotes)
        m_found.push_back({kind, m_document.place(at), std::move(text), std::move(hint)});
}

bool isId(std::string_view text)
{
    return !text.empty() && text.size() <= 64 && isLetter(text.front()) && std::ranges::all_of(text, isIdCharacter);
}

bool isDottedId(std::string_view text)
{
    return text.size() <= 64 && std::ranges::all_of(split(text, '.'), isId);
}

std::string textOf(const Node &node, Notes &notes)
{
    if (!node.isText())
        notes.add(DiagnosticKind::WrongShape, node, "a list or map where a text belongs",
                  "write one text; put it in quotes if it has a colon or comma");
    else if (isBareFlag(node))
        notes.add(DiagnosticKind::BareWord, node, fmt::format("`{}` without quotes", node.text),
                  fmt::format("write \"{}\"", node.text));
    else if (trimmed(node.text).empty() && !node.plain) // a plain one without a text was a fault when it was read
        notes.add(DiagnosticKind::EmptyValue, node, "a blank text", "write something, or leave the key out");
    else
        return std::string(trimmed(node.text));
    return {};
}

std::string idOf(const Node &node, Notes &notes, bool dotted)
{
    std::string text = textOf(node, notes);
    if (text.empty() || (dotted ? isDottedId(text) : isId(text)))
        return text;
    notes.add(DiagnosticKind::BadId, node, fmt::format("`{}` is no id", text),
              dotted ? "small letters, digits and _, with a point between names"
                     : "small letters, digits and _, beginning with a letter");
    return {};
}

std::vector<std::string> textsOf(const Node &node, Notes &notes, bool ids)
{
    std::vector<std::string> texts;
    const auto take = [&](const Node &item) {
        std::string text = ids ? idOf(item, notes, true) : textOf(item, notes);
        if (text.empty())
            return;
        if (std::ranges::find(texts, text) != texts.end())
            notes.add(DiagnosticKind::Repeated, item, fmt::format("`{}` a second time", text), "name each once");
        else
            texts.push_back(std::move(text));
    };
    if (node.isList())
        std::ranges::for_each(node.items, take);
    else
        take(node);
    return texts;
}

std::optional<double> numberOf(const Node &node, Notes &notes, double lo, double hi)
{
    const auto value = node.isText() && node.plain ? numberIn(node.text) : std::nullopt;
    if (!value)
        notes.add(DiagnosticKind::NotAQuantity, node,
                  node.isText() ? fmt::format("`{}` is no number", node.text) : "not a number",
                  "write digits, with a decimal point");
    else if (*value < lo || *value > hi)
        notes.add(DiagnosticKind::OutOfRange, node, fmt::format("{} is out of range", node.text),
                  fmt::format("from {} to {}", plainNumber(lo), plainNumber(hi)));
    else
        return value;
    return std::nullopt;
}

const Node &itemOf(const Node &node, std::string_view text)
{
    const auto at = std::ranges::find(node.items, text, &Node::text);
    return node.isList() && at != node.items.end() ? *at : node;
}

const Node &keyOf(const Node &node, std::string_view key)
{
    const Node *found = node.key(key);
    return found == nullptr ? node : *found;
}

void noteQuantity(const QuantityFault &fault, const Node &at, Notes &notes)
{
    notes.add(fault.kind, at, fault.text, fault.hint);
}

Fields::Fields(const Node &key, const Node &node, Notes &notes, std::string_view sort) : Fields(node, notes, sort)
{
    m_key = &key;
}

Fields::Fields(const Node &node, Notes &notes, std::string_view sort) : m_key(nullptr), m_node(node), m_notes(notes), m_sort(sort)
{
    if (!node.isMap())
        notes.add(DiagnosticKind::WrongShape, node, fmt::format("{} is not a list of `key: value`", what()),
                  "write `{key: value}`, or one key a line");
}

std::string Fields::what() const
{
    return m_key == nullptr ? std::string(m_sort) : fmt::format("{} `{}`", m_sort, m_key->text);
}

void Fields::lacks(DiagnosticKind kind, std::string text, std::string hint) const
{
    if (m_node.isMap())
        m_notes.add(kind, m_key == nullptr ? m_node : *m_key, std::move(text), std::move(hint));
}

const Node *Fields::find(std::string_view key)
{
    if (m_knownCount < m_known.size())
        m_known[m_knownCount++] = key;
    return m_node.value(key);
}

const Node *Fields::need(std::string_view key)
{
    const Node *value = find(key);
    if (value == nullptr)
        lacks(DiagnosticKind::MissingKey, fmt::format("{} has no `{}`", what(), key), fmt::format("add `{}:`", key));
    return value;
}

std::string Fields::sentence(std::string_view key, bool needed)
{
    const Node *value = needed ? need(key) : find(key);
    return value == nullptr ? "" : textOf(*value, m_notes);
}

std::string Fields::id(std::string_view key, bool needed)
{
    const Node *value = needed ? need(key) : find(key);
    return value == nullptr ? "" : idOf(*value, m_notes, false);
}

std::string Fields::dottedId(std::string_view key, bool needed)
{
    const Node *value = needed ? need(key) : find(key);
    return value == nullptr ? "" : idOf(*value, m_notes, true);
}

bool Fields::flag(std::string_view key)
{
    const Node *value = find(key);
    if (value == nullptr)
        return false;
    if (!value->isText() || !value->plain || (value->text != "true" && value->text != "false"))
        m_notes.add(DiagnosticKind::UnknownWord, *value, fmt::format("`{}` is neither true nor false", key),
                    "write true, or leave the key out");
    return value->text == "true";
}

std::optional<double> Fields::number(std::string_view key, double lo, double hi)
{
    const Node *value = find(key);
    return value == nullptr ? std::nullopt : numberOf(*value, m_notes, lo, hi);
}

double Fields::seconds(std::string_view key)
{
    const Node *value = find(key);
    if (value == nullptr)
        return 0;
    const std::string text = textOf(*value, m_notes);
    const Read<double> read = text.empty() ? Read<double>(0) : amountIn(text, Unit::Second);
    if (!read)
        noteQuantity(read.error(), *value, m_notes);
    return read.value_or(0);
}

std::vector<std::string> Fields::texts(std::string_view key)
{
    const Node *value = find(key);
    return value == nullptr ? std::vector<std::string>{} : textsOf(*value, m_notes, false);
}

std::vector<std::string> Fields::dottedIds(std::string_view key)
{
    const Node *value = find(key);
    return value == nullptr ? std::vector<std::string>{} : textsOf(*value, m_notes, true);
}

Only Fields::only(std::string_view key)
{
    Only only;
    eachEntry(find(key), m_notes, [&](const Node &ask, const Node &answers) {
        only.emplace_back(idOf(ask, m_notes, false), textsOf(answers, m_notes, false));
    });
    return only;
}

int Fields::wordIn(const Node &value, std::string_view key, std::span<const std::string> words)
{
    const std::string text = textOf(value, m_notes);
    if (text.empty())
        return -1;
    const auto at = std::ranges::find(words, text);
    if (at != words.end())
        return static_cast<int>(at - words.begin());
    std::string hint = didYouMean(text, words);
    m_notes.add(DiagnosticKind::UnknownWord, value, fmt::format("`{}` is no word for `{}`", text, key),
                hint.empty() ? "one of " + joined(words, ", ") : hint);
    return -1;
}

void Fields::done()
{
    eachEntry(m_node.isMap() ? &m_node : nullptr, m_notes, [&](const Node &key, const Node &) {
        const std::span asked(m_known.data(), m_knownCount);
        if (std::ranges::find(asked, key.text) != asked.end())
            return;
        const std::vector<std::string> known(asked.begin(), asked.end());
        m_notes.add(DiagnosticKind::UnknownKey, key, fmt::format("{} has no key `{}`", what(), key.text),
                    didYouMean(key.text, known));
    });
}

} // namespace core
