#include "core/belief/evidence.h"

#include <algorithm>
#include <tuple>

namespace core {
namespace {

using Given = std::tuple<std::string_view, double, Unit>;

std::vector<Given> flat(const std::map<std::string, Amount> &with)
{
    std::vector<Given> result;
    for (const auto &[id, amount] : with)
        result.emplace_back(id, amount.value, amount.unit);
    return result;
}

} // namespace

bool operator<(const Placement &a, const Placement &b)
{
    return std::tuple(std::string_view(a.test), a.index, flat(a.with)) < std::tuple(std::string_view(b.test), b.index, flat(b.with));
}

Reading settled(const Seating &seating, Measure measure)
{
    if (distinct(seating, measure).size() < 2)
        return seating.back();
    Reading jumps;
    jumps.what = Reading::What::Jumps;
    return jumps;
}

std::vector<Reading> settled(const Placed &placed)
{
    std::vector<Reading> result;
    for (const Seating &seating : placed.seatings)
        if (!seating.empty())
            result.push_back(settled(seating, placed.measure));
    return result;
}

std::vector<Reading> distinct(std::span<const Reading> readings, Measure measure)
{
    std::vector<Reading> result;
    for (const Reading &r : readings)
        if (std::ranges::none_of(result, [&](const Reading &known) { return !different(r, known, measure); }))
            result.push_back(r);
    return result;
}

} // namespace core
