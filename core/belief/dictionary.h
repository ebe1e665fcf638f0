#pragma once
// The fault dictionary: what every placement would show under every variant, worked out once a placement and kept.
#include "core/belief/hypotheses.h"
#include "core/belief/likelihood.h"

#include <functional>
#include <memory>

namespace core {

// The only place that knows how a machine turns faults into readings.
struct Predictor
{
    // whether a fault of this suspect can change what this placement shows; empty: any may
    std::function<bool(const Placement &, int suspect)> matters;
    // with these faults (those that matter; none: the healthy machine)
    std::function<Predicted(const Placement &, std::span<const Fault>)> predict;
    // whether a fault that alone shows what the healthy machine shows does not matter beside another one either; saves
    // most predictions. Not so where two faults only together make a way, as two grounds do over the frame.
    bool aloneTells = false;
};

// What is known beforehand of one placement: variants that would show the same share a class; class 0 is healthy.
struct Column
{
    std::vector<std::uint32_t> classOf; // of each variant; classes.size() for what is loud
    std::vector<Predicted> classes;
};

// What one placement shows with a single fault: of each suspect, of each of its cells.
struct Singles
{
    Predicted healthy;
    std::vector<std::vector<Predicted>> of; // [suspect][cell]; empty where the suspect does not matter
    bool shows(const Fault &fault) const; // other than the healthy machine
};

class Dictionary
{
public:
    Dictionary(Suspects suspects, std::vector<Hypothesis> hypotheses, Predictor predictor, Meter meter, Noise noise = {});

    const std::vector<Suspect> &suspects() const { return m_suspects.list; }
    const Suspects &known() const { return m_suspects; }
    const std::vector<Hypothesis> &hypotheses() const { return m_hypotheses; }
    const Variants &variants() const { return m_variants; }
    const Meter &meter() const { return m_meter; }
    const Noise &noise() const { return m_noise; }
    int find(std::string_view suspect) const { return m_suspects.find(suspect); }
    std::vector<int> ofComponent(std::string_view component) const; // its suspects

    // `putRight`: suspects that a `do` has put right before (ascending); the placement is read without them.
    std::shared_ptr<const Column> column(const Placement &placement, const std::vector<int> &putRight = {});
    // Cheap beside a column: enough to see what a test could tell.
    std::shared_ptr<const Singles> singles(const Placement &placement);

private:
    Column solve(const Placement &placement, const std::vector<int> &putRight);

    Suspects m_suspects;
    std::vector<Hypothesis> m_hypotheses;
    Variants m_variants;
    Predictor m_predictor;
    Meter m_meter;
    Noise m_noise;
    std::map<std::pair<Placement, std::vector<int>>, std::shared_ptr<const Column>> m_columns;
    std::map<Placement, std::shared_ptr<const Singles>> m_singles;
};

} // namespace core
