#pragma once
// Why something could not be kept or read back: a word for the program, a sentence for the person.
#include "core/base/expected.h"

#include <string>

namespace app {

enum class StoreError {
    Full,        // no room on the disk, or the file may not grow
    NotWritable, // no right, a read-only disk, a folder that is none, a failing disk, a file that was taken away
    NotReadable, // the same for reading
    Held,        // another process writes this job
    Damaged,     // a line before the last is not what was written
    BadLine,     // the caller's line is empty, longer than kLongestLine or holds a newline
};

struct StoreFault
{
    StoreError what = StoreError::NotWritable;
    std::string text;
};

template<class T>
using Stored = core::Expected<T, StoreFault>;

} // namespace app
