#pragma once
// Where a thing stands in a text that people write.
#include <string>

namespace core {

struct Place
{
    std::string file;
    int line = 0;   // from 1; 0: the whole file
    int column = 0; // from 1, in characters (not bytes)
    friend bool operator==(const Place &, const Place &) = default;
};

} // namespace core
