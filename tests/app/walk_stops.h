#pragma once
// Walks the window by keys past every page it has, and stops at each.
#include "tests/app/walk_driver.h"

#include <functional>

namespace walk {

// A dryer on a split supply whose drum turns while its air stays cold: its coil is broken.
inline Person withABrokenCoil()
{
    Person person;
    person.answers = {{"supply", "split_120_240"},
                      {"control", "knob"},
                      {"cord", "4_wire"},
                      {"cycle", "heated"},
                      {"breaker", "still cold"},
                      {"outside_flap", "opens wide"},
                      {"power_cord_terminal.look", "clean and tight"}};
    person.readings = {{"heat_chain", "OL"},          {"thermal_cutoff.ohm", "0.4"}, {"high_limit.ohm", "0.4"},
                       {"cycling_tstat.cold", "0.3"}, {"dryer_element.ohm", "OL"},   {"dryer_element.gnd", "OL"}};
    return person;
}

// The same machine, sound; its outlet has lost a leg.
inline Person withALostLeg()
{
    Person person = withABrokenCoil();
    person.otherwise = "0.3";
    person.readings = {{"heat_chain", "10.9"},
                       {"dryer_element.ohm", "10.8"},
                       {"dryer_element.gnd", "OL"},
                       {"thermal_cutoff.ohm", "0.4"},
                       {"house_supply.leg_to_leg", "118"},
                       {"ground_path.ohm", "0.3"},
                       {"power_cord_terminal.iso", "OL"},
                       {"power_cord_terminal.earth", "0.3"},
                       {"motor_start_switch.pull", "0.3"}};
    return person;
}

// The same machine; its breaker had tripped.
inline Person withATrippedBreaker()
{
    Person person = withABrokenCoil();
    person.answers["breaker"] = "warm now";
    return person;
}

using Until = std::function<bool(const core::StateView &)>;

inline bool goUntil(Rig &rig, const Person &person, const Until &there)
{
    for (int i = 0; i < 150 && !there(rig.view()); ++i)
        if (!goOn(rig, person))
            break;
    return there(rig.view());
}

inline Until atScreen(const std::string &name)
{
    return [=](const core::StateView &view) { return view.step.screen == name; };
}

inline Until atStep(const std::string &name) // a test, question or look
{
    return
        [=](const core::StateView &view) { return view.step.screen.empty() && (view.step.test == name || view.step.id == name); };
}

inline bool atVerdict(const core::StateView &view)
{
    return view.verdict.has_value();
}

inline void begin(Rig &rig, const char *tree, bool energized = false)
{
    if (energized) {
        rig.walk().showMeter();
        rig.settle();
        rig.press(QStringLiteral("energized"));
        rig.key(Qt::Key_Return);
    }
    rig.walk().begin(QString::fromLatin1(tree));
    rig.settle();
}

using Visit = std::function<void(Rig &, const char *page)>;

inline void visitWithoutAJob(const Visit &visit)
{
    Rig rig;
    visit(rig, "start");
    rig.type(QStringLiteral("dry"));
    visit(rig, "start, typed");
    rig.walk().showMeter();
    rig.settle();
    visit(rig, "meter");
    rig.key(Qt::Key_Escape);
    rig.key(Qt::Key_K, Qt::ControlModifier);
    visit(rig, "find");
    rig.key(Qt::Key_Escape);
    rig.key(Qt::Key_F1);
    visit(rig, "help");
    rig.key(Qt::Key_F12);
    visit(rig, "S12 without a job");
}

inline void visitOver(Rig &rig, const Visit &visit)
{
    const std::pair<int, const char *> pages[] = {
        {Qt::Key_F4, "why"}, {Qt::Key_F6, "chain"}, {Qt::Key_F7, "way"}, {Qt::Key_F1, "help"}};
    for (const auto &[key, name] : pages) {
        rig.key(key);
        visit(rig, name);
        rig.key(Qt::Key_Escape);
    }
    rig.walk().showCannot();
    rig.settle();
    visit(rig, "I cannot");
    rig.key(Qt::Key_1);
    visit(rig, "where");
    rig.key(Qt::Key_Escape);
    for (const core::WayView &way : rig.view().way)
        if (way.id == "heat_chain") {
            rig.walk().showAmend(way.event);
            break;
        }
    rig.settle();
    visit(rig, "amend");
    rig.key(Qt::Key_Escape);
}

inline void visitReplace(const Visit &visit)
{
    Rig rig;
    const Person person = withABrokenCoil();
    begin(rig, "dryer_elec/no_heat");
    visit(rig, "S0");
    const std::pair<const char *, Until> stops[] = {{"question", atStep("control")},
                                                    {"S7", atScreen("S7")},
                                                    {"to do", atStep("breaker")},
                                                    {"look", atStep("outside_flap")},
                                                    {"S9", atScreen("S9")},
                                                    {"S1", atScreen("S1")},
                                                    {"test in a loop", atStep("heat_chain")},
                                                    {"test of a part", atStep("dryer_element.ohm")}};
    for (const auto &[name, there] : stops)
        if (goUntil(rig, person, there))
            visit(rig, name);
    visitOver(rig, visit);
    rig.type(QStringLiteral("OL"));
    rig.key(Qt::Key_Return);
    visit(rig, "reading taken");
    rig.key(Qt::Key_Return);
    goUntil(rig, person, atVerdict);
    visit(rig, "verdict: replace");
    rig.key(Qt::Key_F8);
    visit(rig, "outcome");
    rig.key(Qt::Key_Escape);
    rig.press(QStringLiteral("prove"));
    visit(rig, "S8 of the proof");
    goUntil(rig, person, atStep("proof"));
    visit(rig, "proof");
    rig.key(Qt::Key_F12);
    visit(rig, "S12");
    rig.key(Qt::Key_1);
    visit(rig, "S14");
}

inline void visitOtherVerdicts(const Visit &visit)
{
    {
        Rig rig;
        begin(rig, "dryer_elec/no_heat");
        goUntil(rig, withATrippedBreaker(), atVerdict);
        visit(rig, "verdict: nothing to buy");
    }
    {
        Rig rig;
        begin(rig, "dryer_elec/no_heat");
        goUntil(rig, withALostLeg(), atVerdict);
        visit(rig, "verdict: not proven");
    }
    Rig rig;
    Person person = withALostLeg();
    person.declinesPower = false;
    begin(rig, "dryer_elec/no_heat", true);
    goUntil(rig, person, atScreen("S8"));
    visit(rig, "S8");
    goUntil(rig, person, atScreen("S5"));
    visit(rig, "S5");
    goUntil(rig, person, atStep("house_supply.leg_to_leg"));
    visit(rig, "under voltage");
    goUntil(rig, person, atVerdict);
    visit(rig, "verdict: call");
}

inline void visitProvingDead(const Visit &visit)
{
    Rig rig;
    begin(rig, "dryer_elec/no_heat");
    goUntil(rig, withABrokenCoil(), atScreen("S1"));
    rig.press(QStringLiteral("way:cannot_reach_plug"));
    visit(rig, "S2");
    rig.passScreen(QStringLiteral("confirm"));
    visit(rig, "S3, hold point");
    rig.passScreen(QStringLiteral("acknowledge"));
    visit(rig, "S3, known source");
}

inline void visitResumed(const Visit &visit)
{
    Rig rig;
    begin(rig, "dryer_elec/no_heat");
    goUntil(rig, withABrokenCoil(), atStep("cycling_tstat.cold"));
    rig.kill();
    rig.open();
    visit(rig, "start with jobs");
    for (const auto &entry : std::filesystem::directory_iterator(rig.jobs()))
        rig.walk().open(entry.path());
    rig.settle();
    visit(rig, "resumed");
}

inline void visitEveryPage(const Visit &visit)
{
    visitWithoutAJob(visit);
    visitReplace(visit);
    visitOtherVerdicts(visit);
    visitProvingDead(visit);
    visitResumed(visit);
}

} // namespace walk
