#pragma once
// What each command does. They return the exit status: 0 done, 1 faults found or refused, 2 wrong use, 66 no such input,
// 74 not written.
#include <string>
#include <vector>

namespace app {

struct Choices
{
    bool json = false, keep = false;
    std::string tree, job, pdf;
    std::vector<std::string> paths;
};

int runList(const Choices &choices);
int runWalk(const Choices &choices);
int runSession(const Choices &choices);
int runCheck(const Choices &choices);
int runRecord(const Choices &choices, int argc, char **argv);

} // namespace app
