#pragma once
// What is asked before a job begins: the complaint, for whom, with which meter, whether power may be on.
#include "app/cli/terminal.h"
#include "core/reading/meter.h"
#include "core/session/session.h"

#include <functional>

namespace app {

// Trees that can be walked, by name; faulty ones left out.
std::vector<std::string> usableTrees(const core::Library &library);
// Why `tree` cannot be walked, with near names; "" if it can.
std::string whyNoTree(const core::Library &library, const std::string &tree);

// Meter functions named in a line: letters ("rbv"), or words ("ohms, volts"). Error: the first that is not known.
core::Expected<std::set<std::string>, std::string> functionsIn(std::string_view typed);
// "ohms, beeper, volts~", and what cannot be done without what is missing.
std::string functionsSaid(const std::set<std::string> &functions);
std::string missingSaid(const std::set<std::string> &functions);

// Asks for what `snapshot` leaves open. False: the input ended, or danger was said; its page was shown then.
bool askBefore(const core::Content &content, Terminal &terminal, core::Snapshot &snapshot);
// A line asked for; nullopt: nothing comes any more, or danger was said.
using AskLine = std::function<std::optional<std::string>(std::string_view prompt)>;
std::optional<core::Meter> askMeter(Terminal &terminal, const AskLine &ask);
// A danger that was said before there is a job to hold it.
void showDanger(const core::Content &content, Terminal &terminal, std::string_view why);

} // namespace app
