#include "app/store/posix_file.h"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace app {
namespace {

// Calls until it is not a signal that ended the call.
template<class Call>
auto again(Call call)
{
    auto result = call();
    while (result < 0 && errno == EINTR)
        result = call();
    return result;
}

Tried<void> done(int result)
{
    if (result < 0)
        return core::unexpected(int{errno});
    return {};
}

std::string reason(int error)
{
    switch (error) {
    case ENOSPC:
    case EDQUOT:
        return "the disk is full";
    case EFBIG:
        return "the file may not grow any further";
    case EROFS:
        return "the disk is read-only";
    case EACCES:
    case EPERM:
        return "you have no right to that place";
    case ENOENT:
        return "it is not there any more";
    case ENOTDIR:
        return "a file stands where a folder should be";
    case EIO:
        return "the disk reports an error";
    default:
        return std::generic_category().message(error);
    }
}

} // namespace

Tried<PosixFile> PosixFile::open(const std::filesystem::path &path, Use use)
{
    const int how = use == Use::Read ? O_RDONLY : use == Use::Append ? O_RDWR | O_APPEND : O_RDWR | O_APPEND | O_CREAT | O_EXCL;
    const int fd = again([&] { return ::open(path.c_str(), how | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0600); });
    if (fd < 0)
        return core::unexpected(int{errno});
    PosixFile file(fd);
    struct stat about = {};
    if (::fstat(fd, &about) < 0)
        return core::unexpected(int{errno});
    if (!S_ISREG(about.st_mode))
        return core::unexpected(int{EINVAL});
    return file;
}

Tried<PosixFile> PosixFile::openFolder(const std::filesystem::path &path)
{
    const int fd = again([&] { return ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); });
    if (fd < 0)
        return core::unexpected(int{errno});
    return PosixFile(fd);
}

PosixFile::PosixFile(PosixFile &&other) noexcept : m_fd(std::exchange(other.m_fd, -1)) {}

PosixFile &PosixFile::operator=(PosixFile &&other) noexcept
{
    std::swap(m_fd, other.m_fd);
    return *this;
}

PosixFile::~PosixFile()
{
    if (m_fd >= 0)
        ::close(m_fd);
}

Tried<std::string> PosixFile::readAll() const
{
    std::string bytes;
    std::array<char, 65536> part = {};
    for (;;) {
        const auto got = again([&] { return ::pread(m_fd, part.data(), part.size(), static_cast<off_t>(bytes.size())); });
        if (got < 0)
            return core::unexpected(int{errno});
        if (got == 0)
            return bytes;
        bytes.append(part.data(), static_cast<std::size_t>(got));
    }
}

Tried<void> PosixFile::write(std::string_view bytes)
{
    while (!bytes.empty()) {
        const auto put = again([&] { return ::write(m_fd, bytes.data(), bytes.size()); });
        if (put < 0)
            return core::unexpected(int{errno});
        bytes.remove_prefix(static_cast<std::size_t>(put));
    }
    return {};
}

Tried<void> PosixFile::truncate(std::uint64_t size)
{
    return done(again([&] { return ::ftruncate(m_fd, static_cast<off_t>(size)); }));
}

Tried<void> PosixFile::syncData()
{
    return done(again([&] { return ::fdatasync(m_fd); }));
}

Tried<void> PosixFile::sync()
{
    return done(again([&] { return ::fsync(m_fd); }));
}

Tried<void> PosixFile::lock(bool wait)
{
    return done(again([&] { return ::flock(m_fd, wait ? LOCK_EX : LOCK_EX | LOCK_NB); }));
}

Tried<std::uint64_t> PosixFile::size() const
{
    struct stat about = {};
    if (::fstat(m_fd, &about) < 0)
        return core::unexpected(int{errno});
    if (about.st_nlink == 0)
        return core::unexpected(int{ENOENT});
    return static_cast<std::uint64_t>(about.st_size);
}

Tried<void> syncFolder(const std::filesystem::path &folder)
{
    return PosixFile::openFolder(folder.empty() ? "." : folder).and_then([](PosixFile &&opened) { return opened.sync(); });
}

Tried<void> makeFolder(const std::filesystem::path &folder)
{
    if (::mkdir(folder.c_str(), 0700) == 0)
        return syncFolder(folder.parent_path());
    if (errno == EEXIST)
        return PosixFile::openFolder(folder).map([](const PosixFile &) {});
    if (errno != ENOENT || folder.parent_path() == folder)
        return core::unexpected(int{errno});
    return makeFolder(folder.parent_path()).and_then([&]() -> Tried<void> {
        if (::mkdir(folder.c_str(), 0700) < 0 && errno != EEXIST)
            return core::unexpected(int{errno});
        return syncFolder(folder.parent_path());
    });
}

Tried<std::int64_t> changedMs(const std::filesystem::path &file)
{
    struct stat about = {};
    if (::stat(file.c_str(), &about) < 0)
        return core::unexpected(int{errno});
    return std::int64_t{about.st_mtim.tv_sec} * 1000 + about.st_mtim.tv_nsec / 1'000'000;
}

std::string thisProcess()
{
    std::array<char, 256> host = {};
    if (::gethostname(host.data(), host.size() - 1) < 0)
        return fmt::format("process {}", ::getpid());
    return fmt::format("process {} on {}", ::getpid(), host.data());
}

StoreFault writeFault(int error, std::string_view lost)
{
    const bool full = error == ENOSPC || error == EDQUOT || error == EFBIG;
    return {full ? StoreError::Full : StoreError::NotWritable, fmt::format("{}: {}.", lost, reason(error))};
}

StoreFault readFault(int error, std::string_view lost)
{
    return {StoreError::NotReadable, fmt::format("{}: {}.", lost, reason(error))};
}

} // namespace app
