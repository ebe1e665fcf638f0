#pragma once
// Two clocks, because a wall clock can be set and a running clock stops with the program. gate.h compares them.
#include <cstdint>
#include <string>

namespace core {

struct Instant
{
    std::int64_t wallMs = 0;   // milliseconds since 1970-01-01T00:00:00Z
    std::int64_t steadyMs = 0; // milliseconds of a clock that never goes back, of this process alone
    friend bool operator==(const Instant &, const Instant &) = default;
};

Instant now();
// Both clocks moved on by the same time.
Instant later(Instant from, double seconds);
// "2026-03-01T10:36:05.250Z"
std::string isoTime(std::int64_t wallMs);

} // namespace core
