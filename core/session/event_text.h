#pragma once
// An event as one line of JSON, for the job's file and later for the job book, and back.
#include "core/base/expected.h"
#include "core/session/event.h"

namespace core {

std::string toLine(const Event &event); // no newline in it
// Errors say what is wrong with the line. Unknown fields are ignored, so that a newer program's line can still be read.
Expected<Event, std::string> eventFrom(std::string_view line);

} // namespace core
