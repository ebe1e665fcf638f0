#include "core/gate/power.h"

#include <array>
#include <cstddef>

namespace core {

std::string_view word(Power power)
{
    constexpr auto kWords = std::to_array<std::string_view>(
        {"unknown", "off_unproven", "isolated", "proven_dead", "running", "energized", "stopped"});
    return kWords[static_cast<std::size_t>(power)];
}

std::string_view word(StepClass stepClass)
{
    constexpr auto kWords = std::to_array<std::string_view>({"A", "AP", "D", "DS", "R", "E1", "E2", "E3", "EO", "P", "X"});
    return kWords[static_cast<std::size_t>(stepClass)];
}

std::string_view word(Screen screen)
{
    constexpr auto kWords = std::to_array<std::string_view>({"S0", "S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8", "S9", "S10",
                                                             "S11", "S12", "S13", "S14", "EO"});
    return kWords[static_cast<std::size_t>(screen)];
}

} // namespace core
