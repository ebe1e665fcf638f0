// The guided walk in a terminal: the same session, the same hold points, one question a time.
#include "app/cli/commands.h"
#include "app/cli/job_of.h"
#include "app/store/content_files.h"
#include "core/base/text.h"
#include "core/session/view_of.h"

#include <array>
#include <charconv>
#include <fmt/format.h>
#include <iostream>

namespace app {
namespace {

using core::Command;
using core::StepView;

void say(std::string_view text)
{
    std::cout << core::printable(text) << '\n';
}

std::optional<std::string> typed(std::string_view prompt)
{
    std::cout << prompt << std::flush;
    std::string line;
    if (!std::getline(std::cin, line))
        return std::nullopt;
    return std::string(core::trimmed(line));
}

std::optional<std::size_t> numberOf(const std::string &text, std::size_t count)
{
    std::size_t n = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), n);
    return error == std::errc{} && end == text.data() + text.size() && n >= 1 && n <= count ? std::optional(n - 1) : std::nullopt;
}

void showSafety(const core::Session &session, const StepView &step)
{
    const auto text = session.content().safety->screens.find(step.screen);
    if (text == session.content().safety->screens.end())
        return;
    const std::string word = core::wordOf(text->second, step.conditions);
    if (!word.empty())
        say("\n*** " + word + " ***");
    for (const core::SafetyLine &line : core::linesOf(text->second, step.conditions, step.params))
        say("  " + line.text);
    if (!step.caution.empty())
        say("  from the tree: " + step.caution);
}

void showVerdict(const core::StateView &view)
{
    const core::VerdictView &v = *view.verdict;
    say("\n== " + v.headline + " ==");
    for (const std::string &line : {v.sentence, v.basis.empty() ? std::string() : "Basis: " + v.basis})
        if (!line.empty())
            say(line);
    for (const core::ProofLine &p : v.proofs)
        say(fmt::format("  {} {}: {}{}", p.failed ? "[x]" : "[v]", p.title, p.said, p.good.empty() ? "" : " (good: " + p.good + ")"));
    for (const auto *list : {&v.notes, &v.refused, &v.prove})
        for (const std::string &line : *list)
            say("  - " + line);
    if (!v.putBack.empty())
        say("Put it together:");
    for (const core::Named &item : v.putBack)
        say("  [ ] " + item.text);
    for (std::size_t n = 0; n < view.offers.size() && n < 9; ++n)
        say(fmt::format("  {}. {} ({:.0f} min, {})", n + 1, view.offers[n].title, view.offers[n].minutes, view.offers[n].why));
}

void showStep(const core::Session &session, const core::StateView &view)
{
    const StepView &step = view.step;
    say(fmt::format("\n-- power: {}{}", word(view.power), step.minutes > 0 ? fmt::format(" - about {:.0f} min", step.minutes) : ""));
    if (!view.saved)
        say("!! The last answer could not be kept on the disk. The walk goes on.");
    if (!step.screen.empty() && step.screen != "S0") {
        showSafety(session, step);
    } else {
        if (!step.placeSay.empty())
            say(step.placeSay + ".");
        if (!step.title.empty())
            say("[" + step.title + "]");
        say(step.text);
        if (step.reseat)
            say(session.content().phrases->say("test.reseat"));
        if (step.near)
            say(session.content().phrases->say("test.near"));
        if (step.good)
            say("A good one reads " + core::goodInWords(*step.good) + ".");
        if (!step.why.empty())
            say("(" + step.why + ")");
    }
    for (std::size_t n = 0; n < step.answers.size(); ++n)
        say(fmt::format("  {}. {}", n + 1, step.answers[n].text));
    for (const core::Named &box : step.boxes)
        say("  [ ] " + box.text);
    if (!step.pair.empty())
        say("Measure: " + step.pair);
}

std::string promptFor(const StepView &step)
{
    switch (step.kind) {
    case StepView::Kind::Ask:
    case StepView::Kind::Look:
    case StepView::Kind::Do: return "number (s skip, u undo, STOP): ";
    case StepView::Kind::Test: return "reading (s skip, u undo, STOP): ";
    case StepView::Kind::ProveDead: return step.unit.empty() ? "type yes when all of it is so, no to decline: " : "volts shown: ";
    case StepView::Kind::Isolate: return step.unit.empty() ? "type yes when every line is so, no to decline: " : "volts shown: ";
    case StepView::Kind::Hold: return "type yes to go on, no for not this one, never for never in this job: ";
    case StepView::Kind::Verdict: return "number of a test, t together, q quit: ";
    }
    return "> ";
}

// Temperatures a reading needs are asked for one by one.
bool askFigures(const StepView &step, Command &command)
{
    for (const core::Demanded &d : step.with) {
        const auto figure = typed(d.text + " ");
        if (!figure)
            return false;
        command.with[d.id] = *figure;
    }
    return true;
}

std::optional<Command> commandFrom(const core::StateView &view, const std::string &line)
{
    const StepView &step = view.step;
    Command c;
    const std::string low = core::lowered(line);
    if (line == "STOP" || low == "stop" || low == "gas") {
        c.what = Command::What::Stop;
        c.why = low == "stop" ? "gas" : low;
    } else if (low == "u") {
        c.what = Command::What::Undo;
    } else if (low == "s" && step.boxes.empty()) {
        c.what = Command::What::Skip;
    } else if (step.kind == StepView::Kind::Verdict) {
        const auto n = numberOf(line, view.offers.size());
        if (!n && low != "t")
            return std::nullopt;
        c.what = n ? Command::What::Choose : Command::What::Confirm;
        if (n)
            c.test = view.offers[*n].test;
    } else if (!step.answers.empty()) {
        const auto n = numberOf(line, step.answers.size());
        if (!n)
            return std::nullopt;
        c.what = Command::What::Answer;
        c.value = step.answers[*n].value;
    } else if (!step.unit.empty()) {
        c.what = Command::What::Reading;
        c.value = line;
    } else if (low == "yes") {
        const bool hold = step.kind == StepView::Kind::Hold || step.kind == StepView::Kind::ProveDead;
        c.what = hold ? Command::What::Acknowledge : Command::What::Confirm;
    } else if (low == "no" || low == "never") {
        c.what = Command::What::Decline;
        c.never = low == "never";
    } else {
        return std::nullopt;
    }
    return c;
}

int walkOn(core::Session &session)
{
    for (;;) {
        const core::StateView view = core::viewOf(session);
        showStep(session, view);
        if (view.verdict)
            showVerdict(view);
        const auto line = typed(promptFor(view.step));
        if (!line || (view.step.kind == StepView::Kind::Verdict && (*line == "q" || view.stopped)))
            return 0;
        auto command = commandFrom(view, *line);
        if (!command) {
            say("That is not one of the answers.");
            continue;
        }
        if (command->what == Command::What::Reading && view.step.kind == StepView::Kind::Test && !askFigures(view.step, *command))
            return 0;
        if (const auto denial = session.handle(*command, core::now())) {
            say("Not taken: " + denial->text);
            for (const std::string &suggestion : denial->suggestions)
                say("   did you mean " + suggestion + "?");
        }
    }
}

std::string chooseTree(const core::Library &library)
{
    std::vector<std::string> ids;
    for (const auto &[id, tree] : library.trees)
        if (!library.faulty.contains(id)) {
            ids.push_back(id);
            say(fmt::format("  {}. {}: {}", ids.size(), library.appliance(tree.appliance)->name, tree.complaint));
        }
    for (;;) {
        const auto line = typed("What is wrong? number: ");
        if (!line)
            return {};
        if (const auto n = numberOf(*line, ids.size()))
            return ids[*n];
    }
}

core::Meter askMeter()
{
    core::Meter meter;
    say("Your meter: which of these can it do? Letters in any order: r ohms, b beeper, v volts~, d volts=, c clamp amps, f capacitance, t temperature");
    const std::string can = typed("letters (rbv if you just press Enter): ").value_or("");
    for (const char c : can.empty() ? std::string("rbv") : can) {
        constexpr std::string_view kLetters = "rbvdcft";
        constexpr std::array<std::string_view, 7> kWords{"resistance", "continuity", "voltage_ac", "voltage_dc", "current_clamp", "capacitance", "temperature"};
        if (const auto at = kLetters.find(c); at != std::string_view::npos)
            meter.functions.insert(std::string(kWords[at]));
    }
    meter.category = typed("Category mark printed at its jacks, like CAT III 600 V (Enter: none): ").value_or("");
    return meter;
}

} // namespace

int runWalk(const Choices &choices)
{
    const auto files = loadContent(dataFolder(), userFolder());
    if (!files) {
        std::cerr << files.error() << '\n';
        return 66;
    }
    say("Meter First. Local codes and licensed practice stand above this program.");
    JobOf job;
    core::Expected<core::Session, std::string> session = core::unexpected(std::string());
    if (!choices.job.empty()) {
        session = job.resume(files->content(), choices.job);
    } else {
        core::Snapshot snapshot;
        snapshot.tree = choices.tree.empty() ? chooseTree(files->library) : choices.tree;
        if (snapshot.tree.empty())
            return 0;
        snapshot.meter = askMeter();
        const auto live = typed("Readings with power on, each behind its own caution screen: may they be offered in this job? (yes or Enter for no): ");
        snapshot.energized = live && core::lowered(*live) == "yes";
        session = job.begin(files->content(), std::move(snapshot));
    }
    if (!session) {
        std::cerr << core::printable(session.error()) << '\n';
        return 66;
    }
    if (!job.note().empty())
        say(job.note());
    return walkOn(*session);
}

} // namespace app
