#include "core/session/names.h"

#include "core/base/text.h"

namespace core {
namespace {

std::string_view inner(std::string_view terminal) // wire(x) -> x
{
    constexpr std::string_view kWire = "wire(";
    if (terminal.substr(0, kWire.size()) == kWire && terminal.back() == ')')
        return terminal.substr(kWire.size(), terminal.size() - kWire.size() - 1);
    return terminal;
}

std::string lowerFirst(std::string text)
{
    if (text.size() > 1 && text[0] >= 'A' && text[0] <= 'Z' && !(text[1] >= 'A' && text[1] <= 'Z'))
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

} // namespace

std::string nameOf(const Machine &machine, std::string_view id)
{
    if (const Component *c = machine.appliance->component(id); c != nullptr && !c->name.empty())
        return c->name;
    const Kind *kind = machine.library->kindOf(*machine.appliance, id);
    return kind == nullptr ? std::string(id) : kind->name;
}

std::string titleOf(const Machine &machine, std::string_view id)
{
    const Library::Found found = machine.library->test(*machine.appliance, id);
    if (found.test != nullptr)
        return found.test->name.empty() ? std::string(id) : found.test->name;
    if (const Ask *ask = machine.appliance->asked(id))
        return ask->ask;
    const Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(id);
    return step == nullptr ? std::string(id) : step->text;
}

std::string wireId(std::string_view component, std::string_view terminal)
{
    const std::string_view bare = inner(terminal);
    return component.empty() ? std::string(bare) : std::string(component) + "." + std::string(bare);
}

std::string terminalName(const Machine &machine, std::string_view component, std::string_view terminal, bool withOwner)
{
    const std::string id = wireId(component, terminal);
    const auto dot = id.find('.');
    const std::string owner = id.substr(0, dot), bare = dot == std::string::npos ? std::string() : id.substr(dot + 1);
    const Kind *kind = machine.library->kindOf(*machine.appliance, owner);
    std::string words = bare;
    if (kind != nullptr)
        if (const auto called = kind->called.find(bare); called != kind->called.end())
            words = called->second;
    return withOwner ? words + ", " + lowerFirst(nameOf(machine, owner)) : words;
}

std::string wireName(const Machine &machine, std::string_view wire)
{
    const auto dot = wire.find('.');
    if (dot == std::string_view::npos)
        return std::string(wire);
    return lowerFirst(nameOf(machine, wire.substr(0, dot))) + ", " +
           terminalName(machine, wire.substr(0, dot), wire.substr(dot + 1), false);
}

std::string placeName(const Machine &machine, std::string_view place)
{
    const ServicePlace *p = machine.appliance->servicePlace(place);
    return p == nullptr ? std::string(place) : p->say;
}

std::string coverName(const Machine &machine, std::string_view place)
{
    const ServicePlace *p = machine.appliance->servicePlace(place);
    return p == nullptr || p->called.empty() ? placeName(machine, place) : p->called;
}

std::string suspectName(const Machine &machine, std::string_view suspect)
{
    const auto dot = suspect.find('.');
    const std::string name = nameOf(machine, suspect.substr(0, dot));
    const Kind *kind = machine.library->kindOf(*machine.appliance, suspect);
    const FailureMode *mode = kind == nullptr || dot == std::string_view::npos ? nullptr : kind->mode(suspect.substr(dot + 1));
    return mode == nullptr || mode->say.empty() ? name : name + ": " + lowerFirst(mode->say);
}

std::string sentenceFor(const Machine &machine, const Library::Found &found, std::size_t placement, const Phrases &phrases)
{
    const Test &test = *found.test;
    const bool several = test.placements.size() > 1;
    const bool loop = found.kind == nullptr;
    Params params;
    if (placement < test.placements.size()) {
        params["red"] = terminalName(machine, found.component, test.placements[placement].red, loop);
        params["black"] = terminalName(machine, found.component, test.placements[placement].black, loop);
    }
    if (!test.say.empty()) {
        if (!several)
            return test.say;
        return phrases.say(placement == 0 ? "test.say_first" : "test.say_next",
                           {{"say", test.say}, {"red", params["red"]}, {"black", params["black"]}});
    }
    std::vector<std::string> wires;
    for (const std::string &pull : test.pull)
        wires.push_back(wireName(machine, wireId(found.component, pull)));
    params["wires"] = joined(wires, "; ");
    params["part"] = loop ? test.name : lowerFirst(nameOf(machine, found.component));
    if (!test.jaw.empty())
        return phrases.say("test.clamp",
                           {{"wire", wireName(machine, wireId(found.component, test.jaw))}, {"part", params["part"]}});
    return phrases.say(test.pull.empty() ? "test.probe" : "test.pull_and_probe", params);
}

} // namespace core
