#pragma once
// Where the events of one job go. The log knows nothing of what a line says; its owner gives each event as one line of
// JSON and may show it as done only when append() said so.
#include "app/store/store_fault.h"

#include <cstddef>
#include <string_view>

namespace app {

constexpr std::size_t kLongestLine = std::size_t{16} << 20; // bytes

class JobLog
{
public:
    JobLog() = default;
    JobLog(const JobLog &) = delete;
    JobLog &operator=(const JobLog &) = delete;
    virtual ~JobLog() = default;

    // Returns once the line, and every line before it, would outlast a power cut. After a fault (but BadLine) the line
    // waits: the next append writes it first, so that a disk with room again misses nothing.
    virtual Stored<void> append(std::string_view line) = 0;
    // Tries once more what waits, then gives the job free for other writers. Says what is lost, if anything is.
    virtual Stored<void> close() = 0;
    virtual std::size_t waiting() const = 0; // lines not on the disk yet
};

} // namespace app
