// What the page for authors shows is true: every file in it is taken out and loaded, and the kettle in it is the kettle of
// tests/golden/good to the letter.
#include "core/load/load.h"
#include "core/tree/reading_names.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <sstream>

namespace core {
namespace {

namespace fs = std::filesystem;

std::string contentOf(const fs::path &file)
{
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

// The blocks between ```yaml and ```; the first line of each is a comment with its path.
std::vector<SourceText> filesOfThePage()
{
    std::vector<SourceText> files;
    std::istringstream page(contentOf(fs::path(TREES) / "README.md"));
    bool inside = false;
    for (std::string line; std::getline(page, line);) {
        if (line == "```yaml") {
            inside = true;
            files.push_back({});
        } else if (line.starts_with("```")) {
            inside = false;
        } else if (inside) {
            if (files.back().text.empty())
                files.back().file = line.substr(std::min<std::size_t>(2, line.size()));
            files.back().text += line + "\n";
        }
    }
    return files;
}

TEST(LoadReadme, EveryFileInItLoadsWithoutARemark)
{
    const std::vector<SourceText> files = filesOfThePage();
    ASSERT_GE(files.size(), 9U);
    const Loaded loaded = loadTexts(files);
    for (const Diagnostic &d : loaded.diagnostics)
        ADD_FAILURE() << toText(d);
    EXPECT_EQ(loaded.library.trees.size(), 1U);
    EXPECT_TRUE(loaded.library.faulty.empty());
}

TEST(LoadReadme, TheKettleIsThatOfTheTests)
{
    std::size_t met = 0;
    for (const SourceText &file : filesOfThePage()) {
        ASSERT_TRUE(file.file.starts_with("trees/")) << file.file;
        const fs::path good = fs::path(GOLDEN) / "good" / file.file.substr(6);
        if (!fs::exists(good))
            continue;
        EXPECT_EQ(file.text, contentOf(good)) << good;
        ++met;
    }
    EXPECT_EQ(met, 7U);
}

TEST(LoadReadme, TheTableOfReadingsIsWhatTheProgramKnows)
{
    const std::string page = contentOf(fs::path(TREES) / "README.md");
    for (int m = 0; m <= static_cast<int>(Measure::OpensAt); ++m) {
        const auto measure = static_cast<Measure>(m);
        std::string row;
        for (const std::string_view name : readingNames(measure))
            row += (row.empty() ? "" : " · ") + std::string(name);
        std::istringstream lines(page);
        bool found = false;
        for (std::string line; std::getline(lines, line);)
            found = found || (line.starts_with("| ") && line.find(word(measure)) < line.find(" | ", 2) &&
                              line.ends_with("| " + row + " |"));
        EXPECT_TRUE(found) << word(measure) << ": " << row;
    }
}

TEST(LoadReadme, TheMistakeItShowsIsFoundAsItSays)
{
    std::vector<SourceText> files = filesOfThePage();
    for (SourceText &file : files)
        if (const std::size_t at = file.text.find("{good: element, else"); at != std::string::npos) {
            file.text.replace(at, 14, "{good: elment");
            file.file = "kettle/cold.yaml";
        }
    const Loaded loaded = loadTexts(files);
    ASSERT_EQ(loaded.diagnostics.size(), 1U);
    const std::string page = contentOf(fs::path(TREES) / "README.md");
    EXPECT_NE(page.find(toText(loaded.diagnostics[0])), std::string::npos) << toText(loaded.diagnostics[0]);
}

} // namespace
} // namespace core
