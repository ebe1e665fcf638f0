// What a check looks at, and the words and figures it knows; and the record of a damaged job.
#include "app/cli/check.h"
#include "app/cli/job_of.h"
#include "core/check/check.h"
#include "core/session/event_text.h"
#include "tests/support/scratch_folder.h"
#include "tests/support/walker.h"

#include <gmock/gmock.h>

namespace app {
namespace {

using core::Diagnostic;
using core::DiagnosticKind;
using ::testing::Contains;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

// The small kettle that teaches an author: invented.
std::map<std::string, std::string> kettle()
{
    std::map<std::string, std::string> files;
    const std::filesystem::path folder = GOLDEN "/good";
    for (const auto &entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.path().extension() == ".yaml")
            files[entry.path().lexically_relative(folder).generic_string()] = core::textOf(entry.path().string());
    return files;
}

class Checked : public ::testing::Test
{
protected:
    void SetUp() override
    {
        m_files = kettle();
        ASSERT_TRUE(m_files.contains("kettle/cold.yaml"));
        ASSERT_TRUE(m_files.contains("kettle/appliance.yaml"));
    }
    void change(const std::string &file, const std::string &from, const std::string &to)
    {
        std::string &text = m_files.at(file);
        ASSERT_NE(text.find(from), std::string::npos) << file << ": " << from;
        text.replace(text.find(from), from.size(), to);
    }
    std::vector<Diagnostic> check(const std::string &what = "")
    {
        for (const auto &[name, text] : m_files) {
            std::filesystem::create_directories((m_folder.path() / name).parent_path());
            test::setBytes(m_folder.path() / name, text);
        }
        const core::Shipped &shipped = core::Shipped::get();
        return checkPaths({what.empty() ? m_folder.path() : m_folder.path() / what}, TREES, shipped.phrases, shipped.safety);
    }
    static ::testing::Matcher<const Diagnostic &> fault(DiagnosticKind kind, const std::string &text)
    {
        return ::testing::AllOf(Field(&Diagnostic::kind, kind), Field(&Diagnostic::text, HasSubstr(text)));
    }

    test::ScratchFolder m_folder;
    std::map<std::string, std::string> m_files;
};

TEST_F(Checked, TheKettleOfThePageIsSound)
{
    EXPECT_THAT(check(), IsEmpty());
}

TEST_F(Checked, ATreeByItselfFindsItsApplianceBesideIt)
{
    EXPECT_THAT(check("kettle/cold.yaml"), IsEmpty());
    change("kettle/cold.yaml", "{claim: boil_dry_cutout}", "{claim: boil_dry_cutoot}");
    EXPECT_THAT(check("kettle/cold.yaml"), Contains(fault(DiagnosticKind::UnknownSuspect, "boil_dry_cutoot")));
}

TEST_F(Checked, AKindBringsTheTreesThatLeanOnItAndNoOthers)
{
    change("kettle/cases.yaml", "parts: [kettle_element]", "parts: [boil_dry_cutout]"); // its case ends otherwise now
    m_files["kinds/spare_element.yaml"] = m_files.at("kinds/kettle_element.yaml");
    change("kinds/spare_element.yaml", "kind: kettle_element", "kind: spare_element");
    check();
    const core::Shipped &shipped = core::Shipped::get();
    const auto about = [&](const char *file) { // the kettle's folder stands for the shipped one
        return checkPaths({m_folder.path() / file}, m_folder.path(), shipped.phrases, shipped.safety);
    };
    const auto wrongCase = Contains(fault(DiagnosticKind::CaseEndsOtherwise, "ends otherwise"));
    EXPECT_THAT(about("kinds/kettle_element.yaml"), wrongCase);
    EXPECT_THAT(about("kettle/appliance.yaml"), wrongCase);
    EXPECT_THAT(about("kettle/cases.yaml"), wrongCase);
    EXPECT_FALSE(core::hasFault(about("kinds/spare_element.yaml")));
}

TEST_F(Checked, AFileNamedIsNotReadTwice)
{
    const core::Shipped &shipped = core::Shipped::get();
    test::ScratchFolder data;
    std::filesystem::create_directories(data.path() / "trees/kinds");
    change("kettle/cold.yaml", "{claim: boil_dry_cutout}", "{claim: boil_dry_cutoot}");
    for (const auto &[name, text] : m_files) {
        std::filesystem::create_directories((data.path() / "trees" / name).parent_path());
        test::setBytes(data.path() / "trees" / name, text);
    }
    const auto found =
        checkPaths({data.path() / "trees/kettle/cold.yaml"}, data.path() / "trees", shipped.phrases, shipped.safety);
    EXPECT_EQ(std::ranges::count_if(found, [](const Diagnostic &d) { return d.kind == DiagnosticKind::UnknownSuspect; }), 1);
}

TEST_F(Checked, TradesAndHazardsAreKnownWords)
{
    change("kettle/cold.yaml", "{call: electrician, for: outlet.dead}", "{call: electrcian, for: outlet.dead}");
    change("kettle/appliance.yaml", "[hot_surface]", "[hot_surface, lava]");
    const auto found = check();
    EXPECT_THAT(found, Contains(fault(DiagnosticKind::UnknownWord, "`electrcian` is no trade")));
    EXPECT_THAT(found, Contains(fault(DiagnosticKind::UnknownWord, "`lava` is no hazard")));
}

TEST_F(Checked, SharesArePartsOfAWhole)
{
    change("kinds/kettle_element.yaml", "ground: {share: 20", "ground: {share: 35");
    EXPECT_THAT(check(), Contains(fault(DiagnosticKind::OutOfRange, "115 of 100")));
}

TEST_F(Checked, LimitsAreInWhatIsMeasured)
{
    change("kinds/kettle_element.yaml", "bad_below: 100 kohm", "bad_below: 100 V");
    EXPECT_TRUE(core::hasFault(check()));
}

// ---- the record of a damaged job --------------------------------------------------------------------------------------

TEST(DamagedJob, HasNoVerdictOnItsRecord)
{
    test::ScratchFolder folder;
    const core::Content content = core::Shipped::get().content();
    const std::filesystem::path file = folder.path() / "0412-KTR.jsonl";
    core::Walker walker("dryer_elec/no_heat");
    walker.toTheEnd();
    std::string hash = firstHash("0412-KTR"), bytes;
    for (std::size_t n = 0; n < walker.kept.size(); ++n) {
        hash = lineHash(hash, n + 1, walker.kept[n]);
        bytes += storedLine(n + 1, walker.kept[n], hash);
    }
    test::setBytes(file, bytes);
    const auto whole = jobAsItWas(content, file.string());
    ASSERT_TRUE(whole);
    EXPECT_FALSE(whole->damaged);
    EXPECT_THAT(recordText(recordOfJob(*whole, "0412-KTR")), ::testing::Not(HasSubstr("Damaged")));
    const std::size_t fifth = bytes.find("\"seq\":5");
    bytes[bytes.find("event", fifth) + 12] ^= 1;
    test::setBytes(file, bytes);
    const auto damaged = jobAsItWas(content, file.string());
    ASSERT_TRUE(damaged);
    EXPECT_TRUE(damaged->damaged);
    const Record record = recordOfJob(*damaged, "0412-KTR");
    EXPECT_EQ(record.verdict, "Damaged: no verdict");
    EXPECT_THAT(record.sentence, HasSubstr("entry 5 is not what was written"));
    EXPECT_FALSE(record.proven);
}

} // namespace
} // namespace app
