#pragma once
// Why the belief is what it is: the weight of each piece of evidence, and readings that do not go together.
#include "core/belief/belief.h"

#include <string_view>

namespace core {

// Weight of each entry for a component: the change of 10 log10 (P / (1 - P)), Good's decibans. Their sum is exact; single
// items depend on the order.
std::vector<double> weights(const Dictionary &dictionary, const Belief &belief, std::span<const int> suspects);

// Steps of Kass and Raftery (1995), J. Amer. Statist. Assoc. 90, 773-795, by Bayes factors 3, 20 and 150 (4.8, 13.0 and
// 21.8 decibans), either way: not worth more than a bare mention, positive, strong, very strong.
enum class Strength { Bare, Positive, Strong, VeryStrong };
Strength strengthOf(double decibans);
// In an owner's words: "speaks strongly against it".
std::string_view inWords(double decibans);

// How likely it is that each seating's reading was a slip, under the most probable listed or quiet variant.
struct SlipShare
{
    std::size_t entry = 0, seating = 0; // of those seatings that hold a reading
    double share = 0;
};
std::vector<SlipShare> slipShares(const Dictionary &dictionary, const Belief &belief);
// The reading most worth taking again: the largest share, if over .3.
std::optional<SlipShare> worthRetaking(std::span<const SlipShare> shares);
// The shares add to 1.5 or more: these readings contradict each other.
bool contradicts(std::span<const SlipShare> shares);

// Probability of what reads healthy at all that was measured so far, seen or tried. Nothing measured: 0. From .8 on,
// "everything measured is good" is said.
double probabilityAllGood(const Dictionary &dictionary, const Belief &belief);
inline constexpr double kAllGood = .8;

} // namespace core
