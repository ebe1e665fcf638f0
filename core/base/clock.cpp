#include "core/base/clock.h"

#include <chrono>
#include <cmath>
#include <fmt/chrono.h>

namespace core {

Instant now()
{
    using namespace std::chrono;
    return {duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count(),
            duration_cast<milliseconds>(steady_clock::now().time_since_epoch()).count()};
}

Instant later(Instant from, double seconds)
{
    const auto ms = static_cast<std::int64_t>(std::llround(seconds * 1000));
    return {from.wallMs + ms, from.steadyMs + ms};
}

std::string isoTime(std::int64_t wallMs)
{
    const std::int64_t second = wallMs >= 0 ? wallMs / 1000 : (wallMs - 999) / 1000;
    return fmt::format("{:%Y-%m-%dT%H:%M:%S}.{:03}Z", fmt::gmtime(static_cast<std::time_t>(second)), wallMs - second * 1000);
}

} // namespace core
