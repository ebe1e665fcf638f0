#pragma once
// Plays a person with a machine in front of them, by keys alone: safety screens are read and ticked, questions answered
// and readings typed from a table.
#include "tests/app/walk_rig.h"

#include <map>
#include <string>

namespace walk {

struct Person
{
    std::map<std::string, std::string> answers;  // step, ask or look test -> answer
    std::map<std::string, std::string> readings; // test -> what is typed, the same at every seating
    std::string otherwise = "OL";                // a test that is not in the table
    bool declinesPower = true;                   // says no at every hold point
};

// One screen on. False: nothing left to do, or the verdict is there.
inline bool goOn(Rig &rig, const Person &person)
{
    const core::StepView step = rig.view().step;
    if (rig.view().verdict)
        return false;
    if (step.screen == "S0")
        return rig.answer(QStringLiteral("closed"));
    if (step.kind == core::StepView::Kind::Hold && person.declinesPower) {
        rig.key(Qt::Key_Escape);
        return true;
    }
    if (step.waitS > 0 && !step.screen.empty()) { // the page looks at the clock once a second
        rig.pass(step.waitS);
        QTest::qWait(1100);
    }
    if (!step.screen.empty()) {
        std::string way = step.ways.empty() ? std::string() : step.ways.front().id;
        for (const core::Named &other : step.ways) // switched off at the control first, the plug when a cover comes off
            way = step.screen == "S9" && other.id == "control" ? other.id : way;
        return rig.passScreen(QString::fromStdString(way));
    }
    const std::string id = step.test.empty() ? step.id : step.test;
    if (!step.answers.empty()) {
        const auto said = person.answers.find(id);
        const auto byStep = person.answers.find(step.id);
        return rig.answer(QString::fromStdString(said != person.answers.end() ? said->second : byStep != person.answers.end() ? byStep->second : step.answers.front().value));
    }
    const auto read = person.readings.find(id);
    rig.reading(QString::fromStdString(read == person.readings.end() ? person.otherwise : read->second));
    return true;
}

inline int walkToTheEnd(Rig &rig, const Person &person, int most = 120)
{
    int screens = 0;
    while (screens < most && goOn(rig, person))
        ++screens;
    return screens;
}

} // namespace walk
