#include "core/belief/suspects.h"

#include <algorithm>

namespace core {

int Suspects::find(std::string_view id) const
{
    const auto at = std::ranges::find(list, id, &Suspect::id);
    return at == list.end() ? -1 : static_cast<int>(at - list.begin());
}

} // namespace core
