// Times written by ISO 8601; the seconds since 1970 are widely published ones.
#include "core/base/clock.h"

#include <gtest/gtest.h>

using namespace core;

namespace {

TEST(IsoTime, KnownInstants)
{
    EXPECT_EQ(isoTime(0), "1970-01-01T00:00:00.000Z");
    EXPECT_EQ(isoTime(1'000'000'000'000), "2001-09-09T01:46:40.000Z");
    EXPECT_EQ(isoTime(1'234'567'890'123), "2009-02-13T23:31:30.123Z");
    EXPECT_EQ(isoTime(951'782'400'000), "2000-02-29T00:00:00.000Z");   // 2000 was a leap year
    EXPECT_EQ(isoTime(2'147'483'648'000), "2038-01-19T03:14:08.000Z"); // one second past a 32 bit clock
}

TEST(IsoTime, BeforeTheEpoch)
{
    EXPECT_EQ(isoTime(-1), "1969-12-31T23:59:59.999Z");
    EXPECT_EQ(isoTime(-1000), "1969-12-31T23:59:59.000Z");
    EXPECT_EQ(isoTime(-1001), "1969-12-31T23:59:58.999Z");
}

TEST(Later, MovesBothClocks)
{
    EXPECT_EQ(later({1000, 50}, 1.5), (Instant{2500, 1550}));
    EXPECT_EQ(later({1000, 50}, -1), (Instant{0, -950}));
}

TEST(Now, TheRunningClockNeverGoesBack)
{
    Instant before = now();
    EXPECT_GT(before.wallMs, 1'700'000'000'000); // after 2023
    for (int i = 0; i < 1000; ++i) {
        const Instant after = now();
        ASSERT_GE(after.steadyMs, before.steadyMs);
        before = after;
    }
}

} // namespace
