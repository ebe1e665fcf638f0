// main() of every test without Qt. MF_TEST_LOCALE names a locale for C and C++ alike: the engine must read and write
// numbers the same way whatever the machine's decimal sign is.
#include <gtest/gtest.h>

#include <clocale>
#include <cstdio>
#include <cstdlib>
#include <locale>
#include <stdexcept>

namespace {

bool useLocale(const char *name)
{
    try {
        std::locale::global(std::locale(name)); // sets the C locale too
    } catch (const std::runtime_error &) {
        return false;
    }
    return std::localeconv()->decimal_point[0] == ',';
}

} // namespace

int main(int argc, char **argv)
{
    testing::InitGoogleTest(&argc, argv);
    const char *name = std::getenv("MF_TEST_LOCALE");
    if (name != nullptr && !useLocale(name)) {
        std::fprintf(stderr, "no locale %s with a decimal comma here\n", name);
        return 1;
    }
    return RUN_ALL_TESTS();
}
