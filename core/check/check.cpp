#include "core/check/check.h"

#include <algorithm>

namespace core {

namespace {

// What is looked at: what stands in a named file, or leans on it.
class About
{
public:
    About(const Library &library, const IsNamed &isNamed) : m_library(library), m_isNamed(isNamed) {}

    bool file(const Place &place) const { return !m_isNamed || m_isNamed(place.file); }
    bool appliance(const Appliance &a) const
    {
        const auto leans = [&](const std::string &id) {
            const Kind *kind = m_library.kindOf(a, id);
            return kind != nullptr && file(kind->place);
        };
        return file(a.place) || std::ranges::any_of(a.components, [&](const Component &c) { return leans(c.id); }) ||
               std::ranges::any_of(a.conditions, [&](const ConditionUse &c) { return leans(c.id); });
    }
    bool tree(const Tree &t) const
    {
        const Appliance *a = m_library.appliance(t.appliance);
        return file(t.place) || (a != nullptr && appliance(*a));
    }
    bool workedCase(const WorkedCase &c) const
    {
        const Tree *t = m_library.tree(c.tree);
        return t != nullptr && !m_library.faulty.contains(c.tree) && (file(c.place) || tree(*t));
    }

private:
    const Library &m_library;
    const IsNamed &m_isNamed;
};

std::vector<Diagnostic> walked(const Library &library, const Tree &tree)
{
    std::vector<Diagnostic> found = checkTrades(tree);
    std::vector<Diagnostic> more = checkSteps(library, tree);
    if (!hasFault(more)) // a walk that may not end is not walked
        more = checkClaims(library, tree);
    found.insert(found.end(), more.begin(), more.end());
    return found;
}

} // namespace

std::vector<Diagnostic> checkContent(const Content &content, const IsNamed &isNamed)
{
    const Library &library = *content.library;
    const About about(library, isNamed);
    std::vector<Diagnostic> found;
    const auto add = [&](std::vector<Diagnostic> more) { found.insert(found.end(), more.begin(), more.end()); };
    for (const auto &[id, kind] : library.kinds)
        if (about.file(kind.place))
            add(checkKind(kind));
    for (const auto &[id, appliance] : library.appliances)
        if (about.file(appliance.place))
            add(checkHazards(appliance));
    for (const auto &[id, tree] : library.trees)
        if (!library.faulty.contains(id) && about.tree(tree))
            add(walked(library, tree));
    for (const WorkedCase &c : library.cases)
        if (about.workedCase(c))
            add(checkCase(content, c));
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
