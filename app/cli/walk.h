#pragma once
// The guided walk in a terminal: the same session, the same hold points, one question a time.
#include "app/cli/terminal.h"
#include "core/session/view_of.h"

#include <functional>

namespace app {

class Walk
{
public:
    using Clock = std::function<core::Instant()>;
    // The session outlives the walk. `goOnWith`: what to type to come back to this job; "" if it is not kept.
    Walk(core::Session &session, Terminal &terminal, std::string goOnWith = {}, Clock clock = core::now);

    // Until the person leaves, the job is closed, or nothing more comes in.
    void run();

private:
    friend struct WalkWords; // the table of what can be said
    using View = core::StateView;

    void take(const View &view, const std::string &line);
    bool takeWord(const View &view, const std::string &line);
    void takeAtVerdict(const View &view, const std::string &line);
    std::string prompt(const View &view) const;

    // safety screens (walk_safety.cpp)
    void takeOnScreen(const View &view, const std::string &line);
    void takeWay(const View &view, const std::string &way);
    bool tickAll(const std::vector<core::Named> &boxes);
    void stop(const std::string &why);
    void wasNotGas();
    bool takeDetour(const View &view, std::string_view way);

    // readings (walk_reading.cpp)
    void takeReading(const View &view, const std::string &line);
    std::optional<std::string> understood(std::string value, core::Measure measure);
    bool askFigures(const View &view, core::Command &command);
    void sayMeaning(const core::StepView &asked);

    // other words (walk_words.cpp, walk_change.cpp, walk_say.cpp)
    void sayHelp(const View &view);
    void sayWhy(const View &view, const std::string &part);
    void saySuspects(const View &view);
    void sayPrice(const View &view);
    void sayWay(const View &view);
    void undo(const View &view);
    void amend(const View &view, const std::string &rest);
    void choose(const View &view, const std::string &name);
    void cannot(const View &view, const std::string &rest);
    void skip(const View &view, const std::string &why);
    void notInSight(const View &view);
    void park();
    void energized(const std::string &word);
    void plate(const std::string &rest);
    void prove();
    void outcome(const std::string &word);
    void together(const View &view);
    void changeMeter();

    // nullopt: nothing more comes in, or danger was said and its page is next
    std::optional<std::string> typed(std::string_view prompt);
    std::optional<std::size_t> numbered(std::string_view prompt, std::size_t count);
    // False: refused, and said why.
    bool tell(const core::Command &command);
    bool tell(core::Command::What what, std::string value = {});

    core::Session &m_session;
    Terminal &m_terminal;
    std::string m_goOnWith;
    Clock m_clock;
    std::size_t m_shown = 0; // events when the screen was last shown
    bool m_over = false;
};

} // namespace app
