#pragma once
// Plays a session of the shipped content by what a person would say; the safety screens are confirmed as they come.
#include "core/load/load.h"
#include "core/session/event_text.h"
#include "core/session/session.h"
#include "core/session/view_of.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

namespace core {

inline std::string textOf(const std::string &path)
{
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

struct Shipped
{
    Library library;
    Phrases phrases;
    SafetyTexts safety;
    Content content() const { return {&library, &phrases, &safety}; }

    static const Shipped &get()
    {
        static const Shipped shipped = [] {
            Shipped s;
            const std::filesystem::path folder = TREES;
            s.library = loadFolders({&folder, 1}).library;
            s.phrases = Phrases::parse(textOf(SOURCE "/resources/texts/phrases.en.json")).value();
            s.safety = safetyTextsIn(textOf(SOURCE "/resources/texts/safety.en.json")).value();
            return s;
        }();
        return shipped;
    }
};

class Walker
{
public:
    explicit Walker(const std::string &tree, bool energized = true, bool told = true)
        : m_session(begin(tree, energized, told, [this](const Event &e) {
              kept.push_back(toLine(e));
              return diskTakes;
          }))
    {
    }
    Walker(const Walker &) = delete;
    Walker &operator=(const Walker &) = delete;

    Session &session() { return m_session; }
    StepView step() const { return stepView(m_session); }
    VerdictView verdict() const { return verdictView(m_session, componentViews(m_session)); }
    bool atVerdict() const { return step().kind == StepView::Kind::Verdict; }

    std::string say(Command::What what, const std::string &value = {}, double afterS = 0)
    {
        Command c;
        c.what = what;
        c.value = value;
        c.afterS = afterS;
        return tell(c);
    }
    // "" when it was taken, else the code of the refusal
    std::string tell(const Command &c)
    {
        const auto denial = m_session.handle(c, m_session.at());
        return denial ? denial->code : std::string();
    }

    // The screen the gate has put in between, confirmed as it asks. "" when it was taken.
    std::string passOne()
    {
        const StepView s = step();
        if (s.screen == "S0")
            return say(Command::What::Answer, "closed");
        if (!s.unit.empty())
            return say(Command::What::Reading, s.phase.starts_with("known") ? "120 V" : "0 V", s.waitS);
        if (s.kind == StepView::Kind::Hold || s.kind == StepView::Kind::ProveDead)
            return say(Command::What::Acknowledge);
        return say(Command::What::Confirm, {}, s.waitS);
    }

    void passSafety()
    {
        for (int n = 0; n < 40 && !step().screen.empty(); ++n)
            ASSERT_EQ(passOne(), "") << step().screen;
    }

    // Goes on until this test or step is shown, healthy answers and readings on the way; false if the verdict came first.
    bool goTo(const std::string &wanted)
    {
        for (int n = 0; n < 120; ++n) {
            passSafety();
            const StepView s = step();
            if (s.test == wanted || s.id == wanted)
                return true;
            if (atVerdict() || !healthy().empty())
                return false;
        }
        return false;
    }

    void toTheEnd()
    {
        for (int n = 0; n < 120 && !(atVerdict() && step().screen.empty()); ++n) {
            passSafety();
            if (!atVerdict()) {
                ASSERT_EQ(healthy(), "");
            }
        }
    }

    std::string read(const std::string &value, std::map<std::string, std::string> with = {})
    {
        Command c;
        c.what = Command::What::Reading;
        c.value = value;
        c.with = std::move(with);
        c.afterS = step().waitS;
        return tell(c);
    }
    std::string answer(const std::string &value) { return say(Command::What::Answer, value); }

    std::string healthy()
    {
        const StepView s = step();
        if (s.kind == StepView::Kind::Test)
            return read(goodReading(s), figures(s));
        if (const auto own = machine.find(s.id); own != machine.end())
            return answer(own->second);
        for (const Option &o : s.answers)
            if (o.pointsTo.empty() && !o.clears.empty())
                return answer(o.value);
        for (const Option &o : s.answers)
            if (o.pointsTo.empty())
                return answer(o.value);
        return answer(s.answers.front().value);
    }

    std::map<std::string, std::string> machine{{"supply", "split_120_240"}, {"control", "knob"}, {"cord", "4_wire"}};
    std::vector<std::string> kept;
    bool diskTakes = true;

private:
    static std::map<std::string, std::string> figures(const StepView &s)
    {
        std::map<std::string, std::string> with;
        for (const Demanded &d : s.with) {
            const double inside = !d.limits ? 22 : std::isfinite(d.limits->lo) ? d.limits->lo : d.limits->hi;
            with[d.id] =
                d.id == "printed_temperature" || d.id == "reached_temperature" ? "63 C" : written({inside, Unit::Celsius});
        }
        return with;
    }

    static std::string goodReading(const StepView &s)
    {
        if (s.unit == "continuity")
            return s.good && s.good->openIsGood ? "no tone" : "tone";
        if (!s.good || s.good->openIsGood)
            return "OL";
        const double lo = s.good->lo > 0 ? s.good->lo : 0, hi = s.good->hi < Limits::kNone ? s.good->hi : lo * 1.2;
        const double value = lo > 0 ? (lo + hi) / 2 : .1;
        const double kept = value > 100 ? std::round(value) : std::round(value * 10) / 10; // "2.750" could be read two ways
        return written({kept, s.good->unit});
    }

    static Session begin(const std::string &tree, bool energized, bool told, Session::Keep keep)
    {
        Snapshot snapshot;
        snapshot.tree = tree;
        snapshot.energized = energized;
        snapshot.toldClock = told;
        snapshot.ambient = Amount{22, Unit::Celsius};
        snapshot.meter.functions = {"resistance",    "continuity",  "voltage_ac", "voltage_dc",
                                    "current_clamp", "capacitance", "temperature"};
        snapshot.meter.category = "CAT III 600 V";
        snapshot.meter.probeZero = Amount{.2, Unit::Ohm};
        auto session =
            Session::begin(Shipped::get().content(), std::move(snapshot), "test", {1'000'000, 1'000'000}, std::move(keep));
        EXPECT_TRUE(session.has_value());
        return std::move(*session);
    }

    Session m_session;
};

} // namespace core
