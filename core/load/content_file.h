#pragma once
// One file of the content: its document, what sort it is, and the value read from it.
#include "core/load/read.h"

#include <variant>

namespace core {

struct ContentFile
{
    Document document;
    std::variant<std::monostate, Kind, Appliance, Tree, std::vector<WorkedCase>> value; // monostate: not known what it is
    std::vector<Diagnostic> found;
    std::string id; // of kind, appliance or tree; guessed from the file's name where the file does not say; "" for cases
};

ContentFile contentOf(std::string_view text, std::string file);

} // namespace core
