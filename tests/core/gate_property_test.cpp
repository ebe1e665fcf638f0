// The gate over random step lists: random classes, places, wires, stores; a client that now does what the screen says, now
// sends whatever comes to mind. Every invariant is watched at every step (gate_player.h says which).
#include "core/base/random.h"
#include "core/base/text.h"
#include "tests/core/gate_scenes.h"

using namespace gatetest;

namespace {

constexpr int kLists = 10'000;
constexpr int kMessages = 16;

StepRequest randomStep(Random &random, int number)
{
    constexpr StepClass kClasses[] = {StepClass::A, StepClass::AP, StepClass::D, StepClass::D, StepClass::DS, StepClass::R,
                                      StepClass::E1, StepClass::E2, StepClass::E3, StepClass::EO, StepClass::X, StepClass::P};
    StepRequest r = step("s" + std::to_string(number), kClasses[random.below(12)]);
    const bool inside = isDeadWork(r.stepClass) || r.stepClass == StepClass::E1 || r.stepClass == StepClass::E3 || r.stepClass == StepClass::EO;
    r.coverOff = inside ? random.chance(.9) : random.chance(.02);
    if (r.coverOff)
        r.place = random.chance(.5) ? "p" : "q";
    for (const char *wire : {"w1", "w2"})
        if (inside && random.chance(.4))
            r.pulls.emplace_back(wire);
    if (r.stepClass == StepClass::DS) {
        r.store = random.chance(.5) ? Store::Motor : Store::Board;
        r.storeName = r.store == Store::Motor ? "m" : "b";
    }
    if (r.stepClass == StepClass::AP) {
        r.touches = random.chance(.5) ? "breaker" : "gfci";
        r.inUse = random.chance(.5);
    }
    if (isDeadWork(r.stepClass) && random.chance(.3)) {
        r.hotPart = "h";
        r.hotWaitS = 900;
    }
    r.needsFrameCheck = inside && isLive(r.stepClass) && random.chance(.3);
    r.needs = kWallMark; // so that one word, "fit", holds for every place
    return r;
}

Scene randomScene(Random &random)
{
    Scene scene;
    scene.hardWired = random.chance(.4);
    scene.declines = true;
    scene.energized = random.chance(.85);
    scene.frame = !scene.hardWired && random.chance(.4);
    const int count = 3 + random.below(4);
    for (int i = 0; i < count; ++i)
        scene.steps.push_back(randomStep(random, i));
    if (scene.frame)
        scene.steps.push_back(step("frame", StepClass::D));
    const MeterFit unfit{"m2", {{2, 300}}, true, false, false, false};
    scene.events = {Undone{}, Amended{}, Amended{true, true, {}, {}}, Amended{false, true, "frame", {}}, Skipped{"frame"}, Chosen{}, Reported{},
                    WentAway{}, WentAway{Away::Left}, MeterChanged{unfit}, MeterChanged{goodMeter()}, Alarm{AlarmKind::Smoke}, Alarm{AlarmKind::Gas},
                    NotGas{AlarmKind::Water}, PressedByMistake{}, VetoFound{{VetoReason::DamagedCord, "s1", false}}, RepairTold{"s1"},
                    NeverTakenBack{}, EnergizedTurned{true, true}, EnergizedTurned{false, true}, started()};
    return scene;
}

// What an obedient client answers to what is on the screen.
GateEvent obedient(const Player &player, Random &random)
{
    if (!player.state.up)
        return ReadingTaken{player.state.shown.value_or(step("none", StepClass::A)), random.chance(.9) ? Outcome::Good : Outcome::Failed,
                            random.chance(.05) ? std::optional(VetoReason::GroundFault) : std::nullopt};
    const Screening up = player.upNow();
    std::vector<std::string> boxes;
    for (const Box &box : up.boxes)
        boxes.push_back(box.id);
    if (up.screen == Screen::S0)
        return StartAnswered{random.chance(.8) ? StartAnswer::Closed : StartAnswer::Open};
    if (up.screen == Screen::S3 && up.phase != "hold")
        return ProofReading{up.phase == "work_point" ? (random.chance(.97) ? 0. : 120.) : 120.};
    if (isHold(up.screen) || up.screen == Screen::S3)
        return Acknowledged{{}, boxes};
    if (up.phase == "reading" || up.phase == "again")
        return ChargeReading{random.chance(.9) ? 0. : 60.};
    if (up.screen != Screen::S9)
        return Confirmed{up.screen, boxes};
    return Confirmed{Screen::S9, boxes, up.ways.front() == "control" ? Way::Control : up.ways.front() == "plug" ? Way::Plug : Way::Breaker};
}

GateEvent anything(const Player &player, const Scene &scene, Random &random)
{
    const std::vector<GateEvent> all = messages(player, scene);
    return all[static_cast<std::size_t>(random.below(static_cast<int>(all.size())))];
}

struct Seen // that the lists reached what they are to test
{
    int dead = 0, live = 0, run = 0, proved = 0, refused = 0;
};

void play(std::uint64_t seed, Seen &seen)
{
    Random random(seed);
    const Scene scene = randomScene(random);
    Player player = begin(scene, kAllRules);
    std::vector<std::string> way;
    for (int i = 0; i < kMessages && player.broken.empty(); ++i) {
        const StepRequest &wanted = scene.steps[static_cast<std::size_t>(random.below(static_cast<int>(scene.steps.size())))];
        const Screening s = player.want(player.state.up && random.chance(.8) ? player.state.up->request : wanted);
        if (s.what == Screening::What::Show) {
            seen.dead += isDeadWork(s.stepClass);
            seen.live += isLive(s.stepClass);
            seen.run += s.stepClass == StepClass::R;
        }
        if (s.waitS > 0 && random.chance(.9))
            player.wait(s.waitS, s.waitS);
        if (random.chance(.03))
            player.wait(random.uniform(0, 3000), random.uniform(0, 3000));
        const GateEvent event = random.chance(.75) ? obedient(player, random) : anything(player, scene, random);
        way.push_back(std::string(word(s.screen)) + "/" + std::to_string(event.index()));
        if (!player.send(event))
            ++seen.refused;
        seen.proved += player.state.power == Power::ProvenDead;
    }
    if (player.broken.empty())
        player.checkWayOn();
    EXPECT_EQ(player.broken, "") << "seed " << seed << ": " << joined(way, " ");
}

TEST(GateProperty, RandomStepListsBreakNothing)
{
    Seen seen;
    for (std::uint64_t seed = 1; seed <= kLists && !testing::Test::HasFailure(); ++seed)
        play(seed, seen);
    EXPECT_GT(seen.dead, kLists / 2);
    EXPECT_GT(seen.live, kLists / 20);
    EXPECT_GT(seen.run, kLists / 20);
    EXPECT_GT(seen.proved, kLists / 20);
    EXPECT_GT(seen.refused, kLists);
}

} // namespace
