#pragma once
// Small random models, predictions, readings and answers for the laws that must hold for all of them.
#include "core/base/random.h"
#include "core/belief/belief.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace core {

inline Suspects randomSuspects(Random &random)
{
    Suspects s;
    const int components = 2 + random.below(3);
    double total = 0;
    for (int c = 0; c < components; ++c)
        for (int m = 0; m <= random.below(2); ++m) {
            Suspect suspect{"c" + std::to_string(c) + ".m" + std::to_string(m), "c" + std::to_string(c), "m" + std::to_string(m), random.uniform(.1, 1), {}};
            const int cells = 1 + random.below(3);
            for (int i = 0; i < cells; ++i) {
                Cell cell;
                cell.weight = 1. / cells;
                cell.lo = i;
                suspect.cells.push_back(cell);
            }
            total += suspect.share;
            s.list.push_back(suspect);
        }
    for (Suspect &suspect : s.list)
        suspect.share /= total;
    s.list.push_back({"vent", "vent", "", 0, {Cell{}}});
    const int vent = static_cast<int>(s.list.size()) - 1;
    s.links.push_back({0, vent, random.uniform(0, .6)});
    if (s.list[1].component != s.list[0].component)
        s.links.push_back({0, 1, random.uniform(0, .3)});
    s.list.push_back({"film", "film", "", 0, {Cell{}}});
    s.beside.push_back({vent + 1, random.uniform(0, .3)});
    return s;
}

// the same faults at the same placement always show the same; some faults do not matter to some placements
inline Predicted randomPredicted(const Placement &at, std::span<const Fault> faults)
{
    std::uint64_t seed = at.index * 977 + at.test.size();
    for (const Fault &f : faults)
        if ((static_cast<std::size_t>(f.suspect) + at.index) % 3 != 0)
            seed = seed * 131 + static_cast<std::uint64_t>(f.suspect * 17 + f.cell + 1);
    Random random(seed);
    const auto some = [&] {
        const Prediction finite = finitePrediction(random.uniform(0, 20), random.uniform(.1, 2), random.chance(.5) ? random.uniform(0, 5) : 0);
        return random.chance(.4) ? openPrediction() : random.chance(.3) ? jumpingPrediction(openPrediction(), finite) : finite;
    };
    Predicted p;
    p.pulled = some();
    p.wired = some();
    return p;
}

inline Reading randomReading(Random &random)
{
    Reading r;
    const double kind = random.uniform();
    r.what = kind < .3 ? Reading::What::OverLimit : kind < .4 ? Reading::What::Jumps : Reading::What::Value;
    if (r.what == Reading::What::Value) {
        r.amount = {std::round(random.uniform(0, 25) * 10) / 10, Unit::Ohm};
        r.step = .1;
    }
    return r;
}

inline Placed randomPlaced(Random &random, std::size_t index)
{
    Placed p;
    p.placement = {"t", index, {}};
    for (int k = 0; k <= random.below(3); ++k)
        p.seatings.push_back({randomReading(random)});
    p.pullsAny = random.chance(.7);
    p.confirmed = random.chance(.3);
    p.wireLeftOn = random.chance(.2);
    return p;
}

inline Answered randomAnswered(Random &random, const Suspects &s)
{
    Answered a;
    a.id = "look";
    a.answers = {"yes", "no"};
    a.speaksFor = {{random.below(static_cast<int>(s.list.size()))}, {}};
    for (int k = 0; k <= random.below(2); ++k)
        a.given.push_back(random.chance(.5) ? "yes" : "no");
    a.sensitivity = random.uniform(.6, .99);
    a.falseAlarm = random.uniform(.01, .3);
    return a;
}

inline std::vector<Evidence> randomEvidence(Random &random, const Suspects &s)
{
    std::vector<Evidence> all;
    for (std::size_t i = 0; i < 4; ++i)
        all.emplace_back(randomPlaced(random, i));
    all.emplace_back(randomAnswered(random, s));
    return all;
}

inline Dictionary dictionary(const Suspects &s)
{
    Meter meter;
    meter.probeZero = Amount{0, Unit::Ohm};
    return {s, hypothesesOf(s), {{}, randomPredicted}, meter};
}

} // namespace core
