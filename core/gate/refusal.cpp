#include "core/gate/refusal.h"

#include <cstddef>
#include <utility>

namespace core {
namespace {

constexpr bool listIsInOrder()
{
    for (std::size_t i = 0; i < kRefusals.size(); ++i)
        if (static_cast<std::size_t>(kRefusals[i].code) != i)
            return false;
    return static_cast<std::size_t>(RefusalCode::Unclear) + 1 == kRefusals.size();
}
static_assert(listIsInOrder(), "one line a code, in the order of the codes");

} // namespace

std::string_view word(RefusalCode code)
{
    return kRefusals[static_cast<std::size_t>(code)].word;
}

Refusal refusal(RefusalCode code)
{
    return {code, std::string(kRefusals[static_cast<std::size_t>(code)].text)};
}

Refusal refusal(RefusalCode code, std::string text)
{
    return {code, std::move(text)};
}

} // namespace core
