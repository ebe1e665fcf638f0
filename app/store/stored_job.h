#pragma once
// A job file: one event a line, each bound to the line before.
//
//   {"seq":1,"hash":"<64 digits>","event":<the line as it was given>}\n
//
// hash = SHA-256 (FIPS 180-4) of "<hash of the line before>\n<seq>\n<line>"; before the first line stands the SHA-256 of
// "meterfirst job 1 <id>". So a line that was altered, left out, put in, moved, or copied from another job is noticed. Lines
// cut off whole at the end are not: nothing in the file knows of them.
#include "app/store/store_fault.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace app {

struct StoredJob
{
    enum class State {
        Whole,
        TornEnd, // the last line was never finished, or is no longer what was written: left out
        Damaged, // a line with others after it is not what was written: only those before it are here
    };
    std::string id;
    std::vector<std::string> lines; // the sound ones, from the first on
    std::string lastHash;           // of the last of them; what the next line is bound to
    std::uint64_t soundBytes = 0;   // how far into the file they reach
    State state = State::Whole;
    std::string note; // what is wrong, as a sentence; "" if Whole
};

std::string storedLine(std::uint64_t seq, std::string_view line, std::string_view hash); // with its newline
std::string lineHash(std::string_view hashBefore, std::uint64_t seq, std::string_view line);
std::string firstHash(std::string_view id);

StoredJob parseJob(std::string_view id, std::string_view bytes); // whatever the bytes
Stored<StoredJob> readJob(const std::filesystem::path &file);    // the id is the file's name

} // namespace app
