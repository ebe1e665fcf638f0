#include "app/store/stored_job.h"

#include "app/store/posix_file.h"
#include "core/base/hash.h"

#include <fmt/format.h>
#include <optional>

namespace app {
namespace {

constexpr std::string_view kHashKey = R"(,"hash":")";
constexpr std::string_view kEventKey = R"(","event":)";
constexpr std::size_t kHashDigits = 64;

std::string opening(std::uint64_t seq)
{
    return fmt::format(R"({{"seq":{}{})", seq, kHashKey);
}

// What the line says, if it is line `seq` of this chain to the letter. `text` comes without its newline.
std::optional<std::string_view> soundLine(std::string_view text, std::uint64_t seq, std::string_view hashBefore,
                                          std::string &hash)
{
    const std::string open = opening(seq);
    if (!text.starts_with(open) || !text.ends_with('}'))
        return std::nullopt;
    text.remove_prefix(open.size());
    if (text.size() <= kHashDigits + kEventKey.size() || text.substr(kHashDigits, kEventKey.size()) != kEventKey)
        return std::nullopt;
    const std::string_view claimed = text.substr(0, kHashDigits);
    text.remove_prefix(kHashDigits + kEventKey.size());
    text.remove_suffix(1);
    hash = lineHash(hashBefore, seq, text);
    if (hash != claimed)
        return std::nullopt;
    return text;
}

// An append that was cut short leaves one unfinished line and nothing after it.
bool onlyTheLast(std::string_view tail, std::uint64_t seq)
{
    const auto newline = tail.find('\n');
    return (newline == std::string_view::npos || newline + 1 == tail.size()) &&
           tail.find(opening(seq + 1)) == std::string_view::npos;
}

} // namespace

std::string storedLine(std::uint64_t seq, std::string_view line, std::string_view hash)
{
    return fmt::format("{}{}{}{}}}\n", opening(seq), hash, kEventKey, line);
}

std::string lineHash(std::string_view hashBefore, std::uint64_t seq, std::string_view line)
{
    return core::sha256Hex(fmt::format("{}\n{}\n{}", hashBefore, seq, line));
}

std::string firstHash(std::string_view id)
{
    return core::sha256Hex(fmt::format("meterfirst job 1 {}", id));
}

StoredJob parseJob(std::string_view id, std::string_view bytes)
{
    StoredJob job;
    job.id = id;
    job.lastHash = firstHash(id);
    while (job.soundBytes < bytes.size()) {
        const std::string_view tail = bytes.substr(job.soundBytes);
        const auto newline = tail.find('\n');
        const std::uint64_t seq = job.lines.size() + 1;
        std::string hash;
        const auto line =
            newline == std::string_view::npos ? std::nullopt : soundLine(tail.substr(0, newline), seq, job.lastHash, hash);
        if (!line) {
            const bool torn = onlyTheLast(tail, seq);
            job.state = torn ? StoredJob::State::TornEnd : StoredJob::State::Damaged;
            job.note = torn ? fmt::format("The last entry of job {}, number {}, is not whole and was left out.", id, seq)
                            : fmt::format("Job {} is damaged: entry {} is not what was written. The {} before it are sound.", id,
                                          seq, seq - 1);
            return job;
        }
        job.lines.emplace_back(*line);
        job.lastHash = std::move(hash);
        job.soundBytes += newline + 1;
    }
    return job;
}

Stored<StoredJob> readJob(const std::filesystem::path &file)
{
    const std::string id = file.stem().string();
    const auto bytes =
        PosixFile::open(file, PosixFile::Use::Read).and_then([](const PosixFile &opened) { return opened.readAll(); });
    if (!bytes)
        return core::unexpected(readFault(bytes.error(), fmt::format("Job {} cannot be read", id)));
    return parseJob(id, *bytes);
}

} // namespace app
