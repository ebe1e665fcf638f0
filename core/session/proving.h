#pragma once
// After a repair: what was put in is read once, plug out, where a reading had forbidden power; then the machine is run,
// closed up, and the person says what they saw. None of this changes the verdict it proves.
#include "core/session/facts.h"

#include <string_view>

namespace core {

inline constexpr std::string_view kProofStep = "proof";
// works: as it should. same: the complaint again. unsure: cannot tell yet.
inline constexpr std::string_view kProofAnswers[] = {"works", "same", "unsure"};

struct DueReading
{
    std::string test;
    std::size_t placement = 0;
};

// Which reading of what was put in is still due; nullopt: the machine can be run. Only while proving.
std::optional<DueReading> dueInProof(const Facts &facts);
bool isOfProof(const Facts &facts, std::string_view test);
// Whether every placement of the test reads good on what was put in.
bool readsGoodNow(const Facts &facts, const std::string &test);

} // namespace core
