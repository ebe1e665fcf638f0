#include "core/gate/texts.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <set>

namespace core {
namespace {

using Json = nlohmann::json;
using Words = std::map<std::string, std::string>;

// Reads one file; the first thing that is wrong is kept, and everything after it is of no interest.
class Reader
{
public:
    SafetyTexts texts(const Json &root);
    const std::string &error() const { return m_error; }

private:
    void wrong(std::string_view where, std::string_view what)
    {
        if (m_error.empty())
            m_error = fmt::format("{}: {}", where, what);
    }
    bool known(const Json &object, std::string_view where, std::initializer_list<std::string_view> keys);
    std::string string(const Json &object, const char *key, std::string_view where);
    Words words(const Json &object, const char *key, std::string_view where);
    SafetyLine line(const Json &value, std::string_view where);
    SafetyText screen(const Json &value, const std::string &where);
    CallText call(const Json &value, const std::string &where);

    std::string m_error;
};

bool Reader::known(const Json &object, std::string_view where, std::initializer_list<std::string_view> keys)
{
    if (!object.is_object()) {
        wrong(where, "not an object");
        return false;
    }
    for (const auto &item : object.items())
        if (std::ranges::find(keys, item.key()) == keys.end())
            wrong(where, fmt::format("unknown key '{}'", item.key()));
    return true;
}

std::string Reader::string(const Json &object, const char *key, std::string_view where)
{
    const auto it = object.find(key);
    if (it == object.end() || !it->is_string()) {
        wrong(where, fmt::format("'{}' is not a text", key));
        return {};
    }
    return it->get<std::string>();
}

Words Reader::words(const Json &object, const char *key, std::string_view where)
{
    Words out;
    const auto it = object.find(key);
    if (it == object.end() || !it->is_object()) {
        wrong(where, fmt::format("'{}' is not an object", key));
        return out;
    }
    for (const auto &item : it->items()) {
        if (!item.value().is_string())
            wrong(where, fmt::format("'{}.{}' is not a text", key, item.key()));
        else
            out[item.key()] = item.value().get<std::string>();
    }
    return out;
}

SafetyLine Reader::line(const Json &value, std::string_view where)
{
    if (value.is_string())
        return {value.get<std::string>(), {}, false};
    SafetyLine out;
    if (!known(value, where, {"if", "bold", "text"}))
        return out;
    out.bold = value.contains("bold");
    out.text = string(value, out.bold ? "bold" : "text", where);
    if (out.bold && value.contains("text"))
        wrong(where, "a line is bold or plain");
    if (value.contains("if"))
        out.when = string(value, "if", where);
    return out;
}

SafetyText Reader::screen(const Json &value, const std::string &where)
{
    SafetyText out;
    if (!known(value, where, {"version", "word", "word_if", "signs", "lines", "boxes", "ways"}))
        return out;
    const auto version = value.find("version");
    if (version == value.end() || !version->is_number_integer() || *version < 1 || *version > 1'000'000)
        wrong(where, "'version' is not a whole number from 1");
    else
        out.version = version->get<int>();
    out.word = string(value, "word", where);
    if (value.contains("word_if"))
        for (const auto &[condition, word] : words(value, "word_if", where)) {
            out.wordWhen = condition;
            out.wordThen = word;
        }
    const auto signs = value.find("signs"), lines = value.find("lines");
    if (signs == value.end() || !signs->is_array() || lines == value.end() || !lines->is_array()) {
        wrong(where, "'signs' and 'lines' are lists");
        return out;
    }
    for (const Json &sign : *signs) {
        if (sign.is_string())
            out.signs.emplace_back(sign.get<std::string>(), "");
        else if (known(sign, where, {"sign", "if"}))
            out.signs.emplace_back(string(sign, "sign", where), string(sign, "if", where));
    }
    for (const Json &item : *lines)
        out.lines.push_back(line(item, where));
    out.boxes = words(value, "boxes", where);
    out.ways = words(value, "ways", where);
    return out;
}

CallText Reader::call(const Json &value, const std::string &where)
{
    if (!known(value, where, {"why", "who"}))
        return {};
    return {string(value, "why", where), string(value, "who", where)};
}

SafetyTexts Reader::texts(const Json &root)
{
    SafetyTexts out;
    if (!known(root, "file", {"language", "screens", "calls", "lines"}))
        return out;
    out.language = string(root, "language", "file");
    const auto screens = root.find("screens"), calls = root.find("calls");
    if (screens == root.end() || !screens->is_object() || calls == root.end() || !calls->is_object()) {
        wrong("file", "'screens' and 'calls' are objects");
        return out;
    }
    for (const auto &item : screens->items())
        out.screens[item.key()] = screen(item.value(), "screens." + item.key());
    for (const auto &item : calls->items())
        out.calls[item.key()] = call(item.value(), "calls." + item.key());
    out.lines = words(root, "lines", "file");
    return out;
}

// {words} of a text
std::set<std::string> wordsIn(std::string_view text)
{
    std::set<std::string> out;
    for (std::size_t open = text.find('{'); open != std::string_view::npos; open = text.find('{', open + 1)) {
        const std::size_t close = text.find('}', open);
        if (close == std::string_view::npos)
            break;
        out.insert(std::string(text.substr(open + 1, close - open - 1)));
    }
    return out;
}

template<class Map>
std::set<std::string> keysOf(const Map &map)
{
    std::set<std::string> out;
    for (const auto &item : map)
        out.insert(item.first);
    return out;
}

void compareWords(std::vector<std::string> &out, const std::string &where, const Words &original, const Words &translated)
{
    if (keysOf(original) != keysOf(translated))
        out.push_back(where + ": other names");
    const auto differs = [](const std::string &a, const std::string &b) { return b.empty() || wordsIn(a) != wordsIn(b); };
    for (const auto &[id, text] : original)
        if (const auto it = translated.find(id); it != translated.end() && differs(text, it->second))
            out.push_back(where + "." + id + ": empty, or other {words}");
}

void compareScreen(std::vector<std::string> &out, const std::string &id, const SafetyText &original, const SafetyText &translated)
{
    if (original.version != translated.version || original.word != translated.word || original.wordWhen != translated.wordWhen ||
        original.wordThen != translated.wordThen || original.signs != translated.signs)
        out.push_back(id + ": version, signal word or signs differ");
    compareWords(out, id + ".boxes", original.boxes, translated.boxes);
    compareWords(out, id + ".ways", original.ways, translated.ways);
    if (original.lines.size() != translated.lines.size()) {
        out.push_back(id + ": a line is missing or added");
        return;
    }
    for (std::size_t i = 0; i < original.lines.size(); ++i) {
        const SafetyLine &a = original.lines[i], &b = translated.lines[i];
        if (a.when != b.when || a.bold != b.bold || b.text.empty() || wordsIn(a.text) != wordsIn(b.text))
            out.push_back(fmt::format("{}: line {} has another condition, weight or other {{words}}", id, i + 1));
    }
}

} // namespace

Expected<SafetyTexts, std::string> safetyTextsIn(std::string_view json)
{
    const Json root = Json::parse(json, nullptr, false);
    if (root.is_discarded())
        return unexpected(std::string("not JSON"));
    Reader reader;
    SafetyTexts texts = reader.texts(root);
    if (!reader.error().empty())
        return unexpected(reader.error());
    return texts;
}

std::vector<std::string> differences(const SafetyTexts &original, const SafetyTexts &translation)
{
    std::vector<std::string> out;
    if (keysOf(original.screens) != keysOf(translation.screens))
        out.emplace_back("other screens");
    if (keysOf(original.calls) != keysOf(translation.calls))
        out.emplace_back("other calls");
    for (const auto &[id, text] : original.screens)
        if (const auto it = translation.screens.find(id); it != translation.screens.end())
            compareScreen(out, id, text, it->second);
    for (const auto &[zone, text] : translation.calls)
        if (text.why.empty() || text.who.empty())
            out.push_back("calls." + zone + ": empty");
    compareWords(out, "lines", original.lines, translation.lines);
    return out;
}

std::string filled(std::string_view text, const std::map<std::string, std::string> &params)
{
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t open = text.find('{', at), close = text.find('}', open == std::string_view::npos ? at : open);
        if (open == std::string_view::npos || close == std::string_view::npos) {
            out += text.substr(at);
            break;
        }
        const auto value = params.find(std::string(text.substr(open + 1, close - open - 1)));
        out += text.substr(at, open - at);
        out += value == params.end() ? text.substr(open, close - open + 1) : std::string_view(value->second);
        at = close + 1;
    }
    return out;
}

bool holds(std::string_view condition, const std::vector<std::string> &notes)
{
    return std::ranges::all_of(split(condition, ' '), [&](std::string_view word) {
        const bool unless = word.starts_with('!');
        return word.empty() || (std::ranges::find(notes, word.substr(unless ? 1 : 0)) != notes.end()) != unless;
    });
}

std::vector<SafetyLine> linesOf(const SafetyText &text, const std::vector<std::string> &notes,
                                const std::map<std::string, std::string> &params)
{
    std::vector<SafetyLine> out;
    for (const SafetyLine &line : text.lines)
        if (holds(line.when, notes))
            out.push_back({filled(line.text, params), line.when, line.bold});
    return out;
}

std::string wordOf(const SafetyText &text, const std::vector<std::string> &notes)
{
    return !text.wordWhen.empty() && holds(text.wordWhen, notes) ? text.wordThen : text.word;
}

std::vector<std::string> signsOf(const SafetyText &text, const std::vector<std::string> &notes)
{
    std::vector<std::string> out;
    for (const auto &[sign, condition] : text.signs)
        if (holds(condition, notes))
            out.push_back(sign);
    return out;
}

} // namespace core
