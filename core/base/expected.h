#pragma once
// Either a value or the reason why there is none. No exception leaves core; results that may fail are returned as this.
#include <tl/expected.hpp>

namespace core {
template<class T, class E>
using Expected = tl::expected<T, E>;
template<class E>
tl::unexpected<std::decay_t<E>> unexpected(E &&e)
{
    return tl::unexpected<std::decay_t<E>>(std::forward<E>(e));
}
} // namespace core
