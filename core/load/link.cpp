#include "core/load/link.h"

#include "core/base/text.h"
#include "core/load/words.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

const Node *textBelow(const Node &node, std::string_view text)
{
    if (node.isText())
        return node.text == text ? &node : nullptr;
    for (const Node &item : node.items)
        if (const Node *found = textBelow(item, text))
            return found;
    return nullptr;
}

std::string_view baseOf(std::string_view name)
{
    return name.substr(0, name.find('.'));
}

// a component of the appliance, or what one of its conditions is a way of
bool belongs(std::string_view base, const Appliance &a)
{
    return a.component(base) != nullptr ||
           std::ranges::any_of(a.conditions, [base](const ConditionUse &use) { return baseOf(use.id) == base; });
}

} // namespace

Linker::Entry Linker::walk(std::initializer_list<std::string_view> path) const
{
    const Node *value = &m_root;
    const Node *key = value;
    for (const std::string_view step : path) {
        if (const Node *next = value->key(step)) {
            key = next;
            value = value->value(step);
        } else if (const Node *text = textBelow(*value, step)) {
            return {*text, *text};
        } else {
            return {*key, *key};
        }
    }
    return {*key, *value};
}

std::string_view withoutWire(std::string_view probe)
{
    if (probe.starts_with("wire(") && probe.ends_with(')'))
        return probe.substr(5, probe.size() - 6);
    return probe;
}

bool isTerminal(const Kind &kind, std::string_view name, bool orConnector)
{
    return std::ranges::any_of(kind.terminals, [&](const std::string &t) {
        const bool pin = t.size() > name.size() && t.starts_with(name) && t[name.size()] == '_';
        return t == name || (orConnector && pin);
    });
}

const Path *contactOf(const Kind &kind, std::string_view path)
{
    for (const Path &p : kind.paths)
        if (p.normally != Path::Normally::Always && (path.empty() || p.id == path))
            return &p;
    return nullptr;
}

void checkOnly(const Only &only, const Appliance &appliance, const Node &at, Linker &link)
{
    for (const auto &[id, answers] : only) {
        const Ask *ask = appliance.asked(id);
        const Node &node = keyOf(at, id);
        if (ask == nullptr) {
            std::vector<std::string> names;
            for (const Ask &a : appliance.asks)
                names.push_back(a.id);
            link.add(DiagnosticKind::UnknownAsk, node, fmt::format("{} is not asked `{}`", appliance.id, id),
                     didYouMean(id, names));
            continue;
        }
        for (const std::string &answer : answers)
            if (std::ranges::find(ask->answers, answer) == ask->answers.end())
                link.add(DiagnosticKind::UnknownAnswer, node, fmt::format("`{}` is no answer to `{}`", answer, id),
                         didYouMean(answer, ask->answers));
    }
}

void checkWords(const Test &test, std::string_view section, Linker &link)
{
    const bool dead = isDead(test.measure) || test.appliance == ApplianceState::NoPower || test.appliance == ApplianceState::AsIs;
    const bool closed = test.appliance == ApplianceState::AsIs || test.appliance == ApplianceState::InUse;
    for (const std::string_view key : {"name", "say", "ask", "run"}) {
        const Node *text = link.at({section, test.id}).value(key);
        if (text == nullptr)
            continue;
        const std::string power = dead ? wordsOfPower(text->text) : "";
        const std::string opening = closed ? wordsOfOpening(text->text) : "";
        if (!power.empty())
            link.add(DiagnosticKind::WordsAgainstPower, *text, fmt::format("\"{}\" in a test without power", power),
                     "say it without, or measure what needs power");
        if (!opening.empty())
            link.add(DiagnosticKind::WordsAgainstPower, *text, fmt::format("\"{}\" in a test with the covers on", opening),
                     "make it `appliance: no_power`");
    }
}

bool suspectExists(std::string_view name, const Appliance &appliance, const Surroundings &around)
{
    if (appliance.component(name) != nullptr || appliance.condition(name) != nullptr)
        return true;
    const std::string_view base = baseOf(name);
    if (!belongs(base, appliance))
        return false;
    const Kind *kind = around.library.kindOf(appliance, base);
    return kind == nullptr || base == name || kind->mode(name.substr(base.size() + 1)) != nullptr;
}

Library::Found testOf(std::string_view name, const Appliance &appliance, const Library &library)
{
    if (appliance.loop(name) == nullptr && !belongs(baseOf(name), appliance))
        return {};
    return library.test(appliance, name);
}

bool mayBeBroken(std::string_view test, const Appliance &appliance, const Surroundings &around)
{
    const std::string_view base = baseOf(test);
    const Component *component = appliance.component(base);
    return around.broken.contains(component == nullptr ? base : std::string_view(component->kind));
}

std::vector<std::string> testNames(const Appliance &appliance, const Library &library)
{
    std::vector<std::string> names;
    std::set<std::string> bases;
    for (const Test &loop : appliance.loops)
        names.push_back(loop.id);
    for (const Component &part : appliance.components)
        bases.insert(part.id);
    for (const ConditionUse &use : appliance.conditions)
        bases.insert(std::string(baseOf(use.id)));
    for (const std::string &base : bases)
        if (const Kind *kind = library.kindOf(appliance, base))
            for (const Test &test : kind->tests)
                names.push_back(base + "." + test.id);
    return names;
}

std::vector<std::string> suspectNames(const Appliance &appliance, const Library &library)
{
    std::vector<std::string> names;
    const auto take = [&](const std::string &id) {
        names.push_back(id);
        if (const Kind *kind = library.kindOf(appliance, id); kind != nullptr && id.find('.') == std::string::npos)
            for (const FailureMode &mode : kind->fails)
                if (!mode.id.empty())
                    names.push_back(id + "." + mode.id);
    };
    for (const Component &c : appliance.components)
        take(c.id);
    for (const ConditionUse &use : appliance.conditions)
        take(use.id);
    return names;
}

} // namespace core
