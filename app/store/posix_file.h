#pragma once
// The few calls of POSIX.1-2017 that the store stands on, with errors by value: the error is an errno. The only file of
// the store that knows unistd.h.
#include "app/store/store_fault.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace app {

template<class T>
using Tried = core::Expected<T, int>;

class PosixFile
{
public:
    enum class Use { Read, Append, CreateNew }; // CreateNew: mode 0600, EEXIST if the name is taken

    // Regular files alone: a link, pipe or device is EINVAL or ELOOP and is never waited for.
    static Tried<PosixFile> open(const std::filesystem::path &path, Use use);
    static Tried<PosixFile> openFolder(const std::filesystem::path &path);

    PosixFile(PosixFile &&other) noexcept;
    PosixFile &operator=(PosixFile &&other) noexcept;
    ~PosixFile();

    Tried<std::string> readAll() const;
    // NOLINTBEGIN(readability-make-member-function-const): the file changes
    Tried<void> write(std::string_view bytes); // all of it, or an error with some of it written
    Tried<void> truncate(std::uint64_t size);
    Tried<void> syncData(); // fdatasync: the bytes and the length
    Tried<void> sync();     // fsync: for folders, the names in them
    // NOLINTEND(readability-make-member-function-const)
    Tried<void> lock(bool wait);       // flock, exclusive; EWOULDBLOCK if another process has it
    Tried<std::uint64_t> size() const; // ENOENT if the file has lost its name

private:
    explicit PosixFile(int fd) : m_fd(fd) {}
    int m_fd = -1;
};

// Makes the folder and those above it, mode 0700 (XDG Base Directory Specification 0.8, "Referencing this specification"),
// and syncs each new name.
Tried<void> makeFolder(const std::filesystem::path &folder);
Tried<void> syncFolder(const std::filesystem::path &folder);
Tried<std::int64_t> changedMs(const std::filesystem::path &file); // wall clock, as core::Instant::wallMs
std::string thisProcess();                                        // "process 1234 on bench-2"

StoreFault writeFault(int error, std::string_view lost); // "<lost>: the disk is full."
StoreFault readFault(int error, std::string_view lost);

} // namespace app
