#pragma once
// The test record of a job: what was measured, where, when, with what, and what follows. One content for text, print and
// PDF. Nothing in it says that something is safe, and no name of a person is in it.
#include "core/session/session.h"
#include "core/session/view.h"

#include <string>
#include <string_view>
#include <vector>

namespace app {

struct RecordRow
{
    std::string when, what, good, said, word; // "10:49", "Element, end to end", "9.4 - 12.3 ohm", "OL, OL", "failed its test"
};

struct Record
{
    std::string job, date, appliance, complaint, meter;
    std::string verdict, sentence, basis, proof;
    std::vector<std::string> causes, notes, prove; // behind the part; what to know; how to prove the repair
    std::vector<RecordRow> readings;               // in order of time, what was looked at included
    std::vector<RecordRow> safety;                 // screens confirmed, hold points passed, breaks
    std::vector<std::string> putBack;              // still open
    std::string outcome;                           // how it went, once it was said
    bool proven = false, practice = false;
    std::string lastLine;
};

Record recordOf(const core::Session &session, const std::string &job);
std::string_view outcomeSaid(std::string_view outcome); // a sentence for "fixed"; the word itself if it is none of ours
std::string recordText(const Record &record);           // plain text for a message, 72 columns

} // namespace app
