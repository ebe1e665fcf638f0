#include "app/cli/walk_begin.h"

#include "app/cli/danger_word.h"
#include "core/base/text.h"
#include "core/diag/diagnostic.h"
#include "core/gate/meter_fit.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace app {
namespace {

struct Function
{
    char letter;
    std::string_view word, said;
    std::array<std::string_view, 4> also;
};

constexpr auto kFunctions = std::to_array<Function>({
    {'r', "resistance", "ohms", {"ohm", "ohms", "resistance", "\u03a9"}},
    {'b', "continuity", "beeper", {"beep", "beeper", "continuity", "tone"}},
    {'v', "voltage_ac", "volts~", {"volts~", "v~", "voltage_ac", "vac"}},
    {'d', "voltage_dc", "volts=", {"volts=", "v=", "voltage_dc", "vdc"}},
    {'c', "current_clamp", "clamp amps", {"clamp", "current_clamp", "amps", "a~"}},
    {'f', "capacitance", "capacitance", {"capacitance", "\u00b5f", "uf", "farad"}},
    {'t', "temperature", "temperature", {"temperature", "\u00b0c", "\u00b0f", "degrees"}},
});

const Function *functionNamed(std::string_view word)
{
    const auto at =
        std::ranges::find_if(kFunctions, [&](const Function &f) { return std::ranges::find(f.also, word) != f.also.end(); });
    return at == kFunctions.end() ? nullptr : &*at;
}

const Function *functionOf(char letter)
{
    const auto at = std::ranges::find(kFunctions, letter, &Function::letter);
    return at == kFunctions.end() ? nullptr : &*at;
}

// nullopt: no more input, or danger, shown then
std::optional<std::string> typed(const core::Content &content, Terminal &terminal, std::string_view prompt)
{
    auto line = terminal.ask(prompt);
    if (!line)
        return line;
    const auto danger = dangerIn(*line);
    if (!danger)
        return line;
    showDanger(content, terminal, *danger);
    return std::nullopt;
}

std::optional<std::size_t> chosen(const core::Content &content, Terminal &terminal, std::string_view prompt, std::size_t count)
{
    for (;;) {
        const auto line = typed(content, terminal, prompt);
        if (!line)
            return std::nullopt;
        if (const auto n = numberIn(*line, count))
            return n;
        terminal.say(fmt::format("A number from 1 to {}, please.", count));
    }
}

std::optional<std::string> askTree(const core::Content &content, Terminal &terminal)
{
    const std::vector<std::string> ids = usableTrees(*content.library);
    for (std::size_t n = 0; n < ids.size(); ++n) {
        const core::Tree &tree = *content.library->tree(ids[n]);
        terminal.say(fmt::format("  {}. {}: {}", n + 1, content.library->appliance(tree.appliance)->name, tree.complaint));
    }
    const auto n = ids.empty() ? std::nullopt : chosen(content, terminal, "What is wrong? number: ", ids.size());
    return n ? std::optional(ids[*n]) : std::nullopt;
}

bool askWhom(const core::Content &content, Terminal &terminal, core::Snapshot &snapshot)
{
    terminal.say("Who stands at the machine?\n  1. you\n  2. somebody you advise: at the counter, or on the telephone");
    const auto n = chosen(content, terminal, "number: ", 2);
    if (!n)
        return false;
    snapshot.who = *n == 0 ? "owner" : "proxy";
    if (const std::string &say = content.library->tree(snapshot.tree)->say; *n == 1 && !say.empty())
        terminal.say("Read aloud: \u201c" + say + "\u201d");
    return true;
}

std::optional<std::string> askCategory(Terminal &terminal, const AskLine &ask)
{
    for (;;) {
        const auto line = ask("Category mark printed at its jacks, like CAT III 600 V (Enter: none): ");
        if (!line || line->empty() || core::lowered(*line) == "none") {
            if (line)
                terminal.say("No mark: this meter stays away from voltage.");
            return line ? std::optional<std::string>("") : std::nullopt;
        }
        const core::MeterMark mark = core::markIn(*line);
        if (mark.category > 0) {
            terminal.say("Mark: " + core::shown(mark) + ".");
            return core::shown(mark);
        }
        terminal.say("That is no category mark. It reads CAT II, III or IV and the volts, like CAT III 600 V.");
    }
}

} // namespace

std::vector<std::string> usableTrees(const core::Library &library)
{
    std::vector<std::string> ids;
    for (const auto &[id, tree] : library.trees)
        if (!library.faulty.contains(id))
            ids.push_back(id);
    return ids;
}

std::string whyNoTree(const core::Library &library, const std::string &tree)
{
    if (library.faulty.contains(tree))
        return "The tree `" + tree + "` has faults; `meterfirst-cli check` names them.";
    if (library.tree(tree) != nullptr)
        return {};
    const std::vector<std::string> ids = usableTrees(library);
    std::string text = "There is no tree `" + tree + "`.";
    for (const std::string &id : ids) // the complaint alone, or the appliance alone
        if (id.ends_with("/" + tree) || id.starts_with(tree + "/"))
            text += "\n    " + id;
    const std::string near = core::didYouMean(tree, ids);
    return near.empty() || text.ends_with(tree) ? text + "\n    meterfirst-cli list names them all" : text + "\n    " + near;
}

core::Expected<std::set<std::string>, std::string> functionsIn(std::string_view line)
{
    std::string low = core::lowered(line);
    std::ranges::replace(low, ',', ' ');
    std::set<std::string> functions;
    if (core::trimmed(low) == "none")
        return functions;
    for (const std::string_view word : core::split(low, ' ')) {
        if (word.empty() || word == "and")
            continue;
        if (word == "volts" || word == "volt")
            return core::unexpected(std::string("volts: is it v (volts~, alternating), d (volts=, straight line), or both?"));
        if (const Function *named = functionNamed(word)) {
            functions.insert(std::string(named->word));
            continue;
        }
        for (const char c : word) {
            const Function *f = functionOf(c);
            if (f == nullptr)
                return core::unexpected("`" + std::string(word) + "` is none of these.");
            functions.insert(std::string(f->word));
        }
    }
    return functions;
}

std::string functionsSaid(const std::set<std::string> &functions)
{
    std::vector<std::string> said;
    for (const Function &f : kFunctions)
        if (functions.contains(std::string(f.word)))
            said.emplace_back(f.said);
    return said.empty() ? "no meter" : core::joined(said, ", ");
}

std::string missingSaid(const std::set<std::string> &functions)
{
    if (!functions.contains("resistance"))
        return "Without ohms almost no part can be proven bad: what is left are looks and the beeper, and the answer will "
               "mostly be \u201cnot proven\u201d. Any meter with \u03a9 on its dial will do.";
    if (!functions.contains("voltage_ac"))
        return "Without volts~ nothing can be measured at an outlet, and \u201cbreaker off\u201d cannot be proved: then the plug "
               "comes out.";
    return {};
}

std::optional<core::Meter> askMeter(Terminal &terminal, const AskLine &ask)
{
    terminal.say(
        "Your meter: which of these can it do? r ohms, b beeper, v volts~, d volts=, c clamp amps, f capacitance, t temperature");
    core::Meter meter;
    for (;;) {
        const auto line = ask("letters or words (Enter: r b v; none: no meter): ");
        if (!line)
            return std::nullopt;
        auto functions = functionsIn(line->empty() ? "rbv" : *line);
        if (functions) {
            meter.functions = std::move(*functions);
            break;
        }
        terminal.say(functions.error());
    }
    terminal.say("Your meter: " + functionsSaid(meter.functions) + ".");
    if (const std::string missing = missingSaid(meter.functions); !missing.empty())
        terminal.say(missing);
    if (meter.functions.empty())
        return meter;
    const auto category = askCategory(terminal, ask);
    if (!category)
        return std::nullopt;
    meter.category = *category;
    return meter;
}

bool askBefore(const core::Content &content, Terminal &terminal, core::Snapshot &snapshot)
{
    if (snapshot.tree.empty()) {
        const auto tree = askTree(content, terminal);
        if (!tree)
            return false;
        snapshot.tree = *tree;
    }
    if (!askWhom(content, terminal, snapshot))
        return false;
    auto meter = askMeter(terminal, [&](std::string_view prompt) { return typed(content, terminal, prompt); });
    if (!meter)
        return false;
    snapshot.meter = std::move(*meter);
    const auto live = typed(content, terminal,
                            snapshot.who == "proxy" ? "Readings with power on, each behind its own caution screen: did a manager "
                                                      "of the shop, by name, allow them for this job? (yes or Enter for no): "
                                                    : "Readings with power on, each behind its own caution screen: may they be "
                                                      "offered in this job? (yes or Enter for no): ");
    if (!live)
        return false;
    snapshot.energized = core::lowered(*live) == "yes";
    return true;
}

void showDanger(const core::Content &content, Terminal &terminal, std::string_view why)
{
    const bool gas = why == "gas" || why == "co";
    const auto text = content.safety->screens.find(gas ? "S12" : "S14");
    if (text == content.safety->screens.end())
        return;
    const std::vector<std::string> notes{std::string(why)};
    terminal.say("\n*** " + core::wordOf(text->second, notes) + " ***");
    for (const core::SafetyLine &line : core::linesOf(text->second, notes, {}))
        terminal.say("  " + line.text);
}

} // namespace app
