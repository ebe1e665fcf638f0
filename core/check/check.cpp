#include "core/check/check.h"

namespace core {

std::vector<Diagnostic> checkContent(const Content &content)
{
    std::vector<Diagnostic> found;
    const auto add = [&](std::vector<Diagnostic> more) {
        for (Diagnostic &d : more)
            found.push_back(std::move(d));
    };
    for (const auto &[id, tree] : content.library->trees) {
        if (content.library->faulty.contains(id))
            continue;
        std::vector<Diagnostic> steps = checkSteps(*content.library, tree);
        const bool sound = !hasFault(steps);
        add(std::move(steps));
        if (sound) // a walk that may not end is not walked
            add(checkClaims(*content.library, tree));
    }
    add(checkCases(content));
    sortByPlace(found);
    return found;
}

std::vector<Answers> combinationsOf(const Appliance &appliance)
{
    std::vector<Answers> all{{}};
    for (const Ask &ask : appliance.asks) {
        std::vector<Answers> more;
        for (const Answers &known : all) {
            if (!holds(ask.only, known)) {
                more.push_back(known);
                continue;
            }
            for (const std::string &answer : ask.answers) {
                more.push_back(known);
                more.back()[ask.id] = answer;
            }
        }
        all = std::move(more);
    }
    return all;
}

} // namespace core
