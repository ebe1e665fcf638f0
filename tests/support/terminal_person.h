#pragma once
// Somebody at a terminal: is shown what the program prints and types the next line.
#include "app/cli/walk.h"
#include "tests/support/walker.h"

#include <algorithm>
#include <functional>
#include <sstream>
#include <streambuf>

namespace test {

// Lines are asked of `says` one at a time, with what was printed since the last one; nullopt ends the input.
class Person : private std::streambuf
{
public:
    using Says = std::function<std::optional<std::string>(const std::string &shown)>;
    explicit Person(Says says) : m_says(std::move(says)), m_in(this) {}

    app::Terminal terminal() { return {m_in, m_out}; }
    std::string all() const { return m_out.str(); }
    std::string rest() const { return m_out.str().substr(m_seen); } // printed since the last line

private:
    int_type underflow() override
    {
        const std::string text = m_out.str();
        const auto line = m_says(text.substr(m_seen));
        m_seen = text.size();
        if (!line)
            return traits_type::eof();
        m_line = *line + "\n";
        setg(m_line.data(), m_line.data(), m_line.data() + m_line.size());
        return traits_type::to_int_type(m_line.front());
    }

    Says m_says;
    std::string m_line;
    std::ostringstream m_out;
    std::size_t m_seen = 0;
    std::istream m_in;
};

// A walk of a shipped tree, typed. Its clocks move by three seconds a command, and by wait().
class TypedWalk
{
public:
    explicit TypedWalk(const std::string &tree, bool energized = true, const std::string &who = "owner")
        : m_session(begin(tree, energized, who))
    {
    }

    // Types the lines and returns what was shown after the last of them.
    std::string type(const std::vector<std::string> &lines)
    {
        std::size_t next = 0;
        std::string last;
        Person person([&](const std::string &shown) -> std::optional<std::string> {
            last = shown;
            if (next == lines.size())
                return std::nullopt;
            return lines[next++];
        });
        app::Terminal terminal = person.terminal();
        app::Walk walk(m_session, terminal, "meterfirst-cli walk --job 0412-KTR",
                       [this] { return m_now = core::later(m_now, 3); });
        walk.run();
        all = person.all();
        return person.rest().empty() ? last : person.rest();
    }
    void wait(double seconds) { m_now = core::later(m_now, seconds); }

    core::Session &session() { return m_session; }
    core::StateView view() const { return core::viewOf(m_session); }
    const core::Event &last(core::Event::What what) const
    {
        static const core::Event kNone;
        for (auto e = m_session.events().rbegin(); e != m_session.events().rend(); ++e)
            if (e->what == what)
                return *e;
        return kNone;
    }
    int count(core::Event::What what) const
    {
        return static_cast<int>(std::ranges::count(m_session.events(), what, &core::Event::what));
    }

    // Answers what is asked as a healthy machine would, until `there` is on the display.
    bool goTo(const std::function<bool(const core::StepView &)> &there)
    {
        for (int n = 0; n < 200; ++n) {
            const core::StepView step = view().step;
            if (there(step))
                return true;
            if (step.kind == core::StepView::Kind::Verdict)
                return false;
            wait(step.waitS + 1);
            type(healthy(step));
        }
        return false;
    }
    bool goToTest(const std::string &test)
    {
        return goTo(
            [&](const core::StepView &s) { return s.screen.empty() && s.test == test && s.kind == core::StepView::Kind::Test; });
    }

    std::string all; // everything the last type() printed
    std::map<std::string, std::string> machine{{"supply", "split_120_240"}, {"control", "knob"}, {"cord", "4_wire"}};
    std::map<std::string, std::string> reads{{"heat_chain", "OL"}}; // test -> what it reads here
    std::string offBy = "plug";                                     // how it is made off after it ran

private:
    static core::Session begin(const std::string &tree, bool energized, const std::string &who)
    {
        core::Snapshot s;
        s.tree = tree;
        s.energized = energized;
        s.who = who;
        s.meter.functions = {"resistance",    "continuity",  "voltage_ac", "voltage_dc",
                             "current_clamp", "capacitance", "temperature"};
        s.meter.category = "CAT III 600 V";
        s.meter.probeZero = core::Amount{.2, core::Unit::Ohm};
        return core::Session::begin(core::Shipped::get().content(), std::move(s), "test", {1'000'000, 1'000'000}, {}).value();
    }

    std::vector<std::string> healthy(const core::StepView &step) const
    {
        if (step.screen == "S0")
            return {"3"};
        if (!step.screen.empty() && !step.unit.empty())
            return {step.phase.starts_with("known") ? "120 V" : "0 V"};
        if (!step.screen.empty()) {
            const auto way = std::ranges::find(step.ways, offBy, &core::Named::id); // of S9
            std::vector<std::string> lines{std::to_string(way == step.ways.end() ? 1 : way - step.ways.begin() + 1)};
            lines.insert(lines.end(), step.boxes.size(), "yes");
            return lines;
        }
        if (!step.answers.empty())
            return {std::to_string(answerOf(step) + 1)};
        const auto own = reads.find(step.test);
        std::vector<std::string> lines{own != reads.end() ? own->second : goodReading(step)};
        for (const core::Demanded &d : step.with)
            if (d.id != "reached_temperature")
                lines.push_back(d.id == "printed_temperature" ? "63 C" : "22 C");
        return lines;
    }
    std::size_t answerOf(const core::StepView &step) const
    {
        const auto own = machine.find(step.id);
        for (std::size_t n = 0; n < step.answers.size(); ++n)
            if (own != machine.end() ? step.answers[n].value == own->second
                                     : step.answers[n].pointsTo.empty() && !step.answers[n].clears.empty())
                return n;
        for (std::size_t n = 0; n < step.answers.size(); ++n)
            if (step.answers[n].pointsTo.empty())
                return n;
        return 0;
    }
    static std::string goodReading(const core::StepView &step)
    {
        if (step.unit == "continuity")
            return step.good && step.good->openIsGood ? "no tone" : "tone";
        if (!step.good || step.good->openIsGood)
            return "OL";
        const double value = step.good->lo > 0 && step.good->hi < 1e9 ? (step.good->lo + step.good->hi) / 2
                             : step.good->lo > 0                      ? step.good->lo * 1.1
                                                                      : std::min(step.good->hi / 4, .3);
        std::ostringstream text;
        text << std::round(value * 10) / 10 << ' ' << (step.unit == "Cel" ? "C" : step.unit);
        return text.str();
    }

    core::Instant m_now{2'000'000, 2'000'000};
    core::Session m_session;
};

} // namespace test
