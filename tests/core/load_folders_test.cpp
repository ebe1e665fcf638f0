// Folders on a disk: order of precedence, what is passed over, what is refused.
#include "core/load/document.h"
#include "core/load/load.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>

namespace core {
namespace {

namespace fs = std::filesystem;

class LoadFolders : public testing::Test
{
protected:
    void SetUp() override
    {
        m_root = fs::temp_directory_path() /
                 ("mf_load_" + std::to_string(getpid()) + testing::UnitTest::GetInstance()->current_test_info()->name());
        fs::create_directories(m_root);
    }
    void TearDown() override
    {
        std::error_code ignored;
        fs::remove_all(m_root, ignored);
    }
    fs::path write(const std::string &name, const std::string &text) const
    {
        const fs::path path = m_root / name;
        fs::create_directories(path.parent_path());
        std::ofstream(path, std::ios::binary) << text;
        return path;
    }
    Loaded load(std::initializer_list<const char *> folders) const
    {
        std::vector<fs::path> paths;
        for (const auto *folder : folders)
            paths.push_back(m_root / folder);
        return loadFolders(paths);
    }
    static std::string kind(const std::string &id, const std::string &name)
    {
        return "format: 1\nkind: " + id + "\nname: " + name + "\nfails: {worn: {share: 1}}\n";
    }

    fs::path m_root;
};

bool says(const Loaded &loaded, DiagnosticKind kind, const std::string &file)
{
    return std::ranges::any_of(loaded.diagnostics,
                               [&](const Diagnostic &d) { return d.kind == kind && d.place.file.ends_with(file); });
}

TEST_F(LoadFolders, TheShopsComesBeforeTheUsersBeforeTheShipped)
{
    write("shop/kinds/a.yaml", kind("a", "shop"));
    write("user/kinds/a.yaml", kind("a", "user"));
    write("user/kinds/b.yaml", kind("b", "user"));
    write("shipped/kinds/b.yaml", kind("b", "shipped"));
    write("shipped/kinds/c.yaml", kind("c", "shipped"));
    const Loaded loaded = load({"shop", "user", "shipped"});
    EXPECT_TRUE(loaded.diagnostics.empty());
    EXPECT_EQ(loaded.library.kind("a")->name, "shop");
    EXPECT_EQ(loaded.library.kind("b")->name, "user");
    EXPECT_EQ(loaded.library.kind("c")->name, "shipped");
}

TEST_F(LoadFolders, AMissingFolderOfOnesOwnIsNoFaultTheShippedOneIs)
{
    write("shipped/kinds/c.yaml", kind("c", "shipped"));
    EXPECT_TRUE(load({"nowhere", "shipped"}).diagnostics.empty());
    EXPECT_TRUE(says(load({"shipped", "nowhere"}), DiagnosticKind::CannotRead, "nowhere"));
    EXPECT_TRUE(loadFolders({}).diagnostics.empty());
}

TEST_F(LoadFolders, APathMayBeOneFile)
{
    write("x/one.yaml", kind("one", "One"));
    write("x/two.yaml", kind("two", "Two"));
    EXPECT_EQ(load({"x/one.yaml"}).library.kinds.size(), 1U);
}

TEST_F(LoadFolders, OtherFilesArePassedOver)
{
    write("x/README.md", "no content");
    write("x/pack.yaml", "name: a pack");
    write("x/.hidden.yaml", "not: read");
    write("x/kinds/a.yaml~", "not: read");
    write("x/d/no_heat.de.yaml", "complaint: Kalt");
    write("x/kinds/a.yaml", kind("a", "A"));
    const Loaded loaded = load({"x"});
    EXPECT_TRUE(loaded.diagnostics.empty());
    EXPECT_EQ(loaded.library.kinds.size(), 1U);
}

TEST_F(LoadFolders, LinksAndDevicesAreNotFollowed)
{
    const fs::path outside = write("outside/secret.yaml", kind("secret", "Secret"));
    fs::create_directories(m_root / "x/kinds");
    fs::create_symlink(outside, m_root / "x/kinds/link.yaml");
    fs::create_directory_symlink(m_root / "outside", m_root / "x/folder");
    ASSERT_EQ(mkfifo((m_root / "x/kinds/pipe.yaml").c_str(), 0600), 0);
    const Loaded loaded = load({"x"});
    EXPECT_TRUE(says(loaded, DiagnosticKind::CannotRead, "link.yaml"));
    EXPECT_TRUE(says(loaded, DiagnosticKind::CannotRead, "pipe.yaml"));
    EXPECT_EQ(loaded.library.kind("secret"), nullptr);
}

TEST_F(LoadFolders, AFileTooLargeIsNotReadAtAll)
{
    write("x/kinds/big.yaml", kind("big", "Big") + std::string(kMostBytes, '#'));
    write("x/kinds/a.yaml", kind("a", "A"));
    const Loaded loaded = load({"x"});
    EXPECT_TRUE(says(loaded, DiagnosticKind::TooLarge, "big.yaml"));
    EXPECT_NE(loaded.library.kind("a"), nullptr);
}

TEST_F(LoadFolders, FoldersAreReadToTheFourthLevel)
{
    write("x/1/2/3/4/a.yaml", kind("a", "A"));
    write("x/1/2/3/4/5/b.yaml", kind("b", "B"));
    const Loaded loaded = load({"x"});
    EXPECT_NE(loaded.library.kind("a"), nullptr);
    EXPECT_EQ(loaded.library.kind("b"), nullptr);
}

TEST_F(LoadFolders, AFileThatCannotBeReadIsSaid)
{
    fs::permissions(write("x/kinds/a.yaml", kind("a", "A")), fs::perms::none);
    const uid_t me = geteuid();
    if (me == 0) { // root may read everything
        ASSERT_EQ(seteuid(65534), 0);
    }
    const Loaded loaded = load({"x"});
    ASSERT_EQ(seteuid(me), 0);
    EXPECT_TRUE(says(loaded, DiagnosticKind::CannotRead, "a.yaml"));
}

TEST_F(LoadFolders, AnUnreadableFileIsKnownByItsName)
{
    write("x/kinds/a.yaml", "format: 1\nkind: \"a\nname: A\n");
    write(
        "x/m/appliance.yaml",
        "format: 1\nappliance: m\nname: M\nsupplied_by: cord\nplaces: {p: {minutes: 1, say: \"P\"}}\ncomponents: {a: {at: p}}\n");
    const Loaded loaded = load({"x"});
    ASSERT_EQ(loaded.diagnostics.size(), 1U);
    EXPECT_TRUE(loaded.diagnostics[0].place.file.ends_with("a.yaml"));
    EXPECT_TRUE(loaded.library.faulty.contains("a"));
    EXPECT_TRUE(loaded.library.faulty.contains("m"));
}

} // namespace
} // namespace core
