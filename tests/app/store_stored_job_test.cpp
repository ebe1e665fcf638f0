#include "app/store/stored_job.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace {

using State = app::StoredJob::State;

std::string fileOf(std::string_view id, const std::vector<std::string> &lines)
{
    std::string bytes;
    std::string hash = app::firstHash(id);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        hash = app::lineHash(hash, i + 1, lines[i]);
        bytes += app::storedLine(i + 1, lines[i], hash);
    }
    return bytes;
}

const std::vector<std::string> kLines = {R"({"do":"start","tree":"dryer_elec/no_heat"})",
                                         R"({"do":"reading","value":"10.8 ohm"})", R"({"do":"answer","value":"air only"})",
                                         R"({"do":"park"})"};

// The digits are those of sha256sum (GNU coreutils 9.1) over what the header says is hashed.
TEST(StoredJob, ChainsLinesByTheHashThatOtherToolsCompute)
{
    const std::string bytes =
        "{\"seq\":1,\"hash\":\"dad5c951dea52331eb585c17a5508e79ab9ff5a461196554ddd923908d7016b8\",\"event\":{\"do\":\"start\"}}\n"
        "{\"seq\":2,\"hash\":\"3a0eada3afbf9b539b944e94cbc1b39bbdda5b11f1da99aa5aa98fd15347ffca\",\"event\":opaque \xc2\xb5}\n";

    const app::StoredJob job = app::parseJob("0001-BCD", bytes);

    EXPECT_EQ(job.note, "");
    EXPECT_EQ(job.lines, (std::vector<std::string>{R"({"do":"start"})", "opaque \xc2\xb5"}));
    EXPECT_EQ(fileOf("0001-BCD", job.lines), bytes);
}

TEST(StoredJob, AnEmptyFileIsAJobWithoutLines)
{
    const app::StoredJob job = app::parseJob("0001-BCD", "");

    EXPECT_EQ(job.state, State::Whole);
    EXPECT_TRUE(job.lines.empty());
}

TEST(StoredJob, CutAnywhereItGivesEveryWholeLineAndSaysWhatIsTorn)
{
    const std::string bytes = fileOf("0001-BCD", kLines);

    for (std::size_t size = 0; size <= bytes.size(); ++size) {
        const std::string_view cut = std::string_view(bytes).substr(0, size);
        const auto whole = static_cast<std::size_t>(std::count(cut.begin(), cut.end(), '\n'));
        const bool clean = cut.empty() || cut.back() == '\n';

        const app::StoredJob job = app::parseJob("0001-BCD", cut);

        ASSERT_EQ(job.lines, std::vector<std::string>(kLines.begin(), kLines.begin() + static_cast<std::ptrdiff_t>(whole)))
            << size;
        ASSERT_EQ(job.state, clean ? State::Whole : State::TornEnd) << size;
        ASSERT_EQ(job.note.empty(), clean) << size;
    }
}

// A file system may give the length of an append without its bytes after a power cut.
TEST(StoredJob, TakesAnEndOfZerosForATornOne)
{
    const app::StoredJob job = app::parseJob("0001-BCD", fileOf("0001-BCD", kLines) + std::string(100, '\0'));

    EXPECT_EQ(job.state, State::TornEnd);
    EXPECT_EQ(job.lines, kLines);
}

TEST(StoredJob, NoticesEverySingleFlippedBit)
{
    const std::string sound = fileOf("0001-BCD", kLines);

    for (std::size_t bit = 0; bit < sound.size() * 8; ++bit) {
        std::string bytes = sound;
        bytes[bit / 8] = static_cast<char>(bytes[bit / 8] ^ (1 << (bit % 8)));
        const auto line =
            static_cast<std::size_t>(std::count(sound.begin(), sound.begin() + static_cast<std::ptrdiff_t>(bit / 8), '\n'));

        const app::StoredJob job = app::parseJob("0001-BCD", bytes);

        ASSERT_NE(job.state, State::Whole) << bit;
        ASSERT_FALSE(job.note.empty()) << bit;
        ASSERT_EQ(job.lines, std::vector<std::string>(kLines.begin(), kLines.begin() + static_cast<std::ptrdiff_t>(line))) << bit;
        ASSERT_TRUE(job.state == State::Damaged || line + 1 == kLines.size()) << bit;
    }
}

TEST(StoredJob, NoticesLinesLeftOutDoubledSwappedOrFromAnotherJob)
{
    const std::string sound = fileOf("0001-BCD", kLines);
    std::vector<std::string> parts;
    for (std::size_t from = 0; from < sound.size(); from = sound.find('\n', from) + 1)
        parts.push_back(sound.substr(from, sound.find('\n', from) + 1 - from));
    ASSERT_EQ(parts.size(), 4U);

    EXPECT_EQ(app::parseJob("0001-BCD", parts[0] + parts[2] + parts[3]).lines.size(), 1U);
    EXPECT_EQ(app::parseJob("0001-BCD", parts[0] + parts[0] + parts[1]).lines.size(), 1U);
    EXPECT_EQ(app::parseJob("0001-BCD", parts[1] + parts[0] + parts[2]).lines.size(), 0U);
    const app::StoredJob other = app::parseJob("0002-BCD", sound);
    EXPECT_EQ(other.state, State::Damaged);
    EXPECT_TRUE(other.lines.empty());
}

} // namespace
