#pragma once
// The physical world beside the gate, as the set of all worlds that are possible: mains, covers, wires, meter, charge, heat.
// Somebody who does what the screens say, all of it and nothing else, moves it; while nobody looks, anybody may have done
// anything. A screen is wrong if it is dangerous in any of the worlds.
#include <bitset>
#include <cstddef>

namespace gatetest {

enum Fact { Mains, CoverP, CoverQ, Wire1, Wire2, Ohms, Clip, Clamp, ChargeM, ChargeB, Hot, SecondFeed, kFacts };
// Wire1 and Wire2: off their terminals. Ohms: the meter was left on by a dead test. Clip, Clamp: put on for a live one.
// SecondFeed: place q stays live with the breaker off (a shared neutral, another circuit).

class Worlds
{
public:
    using Set = std::bitset<std::size_t{1} << kFacts>;

    static Worlds one() // everything false
    {
        Worlds w;
        w.m_set[0] = true;
        return w;
    }
    bool none() const { return m_set.none(); }
    bool can(Fact fact) const { return (m_set & where(fact)).any(); }
    bool can(Fact a, Fact b) const { return (m_set & where(a) & where(b)).any(); }
    void set(Fact fact) { m_set = (m_set & where(fact)) | ((m_set & ~where(fact)) << shift(fact)); }
    void clear(Fact fact) { m_set = (m_set & ~where(fact)) | ((m_set & where(fact)) >> shift(fact)); }
    void mayBeSet(Fact fact) { m_set |= (m_set & ~where(fact)) << shift(fact); }
    void mayBeClear(Fact fact) { m_set |= (m_set & where(fact)) >> shift(fact); }
    void free(Fact fact)
    {
        mayBeSet(fact);
        mayBeClear(fact);
    }
    void keep(Fact fact, bool value) { m_set &= value ? where(fact) : ~where(fact); }
    void add(const Worlds &other) { m_set |= other.m_set; }
    bool covers(const Worlds &other) const { return (other.m_set & ~m_set).none(); }
    bool operator==(const Worlds &) const = default;

private:
    static std::size_t shift(Fact fact) { return std::size_t{1} << fact; }
    static const Set &where(Fact fact)
    {
        static const auto masks = [] {
            struct { Set of[kFacts]; } out;
            for (std::size_t world = 0; world < out.of[0].size(); ++world)
                for (std::size_t f = 0; f < kFacts; ++f)
                    out.of[f][world] = (world >> f & 1U) != 0;
            return out;
        }();
        return masks.of[fact];
    }
    Set m_set;
};

} // namespace gatetest
