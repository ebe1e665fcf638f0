#pragma once
// What a check reads beside the files it was given: a tree alone finds its appliance beside it, a scratch folder the
// shipped kinds.
#include "core/diag/diagnostic.h"
#include "core/gate/texts.h"
#include "core/session/phrases.h"

#include <filesystem>
#include <vector>

namespace app {

// All that is wrong with `paths` and with what depends on them. `shipped` is the folder of the shipped trees.
std::vector<core::Diagnostic> checkPaths(const std::vector<std::filesystem::path> &paths, const std::filesystem::path &shipped,
                                         const core::Phrases &phrases, const core::SafetyTexts &safety);

} // namespace app
