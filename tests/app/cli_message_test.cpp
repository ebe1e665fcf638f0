// What a JSON line may hold is closed or understood; anything else is refused and changes nothing.
#include "app/cli/protocol.h"
#include "tests/support/walker.h"

#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

namespace app {
namespace {

using Json = nlohmann::json;

class Client
{
public:
    Json say(const Json &message)
    {
        m_now = core::later(m_now, 2);
        return Json::parse(m_protocol.answer(message.dump(), m_now));
    }
    std::string code(const Json &message)
    {
        const Json answer = say(message);
        return answer["ok"].get<bool>() ? "" : answer["refusal"]["code"].get<std::string>();
    }
    const Protocol &protocol() const { return m_protocol; }
    std::vector<std::vector<core::Event>> kept; // a list a job

private:
    core::Instant m_now{1'000'000, 1'000'000};
    Protocol m_protocol{core::Shipped::get().content(), [this](const core::Snapshot &) -> core::Session::Keep {
                            const std::size_t job = kept.size();
                            kept.emplace_back();
                            return [this, job](const core::Event &e) {
                                kept[job].push_back(e);
                                return true;
                            };
                        }};
};

Json start(const Json &more = Json::object())
{
    Json j{{"do", "start"},
           {"tree", "dryer_elec/no_heat"},
           {"meter", {{"functions", {"resistance", "voltage_ac"}}, {"category", "CAT III 600 V"}}},
           {"ambient", "22 Cel"}};
    j.update(more);
    return j;
}

TEST(Message, AStartHoldsWhatIsKnown)
{
    EXPECT_EQ(Client().code(start()), "");
    EXPECT_EQ(Client().code(start({{"who", "proxy"}, {"clock", "told"}, {"ambient", "72 F"}, {"meter", {{"category", ""}}}})),
              "");
    const std::vector<Json> bad{
        {{"who", "king"}},
        {{"who", ""}},
        {{"clock", "tolld"}},
        {{"clock", ""}},
        {{"ambient", "hot"}},
        {{"ambient", "OL"}},
        {{"meter", 5}},
        {{"meter", {{"functions", {"telepathy"}}}}},
        {{"meter", {{"category", "potato"}}}},
        {{"meter", {{"probe_zero", "a little"}}}},
    };
    for (const Json &more : bad) {
        Client client;
        const Json answer = client.say(start(more));
        ASSERT_EQ(answer["ok"], false) << more;
        EXPECT_EQ(answer["refusal"]["code"], "bad_message") << more;
        EXPECT_EQ(client.protocol().session(), nullptr) << more;
    }
}

TEST(Message, ARefusalNamesWhatIsAllowed)
{
    Client client;
    const Json who = client.say(start({{"who", "king"}}));
    ASSERT_EQ(who["ok"], false);
    EXPECT_EQ(who["refusal"]["suggestions"], (Json{"owner", "proxy"}));
    const Json functions = client.say(start({{"meter", {{"functions", {"telepathy"}}}}}));
    ASSERT_EQ(functions["ok"], false);
    EXPECT_THAT(functions["refusal"]["suggestions"], ::testing::Contains(Json("resistance")));
}

TEST(Message, AnOutcomeIsOneOfAClosedList)
{
    Client client;
    ASSERT_EQ(client.code(start()), "");
    const std::size_t before = client.kept[0].size();
    for (const char *value : {"nonsense", ""})
        EXPECT_EQ(client.code({{"do", "outcome"}, {"value", value}}), "bad_message") << value;
    EXPECT_EQ(client.code({{"do", "outcome"}}), "bad_message");
    EXPECT_EQ(client.code({{"do", "state"}, {"who", "anna"}}), "bad_message");
    EXPECT_EQ(client.code({{"do", "energized"}, {"value", "maybe"}}), "bad_message");
    EXPECT_EQ(client.code({{"do", "meter"}}), "bad_message");
    EXPECT_EQ(client.kept[0].size(), before);
    for (const char *value : {"fixed", "not_fixed", "not_fitted", "dead_on_arrival"})
        EXPECT_EQ(client.code({{"do", "outcome"}, {"value", value}}), "") << value;
}

// The first job is not dropped in silence in the middle of a step that may be energized.
TEST(Message, ASecondStartParksTheFirstJob)
{
    Client client;
    ASSERT_EQ(client.code(start()), "");
    EXPECT_FALSE(client.say({{"do", "state"}}).contains("parked"));
    const Json answer = client.say(start({{"tree", "dryer_elec/noisy"}}));
    ASSERT_EQ(answer["ok"], true);
    ASSERT_TRUE(answer.contains("parked"));
    EXPECT_EQ(answer["parked"]["tree"], "dryer_elec/no_heat");
    EXPECT_EQ(answer["parked"]["power"], "unknown");
    EXPECT_EQ(answer["state"]["tree"], "dryer_elec/noisy");
    ASSERT_EQ(client.kept.size(), 2U);
    EXPECT_THAT(client.kept[0], ::testing::Contains(::testing::Field(&core::Event::what, core::Event::What::Left)));
    EXPECT_THAT(client.kept[1],
                ::testing::Not(::testing::Contains(::testing::Field(&core::Event::what, core::Event::What::Left))));
}

TEST(Message, AStartThatIsRefusedLeavesTheJobAsItWas)
{
    Client client;
    ASSERT_EQ(client.code(start()), "");
    const std::size_t before = client.kept[0].size();
    EXPECT_EQ(client.code(start({{"tree", "dryer_elec/no_haet"}})), "unknown_tree");
    EXPECT_EQ(client.code(start({{"who", "king"}})), "bad_message");
    EXPECT_EQ(client.kept[0].size(), before);
    EXPECT_EQ(client.say({{"do", "state"}})["state"]["tree"], "dryer_elec/no_heat");
}

} // namespace
} // namespace app
