// Two readers of one text: whatever our loader takes, libyaml takes too and reads the same words in it. Every sound file is
// changed by one character, many times over; YAML that is only nearly right is where readers differ. (yaml-cpp by itself
// accepts about one in a hundred such texts that libyaml refuses.)
#include "core/base/random.h"
#include "core/load/document.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <yaml.h>

namespace core {
namespace {

namespace fs = std::filesystem;

// Every scalar in the order of the text; nullopt where libyaml refuses the text, or finds more than one document.
std::optional<std::vector<std::string>> wordsOfLibyaml(const std::string &text)
{
    yaml_parser_t parser;
    yaml_parser_initialize(&parser);
    yaml_parser_set_input_string(&parser, reinterpret_cast<const unsigned char *>(text.data()), text.size());
    std::vector<std::string> words;
    int documents = 0;
    for (bool done = false; !done;) {
        yaml_event_t event;
        if (yaml_parser_parse(&parser, &event) == 0) {
            yaml_parser_delete(&parser);
            return std::nullopt;
        }
        if (event.type == YAML_SCALAR_EVENT)
            words.emplace_back(reinterpret_cast<const char *>(event.data.scalar.value), event.data.scalar.length);
        documents += event.type == YAML_DOCUMENT_START_EVENT ? 1 : 0;
        done = event.type == YAML_STREAM_END_EVENT;
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
    return documents == 1 ? std::optional(words) : std::nullopt;
}

void wordsOf(const Node &node, std::vector<std::string> &words)
{
    if (node.isText())
        words.push_back(node.text);
    for (const Node &item : node.items)
        wordsOf(item, words);
}

std::optional<std::vector<std::string>> wordsOfOurs(const std::string &text)
{
    std::vector<Diagnostic> found;
    const Document document = documentOf(text, "x.yaml", found);
    if (hasFault(found))
        return std::nullopt;
    std::vector<std::string> words;
    wordsOf(document.root, words);
    return words;
}

std::string changed(std::string text, Random &random)
{
    static const std::string kCharacters = "\"':,[]{}#&*!|>-?%@` \t\n\\aZ0.~=<";
    const auto at = static_cast<std::size_t>(random.below(static_cast<int>(text.size())));
    const char c = kCharacters[static_cast<std::size_t>(random.below(static_cast<int>(kCharacters.size())))];
    switch (random.below(4)) {
    case 0:
        text.erase(at, 1);
        break;
    case 1:
        text.insert(at, 1, c);
        break;
    case 2:
        text[at] = c;
        break;
    default:
        std::swap(text[at], text[std::min(at + 1, text.size() - 1)]);
        break;
    }
    return text;
}

TEST(LoadDifferential, NothingIsTakenThatLibyamlRefusesOrReadsOtherwise)
{
    constexpr int kTries = 150; // a file
    Random random(4);
    int taken = 0, refused = 0, onlyTheirs = 0;
    for (const auto &entry : fs::recursive_directory_iterator(fs::path(GOLDEN) / "good")) {
        if (!entry.is_regular_file())
            continue;
        std::ifstream in(entry.path(), std::ios::binary);
        const std::string sound{std::istreambuf_iterator<char>(in), {}};
        ASSERT_EQ(wordsOfOurs(sound), wordsOfLibyaml(sound)) << entry.path();
        for (int i = 0; i < kTries; ++i) {
            const std::string text = changed(sound, random);
            const auto ours = wordsOfOurs(text), theirs = wordsOfLibyaml(text);
            (ours ? taken : refused) += 1;
            onlyTheirs += !ours && theirs ? 1 : 0;
            if (ours) {
                EXPECT_EQ(ours, theirs) << entry.path() << "\n" << text;
            }
        }
    }
    EXPECT_GT(taken, 300) << "most changes of one character are still YAML";
    EXPECT_GT(refused, 100) << "and many are not: the comparison has both sides";
    RecordProperty("taken by libyaml alone", onlyTheirs);
}

} // namespace
} // namespace core
