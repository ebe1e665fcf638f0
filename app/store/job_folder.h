#pragma once
// Where jobs lie, how a new one gets its name, and which there are.
#include "app/store/posix_file.h"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace app {

// $XDG_DATA_HOME/meterfirst/jobs, by default ~/.local/share/meterfirst/jobs (XDG Base Directory Specification 0.8: a relative
// path there is ignored). Not made yet.
Stored<std::filesystem::path> jobFolder();

struct NewJobFile
{
    PosixFile file;
    std::filesystem::path path;
};

// An empty file <id>.jsonl, its name on the disk. An id is a number, one more than the largest in the folder, and three letters:
// 0412-KTR. The number is for people on one computer, the letters keep apart jobs of two computers that share the number.
Stored<NewJobFile> newJobFile(const std::filesystem::path &folder);
bool isJobId(std::string_view id);

struct JobEntry
{
    std::filesystem::path path;
    std::string id;
    std::string firstLine, lastLine; // sound ones, as they were given; "" if there is none
    std::size_t lines = 0;
    std::int64_t changedMs = 0; // wall clock, as core::Instant::wallMs
    std::string note;           // what is wrong with it, as a sentence; "" if nothing
};

// Every job of the folder, the one changed last first. A folder that is not there has none. A job that cannot be read is
// listed with its note.
Stored<std::vector<JobEntry>> listJobs(const std::filesystem::path &folder);

} // namespace app
