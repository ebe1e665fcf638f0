#pragma once
// One job walked through the gate the way a session does it: what is wanted is asked for, what comes up is logged, and a
// message is taken only if the gate takes it.
#include "core/gate/gate.h"

#include <gtest/gtest.h>

namespace gatetest {

using namespace core;

inline StepRequest request(std::string test, StepClass stepClass)
{
    StepRequest r;
    r.step = test;
    r.test = std::move(test);
    r.stepClass = stepClass;
    r.process = "p1";
    r.conductors = {"L1", "L2", "bare metal"};
    return r;
}

inline StepRequest ask() { return request("cycle", StepClass::A); }
inline StepRequest dead(std::string test = "element.ohm", std::vector<std::string> pulls = {"element.t1"}, std::string place = "back")
{
    StepRequest r = request(std::move(test), StepClass::D);
    r.place = std::move(place);
    r.coverOff = true;
    r.pulls = std::move(pulls);
    return r;
}
inline StepRequest capacitor()
{
    StepRequest r = dead("capacitor.uf", {"capacitor.t1"});
    r.stepClass = StepClass::DS;
    r.store = Store::Motor;
    r.storeName = "run_capacitor";
    return r;
}
inline StepRequest watch(std::string test = "air") { return request(std::move(test), StepClass::R); }
inline StepRequest clips(std::string test = "element.volt")
{
    StepRequest r = request(std::move(test), StepClass::E1);
    r.place = "back";
    r.coverOff = true;
    return r;
}
inline StepRequest face(std::string test = "house_supply.leg_to_leg") { return request(std::move(test), StepClass::E2); }

inline MeterFit goodMeter(std::string id = "m1") { return {std::move(id), {{3, 600}}, true, false, false, false}; }

inline GateStarted started(bool hardWired = false)
{
    GateStarted event;
    event.facts.job = "job";
    event.facts.appliance = "dryer_elec";
    event.facts.process = "p1";
    event.facts.hardWired = hardWired;
    event.facts.energizedOn = true;
    event.meter = goodMeter();
    return event;
}

class Walk
{
public:
    explicit Walk(const GateStarted &event = started()) { send(event); }

    GateState state;
    Instant now{1'700'000'000'000, 5'000'000};

    // The session's step 2: what comes up is logged before it is displayed.
    Screening want(const StepRequest &wanted)
    {
        const Screening screening = screenFor(state, wanted, now);
        if (screening.what == Screening::What::Show && !isShown(state, wanted))
            state = apply(state, StepShown{wanted}, now);
        if (screening.what == Screening::What::Insert && !isUp(state, screening, wanted))
            state = apply(state, ScreenShown{screening.screen, wanted}, now);
        return screening;
    }
    // The session's step 3. nullopt: taken.
    std::optional<Refusal> send(const GateEvent &event)
    {
        const auto no = mayAnswer(state, event, now);
        if (!no)
            state = apply(state, event, now);
        return no;
    }
    void later(double seconds) { now = core::later(now, seconds); }

    // Confirms or acknowledges what comes up for this step, every box ticked.
    void pass(const StepRequest &wanted, Screen expected, Way way = Way::Plain)
    {
        const Screening screening = want(wanted);
        ASSERT_EQ(screening.what, Screening::What::Insert) << word(state.power);
        ASSERT_EQ(word(screening.screen), word(expected));
        later(screening.waitS);
        std::vector<std::string> ids;
        for (const Box &box : screening.boxes)
            ids.push_back(box.id);
        const auto no = isHold(expected) || expected == Screen::S3 ? send(Acknowledged{{}, ids}) : send(Confirmed{expected, ids, way});
        ASSERT_FALSE(no) << no->text;
    }
    void closedAtStart(const StepRequest &wanted = ask())
    {
        ASSERT_EQ(want(wanted).screen, Screen::S0);
        ASSERT_FALSE(send(StartAnswered{StartAnswer::Closed}));
    }
    void isolated()
    {
        closedAtStart();
        pass(dead(), Screen::S1);
    }
    void proveDead(const StepRequest &wanted)
    {
        pass(wanted, Screen::S3);
        for (const double volts : {120., 0., 0., 0., 0., 0., 0., 120.}) {
            ASSERT_EQ(want(wanted).screen, Screen::S3);
            ASSERT_FALSE(send(ProofReading{volts}));
        }
    }
    void shows(const StepRequest &wanted)
    {
        const Screening screening = want(wanted);
        EXPECT_EQ(screening.what, Screening::What::Show)
            << wanted.test << ": " << word(screening.screen) << (screening.refusal ? " " + screening.refusal->text : "");
    }
    void inserts(const StepRequest &wanted, Screen screen)
    {
        const Screening screening = want(wanted);
        EXPECT_EQ(screening.what, Screening::What::Insert) << wanted.test;
        EXPECT_EQ(word(screening.screen), word(screen)) << wanted.test;
    }
    void refuses(const StepRequest &wanted, RefusalCode code)
    {
        const Screening screening = want(wanted);
        ASSERT_EQ(screening.what, Screening::What::Refuse) << wanted.test;
        EXPECT_EQ(word(screening.refusal->code), word(code));
    }
    Power power() const { return state.power; }
};

inline bool refusedWith(const std::optional<Refusal> &no, RefusalCode code) { return no && no->code == code; }

} // namespace gatetest
