#pragma once
// The belief: the probability of every hypothesis after the evidence so far. A pure function of dictionary and evidence.
#include "core/belief/factor.h"

namespace core {

struct Posterior
{
    std::vector<double> variants;   // of each variant; they add to 1
    std::vector<double> hypotheses;
    std::vector<double> suspects;   // that it is (or was) there, alone or with others
    double quiet = 0, loud = 0;     // something not listed
    double logEvidence = 0;         // natural logarithm of the probability of everything read so far
};

struct Belief
{
    Posterior now;
    std::vector<Factor> factors;    // one for each entry of the evidence, in its order
    std::vector<int> putRight;      // suspects that a `do` has put right, ascending: no other verdict may name them
};

// Readings before a `do` are predicted with what it put right, those after it without. The order of readings does not
// matter otherwise. `before`: a belief of the same dictionary whose factors are used again where the evidence is equal.
Belief update(Dictionary &dictionary, std::span<const Evidence> evidence, const Belief *before = nullptr);

// The belief if this were known besides: every answer a step may get, any reading not taken yet. The probability of it
// now is exp(result.logEvidence - belief.now.logEvidence).
Posterior whatIf(Dictionary &dictionary, const Belief &belief, const Evidence &evidence);

// The belief before any evidence and after each entry: one more than there are factors.
std::vector<Posterior> stepByStep(const Dictionary &dictionary, const Belief &belief);

// That one of these is there: for a component all of its suspects, for an ambiguity group all of its members. Two of
// them together count once.
double probabilityOf(const Dictionary &dictionary, const Posterior &posterior, std::span<const int> suspects);
double probabilityOf(const Dictionary &dictionary, const Posterior &posterior, std::string_view component);
// 10 log10 of the odds of it, kept exact near 0 and 1.
double decibansOf(const Dictionary &dictionary, const Posterior &posterior, std::span<const int> suspects);

// What a placement is expected to show now: each prediction with its probability, the most probable first. What is loud
// has none.
struct Expectation
{
    double probability = 0;
    Predicted predicted;
};
std::vector<Expectation> expectations(Dictionary &dictionary, const Belief &belief, const Placement &placement);

} // namespace core
