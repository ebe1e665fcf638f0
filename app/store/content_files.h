#pragma once
// Finds and loads what every face of the program shows: trees, phrases, safety texts.
#include "core/gate/texts.h"
#include "core/load/load.h"
#include "core/session/phrases.h"
#include "core/session/session.h"

#include <filesystem>

namespace app {

struct ContentFiles
{
    core::Library library;
    std::vector<core::Diagnostic> diagnostics;
    core::Phrases phrases;
    core::SafetyTexts safety;
    std::filesystem::path trees, resources;

    core::Content content() const { return {&library, &phrases, &safety}; }
};

// $METERFIRST_DATA, else share/meterfirst beside the program's bin folder, else the source folder it was built from. It
// holds trees/ and resources/.
std::filesystem::path dataFolder();
// $XDG_DATA_HOME/meterfirst, else ~/.local/share/meterfirst: own trees and jobs. Relative values are ignored.
std::filesystem::path userFolder();
// The user's own trees first, then the shipped ones. Fails only without readable texts: then nothing can be shown.
core::Expected<ContentFiles, std::string> loadContent(const std::filesystem::path &data, const std::filesystem::path &user);
core::Expected<std::string, std::string> readFile(const std::filesystem::path &path);

} // namespace app
