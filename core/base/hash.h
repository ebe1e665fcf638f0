#pragma once
// SHA-256 (FIPS 180-4, 6.2): names a content by what it says, so that a job knows the very tree it was walked with.
#include <string>
#include <string_view>

namespace core {

std::string sha256Hex(std::string_view bytes); // 64 lower-case hexadecimal digits

} // namespace core
