#include "core/load/document.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <istream>
#include <streambuf>

namespace core {
namespace {

struct Broken // nothing after this place can be read
{
};

class ViewBuffer : public std::streambuf // reads a text where it is
{
public:
    explicit ViewBuffer(std::string_view text)
    {
        char *first = const_cast<char *>(text.data());
        setg(first, first, first + text.size());
    }
};

bool isYesOrNo(std::string_view text)
{
    static constexpr std::array<std::string_view, 12> kWords{"yes", "Yes", "YES", "no",  "No",  "NO",
                                                             "on",  "On",  "ON",  "off", "Off", "OFF"};
    return text.size() <= 3 && std::ranges::find(kWords, text) != kWords.end();
}

// Builds the nodes from the parser's events. Plain faults are noted and reading goes on; what breaks the text throws.
class Builder final : public YAML::EventHandler
{
public:
    Builder(const Document &document, std::vector<Diagnostic> &found) : m_document(document), m_found(found) {}

    Node root;
    bool closed = false; // the one document is over: any further event is a fault

    void OnDocumentStart(const YAML::Mark &mark) override { tick(mark); }
    void OnDocumentEnd() override {}
    void OnAnchor(const YAML::Mark &mark, const std::string &) override
    {
        note(DiagnosticKind::Anchor, mark, "an anchor", "write the value out");
    }
    void OnAlias(const YAML::Mark &mark, YAML::anchor_t) override
    {
        tick(mark);
        note(DiagnosticKind::Anchor, mark, "a reference to an anchor", "write the value out");
        Node node = at(mark, Node::What::Text);
        node.plain = true;
        put(std::move(node));
    }
    void OnNull(const YAML::Mark &mark, YAML::anchor_t) override
    {
        tick(mark);
        note(DiagnosticKind::EmptyValue, behindColon(mark), isKey() ? "a key without a name" : "no value",
             "write a value after the colon; the words null and ~ stand in quotes");
        Node node = at(mark, Node::What::Text);
        node.plain = true; // a plain text that is empty: said here, and never again
        put(std::move(node));
    }
    void OnScalar(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t, const std::string &value) override
    {
        tick(mark);
        Node node = at(mark, Node::What::Text);
        node.plain = tag == "?";
        node.text = value;
        checkScalar(mark, tag, node);
        put(std::move(node));
    }
    void OnSequenceStart(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t, YAML::EmitterStyle::value) override
    {
        open(mark, tag, Node::What::List);
    }
    void OnMapStart(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t, YAML::EmitterStyle::value) override
    {
        open(mark, tag, Node::What::Map);
    }
    void OnSequenceEnd() override { close(); }
    void OnMapEnd() override { close(); }

    // What may be behind a fault that the parser found only later.
    std::string suspicion() const
    {
        if (m_longQuote > 0)
            return fmt::format("the quote that is opened in line {} ends lines below: was one forgotten?", m_longQuote);
        for (auto open = m_open.rbegin(); open != m_open.rend(); ++open)
            if (const char c = sourceAt(open->offset); c == '[' || c == '{')
                return fmt::format("the {} that is opened in line {} is not closed, or a comma is missing",
                                   c == '[' ? "bracket" : "brace", open->line);
        return "look at this line and the one above: a colon without a blank, a wrong indentation, a text that needs quotes";
    }
    void note(DiagnosticKind kind, const YAML::Mark &mark, std::string what, std::string hint)
    {
        m_found.push_back({kind, m_document.place(at(mark, Node::What::Text)), std::move(what), std::move(hint)});
    }

private:
    static Node at(const YAML::Mark &mark, Node::What what)
    {
        Node node;
        node.what = what;
        node.line = mark.line + 1;
        node.offset = static_cast<std::size_t>(std::max(0, mark.pos));
        return node;
    }
    // yaml-cpp marks a missing value at what comes next: lines below, at worst
    YAML::Mark behindColon(YAML::Mark mark) const
    {
        while (mark.pos > 0 &&
               std::string_view(" \r\n\0", 4).find(sourceAt(static_cast<std::size_t>(mark.pos) - 1)) != std::string_view::npos) {
            --mark.pos;
            mark.line -= sourceAt(static_cast<std::size_t>(mark.pos)) == '\n' ? 1 : 0;
        }
        return mark;
    }
    [[noreturn]] void stop(DiagnosticKind kind, const YAML::Mark &mark, std::string what, std::string hint)
    {
        note(kind, mark, std::move(what), std::move(hint));
        throw Broken{};
    }
    void tick(const YAML::Mark &mark)
    {
        if (closed)
            stop(DiagnosticKind::MoreThanOne, mark, "something after the end of the content",
                 "check the indentation; one file holds one thing");
        if (++m_nodes > kMostNodes)
            stop(DiagnosticKind::TooMuch, mark, "too many values", fmt::format("{} at most", kMostNodes));
    }
    bool isKey() const { return !m_open.empty() && m_open.back().isMap() && m_open.back().items.size() % 2 == 0; }
    char sourceAt(std::size_t offset) const { return offset < m_document.text.size() ? m_document.text[offset] : '\0'; }

    void checkScalar(const YAML::Mark &mark, const std::string &tag, const Node &node)
    {
        const char first = sourceAt(node.offset);
        if ((tag != "?" && tag != "!" && !tag.empty()) || (tag == "!" && first == '!'))
            note(DiagnosticKind::Tag, mark, "a tag", "take out the word that begins with !");
        if (first == '"' || first == '\'')
            checkQuote(mark, node.offset);
        if (node.text.size() > kMostText)
            stop(DiagnosticKind::TooMuch, mark, "too long a text", fmt::format("{} bytes at most", kMostText));
        if (node.plain && isYesOrNo(node.text))
            note(DiagnosticKind::BareWord, mark, fmt::format("`{}` without quotes", node.text),
                 fmt::format("write \"{}\"", node.text));
        if (node.plain && first == ':')
            note(DiagnosticKind::StrayColon, mark, "a value that begins with a colon",
                 "take the colon out, or put the value in quotes");
    }
    // yaml-cpp 0.7 takes the rest of the file for the text of a quote that is never closed
    void checkQuote(const YAML::Mark &mark, std::size_t from)
    {
        const std::string_view text = m_document.text;
        const std::size_t to = quoteEnd(text, from);
        if (to == std::string_view::npos)
            stop(DiagnosticKind::OpenQuote, mark, "a quote that is opened here and never closed", "close it");
        if (m_longQuote == 0 && text.substr(from, to - from).find('\n') != std::string_view::npos)
            m_longQuote = mark.line + 1;
    }
    void open(const YAML::Mark &mark, const std::string &tag, Node::What what)
    {
        tick(mark);
        if (tag != "?" && !tag.empty())
            note(DiagnosticKind::Tag, mark, "a tag", "take out the word that begins with !");
        if (m_open.size() >= static_cast<std::size_t>(kMostDepth))
            stop(DiagnosticKind::TooMuch, mark, "brackets or indentation nested too deep",
                 fmt::format("{} levels at most", kMostDepth));
        if (isKey())
            note(DiagnosticKind::OddKey, mark, "a list or map in the place of a key", "keys are words");
        m_open.push_back(at(mark, what));
    }
    void close()
    {
        Node node = std::move(m_open.back());
        m_open.pop_back();
        if (node.isMap())
            findDuplicates(node);
        put(std::move(node));
    }
    void put(Node &&node)
    {
        if (m_open.empty())
            root = std::move(node);
        else
            m_open.back().items.push_back(std::move(node));
    }
    void findDuplicates(const Node &map)
    {
        m_keys.clear();
        for (std::size_t i = 0; i + 1 < map.items.size(); i += 2)
            if (map.items[i].isText())
                m_keys.push_back(&map.items[i]);
        std::ranges::sort(
            m_keys, [](const Node *a, const Node *b) { return a->text != b->text ? a->text < b->text : a->offset < b->offset; });
        for (std::size_t i = 1; i < m_keys.size(); ++i)
            if (m_keys[i]->text == m_keys[i - 1]->text)
                m_found.push_back({DiagnosticKind::DuplicateKey, m_document.place(*m_keys[i]),
                                   fmt::format("`{}` a second time", m_keys[i]->text),
                                   fmt::format("it stands in line {} already", m_keys[i - 1]->line)});
    }

    const Document &m_document;
    std::vector<Diagnostic> &m_found;
    std::vector<Node> m_open;
    std::vector<const Node *> m_keys;
    std::size_t m_nodes = 0;
    int m_longQuote = 0; // the line of the first quoted text that runs over its line; 0: none
};

void parse(Document &document, std::vector<Diagnostic> &found)
{
    Builder builder(document, found);
    try {
        ViewBuffer buffer(document.text);
        std::istream in(&buffer);
        YAML::Parser parser(in);
        if (!parser.HandleNextDocument(builder))
            found.push_back({DiagnosticKind::EmptyFile, {document.file, 0, 0}, "nothing in the file", "begin with `format: 1`"});
        builder.closed = true; // once more and never in a loop: `,` alone keeps yaml-cpp 0.7 busy for ever
        parser.HandleNextDocument(builder);
    } catch (const Broken &) {
        // noted where it was found
    } catch (const YAML::Exception &e) {
        const bool more = builder.closed; // the parser stumbles over what follows the one document
        builder.note(more ? DiagnosticKind::MoreThanOne : DiagnosticKind::NotYaml, e.mark,
                     more ? "something after the end of the content" : e.msg, builder.suspicion());
    } catch (const std::exception &e) {
        found.push_back({DiagnosticKind::NotYaml, {document.file, 0, 0}, e.what(), ""});
    }
    document.root = std::move(builder.root);
}

} // namespace

const Node *Node::value(std::string_view name) const
{
    const Node *found = key(name);
    return found == nullptr ? nullptr : found + 1;
}

const Node *Node::key(std::string_view name) const
{
    if (isMap())
        for (std::size_t i = 0; i + 1 < items.size(); i += 2)
            if (items[i].text == name && items[i].isText())
                return &items[i];
    return nullptr;
}

Document documentOf(std::string_view text, std::string file, std::vector<Diagnostic> &found)
{
    if (text.starts_with("\xEF\xBB\xBF"))
        text.remove_prefix(3);
    Document document{std::move(file), std::string(text), {}};
    if (checkText(document, found))
        parse(document, found);
    return document;
}

} // namespace core
