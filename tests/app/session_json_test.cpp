// Random clients on the JSON lines, over every shipped tree: right words at the wrong time, wrong words, rubbish.
#include "app/cli/protocol.h"
#include "core/base/random.h"
#include "tests/support/session_laws.h"
#include "tests/support/walker.h"

#include <map>
#include <nlohmann/json.hpp>

namespace core {
namespace {

using Json = nlohmann::json;

constexpr std::uint64_t kClients = 10; // a tree
constexpr int kMessages = 60;          // a client

std::size_t below(Random &random, std::size_t count)
{
    return static_cast<std::size_t>(random.below(static_cast<int>(count)));
}

template<class T>
T oneOf(Random &random, const std::vector<T> &list)
{
    return list[below(random, list.size())];
}

Json started(const std::string &tree, Random &random)
{
    Json j{{"do", "start"}, {"tree", tree}, {"clock", "told"}, {"energized", random.below(3) != 0}, {"ambient", "22 Cel"}};
    j["who"] = random.below(4) == 0 ? "proxy" : "owner";
    j["meter"] = {
        {"functions", {"resistance", "continuity", "voltage_ac", "voltage_dc", "current_clamp", "capacitance", "temperature"}},
        {"category", random.below(4) == 0 ? "" : "CAT III 600 V"}};
    return j;
}

std::string readingFor(const std::string &unit, Random &random)
{
    static const std::map<std::string, std::vector<std::string>> kReadings{
        {"ohm", {"OL", "0.2 ohm", "0.3 ohm", "10.5 ohm", "3 ohm", "3 kohm"}},
        {"V", {"240 V", "120 V", "0 V", "208 V"}},
        {"A", {"5 A", "22 A", "0 A"}},
        {"continuity", {"tone", "no tone"}},
        {"Cel", {"68 Cel", "120 F"}},
        {"uF", {"10 uF", "OL"}},
        {"Hz", {"60 Hz"}}};
    const auto at = kReadings.find(unit);
    return at == kReadings.end() ? "1" : oneOf(random, at->second);
}

// What fits the step on the display, mostly.
Json fitting(const Json &step, Random &random)
{
    const std::string kind = step.value("kind", ""),
                      screen = step.contains("screen") && step["screen"].is_string() ? step["screen"].get<std::string>() : "";
    if (screen == "S0" && random.below(10) != 0)
        return {{"do", "answer"}, {"value", "closed"}};
    if (step.contains("answers") && !step["answers"].empty()) {
        const auto &answers = step["answers"];
        std::size_t n = below(random, answers.size());
        for (int again = 0; again < 3 && !answers[n]["points_to"].empty(); ++again) // a danger would end most walks early
            n = below(random, answers.size());
        return {{"do", "answer"}, {"value", answers[n]["value"]}};
    }
    if (step.contains("unit") && step["unit"].is_string() && !step["unit"].get<std::string>().empty())
        return {{"do", "reading"},
                {"value", readingFor(step["unit"], random)},
                {"with", {{"part_temperature", "22 Cel"}, {"printed_temperature", "68 Cel"}}}};
    if (kind == "hold" || kind == "prove_dead")
        return {{"do", random.below(6) == 0 ? "decline" : "acknowledge"}};
    if (kind == "verdict")
        return {{"do", random.below(2) == 0 ? "confirm" : "prove"}};
    if (screen == "S9" && random.below(2) == 0)
        return {{"do", "confirm"}, {"way", step["ways"][below(random, step["ways"].size())]["id"]}};
    return {{"do", "confirm"}};
}

Json any(const std::vector<std::string> &tests, const std::vector<std::string> &live, Random &random)
{
    static const std::vector<std::string> kVerbs{"undo",  "skip",  "decline", "acknowledge", "confirm", "park",
                                                 "prove", "state", "detour",  "outcome",     "start"};
    switch (random.below(12)) {
    case 6:
    case 7:
    case 8:
    case 9:
    case 10:
        return {{"do", "choose"}, {"test", oneOf(random, live)}};
    case 0:
        return {{"do", "choose"}, {"test", oneOf(random, tests)}};
    case 1:
        return {{"do", "reading"}, {"test", oneOf(random, tests)}, {"value", "OL"}, {"reported", random.below(2) == 0}};
    case 2:
        return {{"do", "amend"}, {"event", random.below(40)}, {"value", "0.3 ohm"}};
    case 3:
        return {{"do", "stop"}, {"why", oneOf<std::string>(random, {"gas", "shock", "water", "not_gas", "mistake", "?"})}};
    case 4:
        return {{"do", "energized"}, {"value", random.below(2) == 0 ? "on" : "off"}};
    default: {
        Json j{{"do", oneOf(random, kVerbs)}};
        if (random.below(3) == 0)
            j["boxes"] = Json::array({"plug_out"});
        if (random.below(5) == 0)
            j["value"] = 7; // of the wrong type
        if (j["do"] == "outcome")
            j["value"] = "not_fixed";
        return j;
    }
    }
}

std::vector<std::string> testsOf(const Library &library, bool energizedOnly)
{
    std::vector<std::string> tests;
    if (!energizedOnly)
        tests = {"", "no_such.test"};
    const auto take = [&](const Test &test, const std::string &id) {
        if (!energizedOnly || isEnergized(test.measure))
            tests.push_back(id);
    };
    for (const auto &[id, appliance] : library.appliances) {
        for (const Component &c : appliance.components)
            if (const Kind *kind = library.kind(c.kind))
                for (const Test &t : kind->tests)
                    take(t, c.id + "." + t.id);
        for (const ConditionUse &c : appliance.conditions)
            if (const Kind *kind = library.kind(componentOf(c.id)))
                for (const Test &t : kind->tests)
                    take(t, componentOf(c.id) + "." + t.id);
        for (const Test &loop : appliance.loops)
            take(loop, loop.id);
    }
    return tests;
}

class SessionJson : public testing::TestWithParam<std::string>
{
};

TEST_P(SessionJson, KeepsTheGateWhateverIsSent)
{
    const std::vector<std::string> tests = testsOf(Shipped::get().library, false),
                                   energized = testsOf(Shipped::get().library, true);
    int taken = 0, live = 0;
    for (std::uint64_t seed = 0; seed < kClients; ++seed) {
        Random random(seed * 977 + 5);
        app::Protocol protocol(Shipped::get().content(), {});
        Json state = Json::parse(protocol.answer(started(GetParam(), random).dump(), {1'000'000, 1'000})).at("state");
        for (int n = 0; n < kMessages; ++n) {
            Json message = random.below(4) != 0 ? fitting(state.at("step"), random) : any(tests, energized, random);
            message["after_s"] = random.below(30) == 0 ? 4000 : 400;
            const std::size_t before = protocol.session()->events().size();
            const Json answer = Json::parse(protocol.answer(message.dump(), {1'000'000, 1'000}));
            if (!answer.at("ok").get<bool>()) {
                EXPECT_FALSE(answer.at("refusal").at("text").get<std::string>().empty()) << message;
                const auto &events = protocol.session()->events();
                for (std::size_t e = before; e < events.size(); ++e) // time may lapse; nothing else may be added
                    EXPECT_TRUE(events[e].what == Event::What::Lapsed || events[e].what == Event::What::Shown ||
                                events[e].what == Event::What::Skipped)
                        << word(events[e].what) << " after a refusal of " << message;
                continue;
            }
            state = answer.at("state");
            ++taken;
            live += showsStep(*protocol.session()) && isLive(protocol.session()->presentation().request.stepClass) ? 1 : 0;
            ASSERT_EQ(brokenLaw(*protocol.session()), "") << GetParam() << " seed " << seed << " after " << message;
        }
        EXPECT_EQ(brokenReplay(*protocol.session()), "") << GetParam() << " seed " << seed;
    }
    EXPECT_GT(taken, 100) << "most of what fits is taken";
    EXPECT_GT(live, 0) << "some got as far as an energized step";
}

std::vector<std::string> everyTree()
{
    std::vector<std::string> ids;
    for (const auto &[id, tree] : Shipped::get().library.trees)
        ids.push_back(id);
    return ids;
}

INSTANTIATE_TEST_SUITE_P(EveryTree, SessionJson, testing::ValuesIn(everyTree()), [](const auto &tree) {
    std::string name = tree.param;
    std::ranges::replace(name, '/', '_');
    return name;
});

} // namespace
} // namespace core
