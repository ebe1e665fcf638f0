// Every faulty file of tests/golden/bad says itself what is wrong with it, on its first lines:
//   #! 7:12 unknown-step did you mean `ohm`?     line, column, kind, and optionally words of the message or the hint
//   #* 10001 x                                   the text goes on with a comment of so many of this character
// Each is loaded in front of the sound content of tests/golden/good; x_b.yaml needs x_a.yaml beside it.
#include "core/load/load.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <ostream>
#include <sstream>

namespace core {
namespace {

namespace fs = std::filesystem;

std::string contentOf(const fs::path &file)
{
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

struct Wanted
{
    std::string place; // "7:12"
    std::string slug;
    std::string words;
};

struct BadFile
{
    std::string name, text;
    std::vector<Wanted> wanted;
};

BadFile badFile(const fs::path &path)
{
    BadFile file{path.filename().string(), contentOf(path), {}};
    std::istringstream lines(file.text);
    std::string line, grown;
    while (std::getline(lines, line) && line.starts_with("#")) {
        std::istringstream words(line.substr(line.size() < 3 ? line.size() : 3));
        if (line.starts_with("#! ")) {
            Wanted w;
            words >> w.place >> w.slug >> std::ws;
            std::getline(words, w.words);
            file.wanted.push_back(w);
        } else if (line.starts_with("#* ")) {
            std::size_t count = 0;
            char c = ' ';
            words >> count >> c;
            grown = "#" + std::string(count - 1, c) + "\n";
        }
    }
    file.text += grown;
    return file;
}

std::vector<BadFile> badFiles()
{
    std::vector<BadFile> files;
    for (const auto &entry : fs::directory_iterator(fs::path(GOLDEN) / "bad"))
        files.push_back(badFile(entry.path()));
    std::ranges::sort(files, {}, &BadFile::name);
    return files;
}

// The faulty file, its other half if it has one, and the good content behind them.
Loaded loadBeforeTheGood(const BadFile &file)
{
    std::vector<SourceText> texts{{file.name, file.text, 0, true}};
    if (file.name.ends_with("_b.yaml")) {
        const BadFile other = badFile(fs::path(GOLDEN) / "bad" / (file.name.substr(0, file.name.size() - 6) + "a.yaml"));
        texts.insert(texts.begin(), {other.name, other.text, 0, true});
    }
    for (const auto &entry : fs::recursive_directory_iterator(fs::path(GOLDEN) / "good"))
        if (entry.is_regular_file())
            texts.push_back({fs::relative(entry.path(), GOLDEN).generic_string(), contentOf(entry.path()), 1, false});
    return loadTexts(texts);
}

std::string placeOf(const Diagnostic &d)
{
    return std::to_string(d.place.line) + ":" + std::to_string(d.place.column);
}

void expectAll(const BadFile &file, const std::vector<Diagnostic> &diagnostics)
{
    std::vector<const Diagnostic *> given;
    for (const Diagnostic &d : diagnostics)
        if (d.place.file == file.name)
            given.push_back(&d);
    for (const Wanted &w : file.wanted) {
        const auto at = std::ranges::find_if(given, [&](const Diagnostic *d) {
            return placeOf(*d) == w.place && slugOf(d->kind) == w.slug && toText(*d).find(w.words) != std::string::npos;
        });
        EXPECT_NE(at, given.end()) << file.name << ": missing " << w.place << " " << w.slug << " " << w.words;
        if (at != given.end())
            given.erase(at);
    }
    for (const Diagnostic *d : given)
        ADD_FAILURE() << "unexpected [" << slugOf(d->kind) << "] " << toText(*d);
}

class BadContent : public testing::TestWithParam<BadFile>
{
};

TEST_P(BadContent, GetsExactlyWhatItNames)
{
    expectAll(GetParam(), loadBeforeTheGood(GetParam()).diagnostics);
}

TEST_P(BadContent, LeavesTheOthersUsable)
{
    const Loaded loaded = loadBeforeTheGood(GetParam());
    for (const Diagnostic &d : loaded.diagnostics)
        EXPECT_FALSE(d.place.file.starts_with("good/")) << toText(d);
    EXPECT_NE(loaded.library.tree("kettle/cold"), nullptr);
    EXPECT_FALSE(loaded.library.faulty.contains("kettle/cold"));
}

TEST_P(BadContent, IsSpokenOfInTheMannerOfTheHouse)
{
    for (const Diagnostic &d : loadBeforeTheGood(GetParam()).diagnostics) {
        EXPECT_FALSE(d.text.empty()) << slugOf(d.kind);
        EXPECT_FALSE(d.text.ends_with('.')) << d.text;
        EXPECT_FALSE(d.text.front() >= 'A' && d.text.front() <= 'Z') << d.text;
        EXPECT_FALSE(d.hint.ends_with('.')) << d.hint;
        EXPECT_EQ(toText(d).find('\x07'), std::string::npos) << "control characters are shown, not sent to a terminal";
    }
}

INSTANTIATE_TEST_SUITE_P(Golden, BadContent, testing::ValuesIn(badFiles()),
                         [](const auto &one) { return one.param.name.substr(0, one.param.name.find('.')); });

TEST(LoadGolden, EveryKindOfRemarkIsMetByABadFile)
{
    // links and folders are load_folders_test.cpp's, the walks are said by core/check and never by the loader
    std::set<std::string> met{"cannot-read", "never-reached", "endless-walk", "dead-end", "never-claimed", "case-ends-otherwise"};
    for (const BadFile &file : badFiles())
        for (const Wanted &w : file.wanted)
            met.insert(w.slug);
    for (const DiagnosticKind kind : allDiagnosticKinds())
        EXPECT_TRUE(met.contains(std::string(slugOf(kind)))) << "no file of tests/golden/bad meets " << slugOf(kind);
}

TEST(LoadGolden, TheGoodContentHasNothingToSay)
{
    const Loaded loaded = loadFolders(std::vector{fs::path(GOLDEN) / "good"});
    for (const Diagnostic &d : loaded.diagnostics)
        ADD_FAILURE() << toText(d);
    EXPECT_EQ(loaded.library.kinds.size(), 4U);
    EXPECT_EQ(loaded.library.trees.size(), 1U);
    EXPECT_EQ(loaded.library.cases.size(), 2U);
    EXPECT_TRUE(loaded.library.faulty.empty());
}

} // namespace
} // namespace core
