// The gate explored breadth first: every state that any client can bring it to, in any order of messages, each with the set
// of all worlds that an obedient person may stand in. No invariant may break; and with any one rule left out, one must.
#include "tests/core/gate_scenes.h"

#include <deque>
#include <unordered_map>

using namespace gatetest;

namespace {

std::string named(const GateEvent &event)
{
    if (const auto *confirm = std::get_if<Confirmed>(&event))
        return "confirm " + std::string(word(confirm->screen)) + " way " + std::to_string(static_cast<int>(confirm->way)) + " boxes " +
               std::to_string(confirm->boxes.size());
    if (const auto *reading = std::get_if<ReadingTaken>(&event))
        return "reading of " + reading->request.test;
    if (const auto *answer = std::get_if<StartAnswered>(&event))
        return "S0 " + std::to_string(static_cast<int>(answer->answer));
    constexpr auto kNames = std::to_array<const char *>({"start", "screen", "step", "S0", "confirm", "acknowledge", "decline", "detour",
        "proof reading", "charge reading", "reading", "skip", "choose", "undo", "amend", "reported", "away", "meter", "alarm", "not gas",
        "mistake", "veto", "repair", "take back", "energized"});
    return kNames[event.index()];
}

// ---- what of a state matters: ages are told apart only where a limit lies between them ----
class Key
{
public:
    Key(const Player &player, bool timed) : m_now(player.now), m_timed(timed)
    {
        const GateState &s = player.state;
        put(static_cast<int>(s.power), static_cast<int>(s.inside.covers), static_cast<int>(s.inside.clips), s.inside.wiresKnown, s.inside.coversKnown, s.inside.untouched);
        put(s.inside.opened, s.inside.pulled, s.stored.discharged, s.heat.cooled, s.resets);
        put(s.inside.clipsFor ? s.inside.clipsFor->test : "", s.stored.checking, static_cast<int>(s.stored.good), s.heat.on && m_timed, s.heat.connectorFor);
        put(s.ack ? s.ack->request.test + s.ack->meter : "", s.ack && s.ack->run, s.provenPlace, s.proofsFailed, s.notDead, s.meter.id);
        put(s.proof ? s.proof->place + s.proof->meter : "", s.proof ? static_cast<int>(s.proof->done) : -1);
        put(static_cast<int>(s.vetoes.size()), static_cast<int>(s.frameRead.size()));
        for (const Veto &veto : s.vetoes)
            put(static_cast<int>(veto.reason), veto.test, veto.repaired);
        for (const auto &[test, good] : s.frameRead)
            put(test, good);
        put(s.refused.isolation, s.refused.off, s.refused.never, s.refused.frame, s.asked, s.stillOut, s.plugOutOfReach);
        put(s.danger.alarm ? static_cast<int>(*s.danger.alarm) : -1, s.danger.stopped ? static_cast<int>(*s.danger.stopped) : -1, s.danger.gasPage,
            s.danger.gasPageUsed, s.danger.wasOn);
        put(s.up ? static_cast<int>(s.up->screen) : -1, s.up ? s.up->request.test : "", s.shown ? s.shown->test : "");
        age(s.last);
        if (s.ack)
            age(s.ack->at);
        if (s.proof)
            age(s.proof->since);
        put(s.heat.at && m_timed);
        if (s.heat.at)
            age(*s.heat.at);
        if (isDead(s.power))
            age(s.deadSince);
        if (s.stored.good)
            age(s.stored.checkedAt);
        const Told &t = player.told;
        put(t.off, t.offAt, t.ack, t.run, t.machineOn && m_timed, t.proof, t.proofMeter, t.asked, t.veto, t.never, t.stopped, t.alarm, t.outOnce, t.fit, t.resets, t.frame, t.discharged, t.frameBad);
        if (!t.ack.empty())
            age(t.ackAt);
    }
    std::string text;

private:
    void one(int value) { text += static_cast<char>('A' + value); }
    void one(const std::string &value) { text += value + '.'; }
    void one(const char *value) { one(std::string(value)); }
    void one(const std::set<std::string> &values)
    {
        for (const std::string &value : values)
            one(value);
        text += '|';
    }
    template<class... Values>
    void put(const Values &...values) { (one(values), ...); }
    static int ageClass(std::int64_t ms) { return ms >= 1'800'001 ? 3 : ms >= 1'200'000 ? 2 : ms > 0 ? 1 : 0; }
    void age(Instant then)
    {
        if (m_timed)
            put(ageClass(m_now.wallMs - then.wallMs), ageClass(m_now.steadyMs - then.steadyMs));
    }

    Instant m_now;
    bool m_timed;
};

struct Found
{
    std::string broken;
    std::string way; // the messages that led there
    std::size_t states = 0;
};

class Exploration
{
public:
    Exploration(const Scene &scene, const Rules &rules) : m_scene(scene), m_rules(rules) {}

    Found run()
    {
        reach(begin(m_scene, m_rules), 0, "start");
        while (!m_queue.empty() && m_found.broken.empty()) {
            const std::size_t at = m_queue.front();
            m_queue.pop_front();
            m_nodes[at].queued = false;
            const Player player = m_nodes[at].player;
            if (player.state.up || player.state.shown)
                fromScreen(player, at);
            fromEvent(player, at);
        }
        m_found.states = m_nodes.size();
        return m_found;
    }

private:
    struct Node
    {
        Player player;
        std::size_t from;
        std::string by;
        bool queued = true, leftOnce = false;
    };

    void fromScreen(const Player &player, std::size_t at)
    {
        const std::vector<GateEvent> all = messages(player, m_scene);
        for (const GateEvent &event : all) {
            if (!player.takes(event))
                continue;
            Player next = player;
            if (next.take(event))
                reach(std::move(next), at, named(event));
        }
    }
    void fromEvent(const Player &player, std::size_t at)
    {
        if (m_rules == kAllRules && !m_nodes[at].leftOnce) {
            m_nodes[at].leftOnce = true;
            Player left = player;
            left.checkWayOn();
            if (!left.broken.empty())
                reach(std::move(left), at, "left");
        }
        for (const StepRequest &wanted : m_scene.steps) {
            Player next = player;
            next.want(wanted);
            reach(std::move(next), at, "want " + wanted.test);
        }
        if (player.now.wallMs != player.state.last.wallMs)
            return; // one pause at a time
        for (const auto &[wall, steady] : m_scene.jumps) {
            Player next = player;
            next.wait(wall, steady);
            reach(std::move(next), at, "wait " + std::to_string(static_cast<int>(wall)) + "/" + std::to_string(static_cast<int>(steady)));
        }
    }
    void reach(Player player, std::size_t from, std::string by)
    {
        if (!m_found.broken.empty())
            return;
        if (!player.broken.empty()) {
            m_found.broken = player.broken;
            m_found.way = by;
            for (std::size_t at = from; at != 0; at = m_nodes[at].from)
                m_found.way = m_nodes[at].by + " > " + m_found.way;
            return;
        }
        const auto [it, fresh] = m_index.try_emplace(Key(player, !m_scene.jumps.empty()).text, m_nodes.size());
        if (fresh) {
            m_queue.push_back(m_nodes.size());
            m_nodes.push_back({std::move(player), from, std::move(by)});
            return;
        }
        Node &node = m_nodes[it->second];
        if (node.player.worlds.covers(player.worlds))
            return;
        node.player.worlds.add(player.worlds);
        if (!node.queued)
            m_queue.push_back(it->second);
        node.queued = true;
    }

    const Scene &m_scene;
    Rules m_rules;
    std::unordered_map<std::string, std::size_t> m_index;
    std::deque<Node> m_nodes;
    std::deque<std::size_t> m_queue;
    Found m_found;
};

struct Mutant
{
    bool Rules::*rule;
    const char *scene; // where leaving it out must be seen
};

constexpr auto kMutants = std::to_array<Mutant>({
    {&Rules::dangerFirst, "danger"}, {&Rules::offFirst, "plug"}, {&Rules::startFirst, "plug"}, {&Rules::lookNeedsClosedOrDead, "plug"},
    {&Rules::deadWorkNeedsDead, "plug"}, {&Rules::proofIsOfThePlace, "wired"}, {&Rules::plugOnlyWithCord, "wired"},
    {&Rules::chargeFirst, "charge"}, {&Rules::heatFirst, "heat"}, {&Rules::noPowerAfterVeto, "repair"}, {&Rules::neverHolds, "refuse"},
    {&Rules::energizedIsTurnedOn, "not turned on"}, {&Rules::meterMustFit, "wired live"}, {&Rules::frameFirst, "frame"},
    {&Rules::coversBack, "two places"}, {&Rules::wiresBack, "wired break"}, {&Rules::meterOff, "pins"},
    {&Rules::holdOnlyDead, "clips"}, {&Rules::faceOnlyUnplugged, "wired live"}, {&Rules::ownHold, "clamp"}, {&Rules::oneReset, "touch"},
    {&Rules::refuseZones, "clips"}, {&Rules::boxesAll, "two places"}, {&Rules::screenStillUp, "two places"}, {&Rules::waitsHold, "charge"},
    {&Rules::knownSourceInBand, "wired"}, {&Rules::pairsBelowLimit, "wired"}, {&Rules::chargeBelowLimit, "charge"},
    {&Rules::offAtControlOnlyClosed, "clips"}, {&Rules::stoppedForGood, "danger"}, {&Rules::shownFlags, "two places"},
    {&Rules::holdFlags, "clamp"}, {&Rules::powerCharges, "touch charge"}, {&Rules::powerHeats, "heat"}, {&Rules::oneReading, "clips"},
    {&Rules::otherEventsSpend, "clips"}, {&Rules::awayIsUnknown, "plug"}, {&Rules::awayForgets, "one place"},
    {&Rules::dailyOnlyUntouched, "one place"}, {&Rules::ackExpires, "time"}, {&Rules::deadExpires, "time"}, {&Rules::clocksAgree, "time"},
    {&Rules::meterChangeVoids, "wired live"}, {&Rules::alarmLowers, "danger"},
});

TEST(GateExploration, EachRuleLeftOutBreaksAnInvariant)
{
    ASSERT_EQ(kMutants.size(), kRuleNames.size());
    const std::vector<Scene> all = scenes();
    for (const NamedRule &named : kRuleNames) {
        const auto mutant = std::ranges::find_if(kMutants, [&](const Mutant &m) { return m.rule == named.rule; });
        ASSERT_NE(mutant, kMutants.end()) << named.name;
        const auto scene = std::ranges::find_if(all, [&](const Scene &s) { return s.name == mutant->scene; });
        ASSERT_NE(scene, all.end()) << mutant->scene;
        Rules without;
        without.*named.rule = false;
        const Found found = Exploration(*scene, without).run();
        EXPECT_NE(found.broken, "") << named.name << " left out, and nothing broke in " << found.states << " states";
    }
}

TEST(GateExploration, NoInvariantBreaksInAnyState)
{
    std::size_t states = 0;
    for (const Scene &scene : scenes()) {
        const Found found = Exploration(scene, kAllRules).run();
        EXPECT_EQ(found.broken, "") << scene.name << ": " << found.way;
        EXPECT_GT(found.states, 10U) << scene.name;
        states += found.states;
    }
    RecordProperty("states", static_cast<int>(states));
}

} // namespace
