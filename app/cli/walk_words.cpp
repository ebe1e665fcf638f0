// What can be said at any moment of a walk, whatever is asked.
#include "app/cli/walk.h"
#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace app {

using Command = core::Command;

struct WalkWords
{
    using Do = void (*)(Walk &, const core::StateView &, const std::string &);
    struct Word
    {
        std::string_view word, shorter, help;
        Do act;
    };
    static const std::array<Word, 20> kAll;
};

const std::array<WalkWords::Word, 20> WalkWords::kAll{{
    {"help", "?", "this list", [](Walk &w, const core::StateView &v, const std::string &) { w.sayHelp(v); }},
    {"again", "", "show the step once more (or just Enter)",
     [](Walk &w, const core::StateView &, const std::string &) { w.m_shown = 0; }},
    {"cannot", "", "I cannot: where is it, out of reach, looks different, not sure",
     [](Walk &w, const core::StateView &v, const std::string &r) { w.cannot(v, r); }},
    {"skip", "s", "leave this step out, with a reason if you like",
     [](Walk &w, const core::StateView &v, const std::string &r) { w.skip(v, r); }},
    {"undo", "u", "take the last answer or reading back",
     [](Walk &w, const core::StateView &v, const std::string &) { w.undo(v); }},
    {"amend", "", "change an earlier answer; what falls away is shown first",
     [](Walk &w, const core::StateView &v, const std::string &r) { w.amend(v, r); }},
    {"choose", "", "another test: a list, or `choose` and its name",
     [](Walk &w, const core::StateView &v, const std::string &r) { w.choose(v, r); }},
    {"way", "", "what was answered and read so far", [](Walk &w, const core::StateView &v, const std::string &) { w.sayWay(v); }},
    {"suspects", "", "what may be behind it, the likeliest first",
     [](Walk &w, const core::StateView &v, const std::string &) { w.saySuspects(v); }},
    {"why", "", "why the likeliest is so, or `why` and a part",
     [](Walk &w, const core::StateView &v, const std::string &r) { w.sayWhy(v, r); }},
    {"price", "", "what guessing now would cost", [](Walk &w, const core::StateView &v, const std::string &) { w.sayPrice(v); }},
    {"plate", "", "a value off the plate: `plate 240 V 5400 W`",
     [](Walk &w, const core::StateView &, const std::string &r) { w.plate(r); }},
    {"meter", "", "another meter", [](Walk &w, const core::StateView &, const std::string &) { w.changeMeter(); }},
    {"energized", "", "`energized on` or `off`: readings with power on, for this job",
     [](Walk &w, const core::StateView &, const std::string &r) { w.energized(r); }},
    {"not in sight", "", "the plug is no longer in my sight",
     [](Walk &w, const core::StateView &v, const std::string &) { w.notInSight(v); }},
    {"together", "t", "at the verdict: wires, meter and covers, one by one",
     [](Walk &w, const core::StateView &v, const std::string &) { w.together(v); }},
    {"prove", "", "at the verdict: the repair is done, prove it",
     [](Walk &w, const core::StateView &, const std::string &) { w.prove(); }},
    {"outcome", "", "what became of it", [](Walk &w, const core::StateView &, const std::string &r) { w.outcome(r); }},
    {"park", "", "enough for today; go on later", [](Walk &w, const core::StateView &, const std::string &) { w.park(); }},
    {"quit", "q", "the same", [](Walk &w, const core::StateView &, const std::string &) { w.park(); }},
}};

bool Walk::takeWord(const View &view, const std::string &line)
{
    std::string low = core::lowered(line);
    for (const std::string_view spelt : {"i cannot", "i can't", "can't", "cant"})
        if (low.starts_with(spelt))
            low.replace(0, spelt.size(), "cannot");
    if (low.find("not in") != std::string::npos && low.find("sight") != std::string::npos)
        low = "not in sight";
    for (const WalkWords::Word &w : WalkWords::kAll) {
        const bool whole = low == w.word || (!w.shorter.empty() && low == w.shorter);
        const bool longer = low.starts_with(std::string(w.word) + " ") || (w.shorter == "s" && low.starts_with("s "));
        if (!whole && !longer)
            continue;
        w.act(*this, view, whole ? std::string() : std::string(core::trimmed(low.substr(low.find(' ')))));
        return true;
    }
    return false;
}

void Walk::sayHelp(const View &)
{
    m_terminal.say("At any moment:");
    for (const WalkWords::Word &w : WalkWords::kAll)
        m_terminal.say(fmt::format("  {:<14}{}{}", w.word, w.shorter.empty() ? "" : "(" + std::string(w.shorter) + ") ", w.help));
    m_terminal.say("  stop, gas, co, smoke, shock, spark, water: danger; its page comes at once");
}

void Walk::sayWay(const View &view)
{
    for (const core::WayView &stub : view.way)
        m_terminal.say(fmt::format("  {:>3}  {}{}", stub.event, stub.title, stub.said.empty() ? "" : ": " + stub.said));
}

} // namespace app
