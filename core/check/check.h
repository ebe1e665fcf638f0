#pragma once
// What an author did wrong that no single file shows: walks through every tree of the loaded content.
#include "core/diag/diagnostic.h"
#include "core/session/session.h"

namespace core {

std::vector<Diagnostic> checkContent(const Library &library, const Phrases &phrases, const SafetyTexts &safety);

} // namespace core
