#include "app/cli/message.h"

#include "app/cli/outcomes.h"
#include "core/base/text.h"
#include "core/gate/meter_fit.h"
#include "core/reading/understand.h"

#include <algorithm>
#include <array>

namespace app {
namespace {

using core::Command;
using core::Denial;
using Json = nlohmann::json;

struct Verb
{
    std::string_view word;
    Command::What what;
};

constexpr auto kVerbs = std::to_array<Verb>({
    {"state", Command::What::State},
    {"reading", Command::What::Reading},
    {"answer", Command::What::Answer},
    {"confirm", Command::What::Confirm},
    {"acknowledge", Command::What::Acknowledge},
    {"decline", Command::What::Decline},
    {"detour", Command::What::Detour},
    {"choose", Command::What::Choose},
    {"skip", Command::What::Skip},
    {"amend", Command::What::Amend},
    {"undo", Command::What::Undo},
    {"stop", Command::What::Stop},
    {"park", Command::What::Park},
    {"outcome", Command::What::Outcome},
    {"sheet", Command::What::Sheet},
    {"meter", Command::What::MeterChanged},
    {"prove", Command::What::Prove},
    {"energized", Command::What::Energized},
});

constexpr std::size_t kLongestLine = 100'000;
constexpr double kLongestWaitS = 100 * 24 * 3600.;

// Thrown inside this file alone: a field that holds what it may not.
struct Refused
{
    Denial denial;
};

// Values of the expected type, or a throw that becomes a denial.
std::string text(const Json &j, const char *key)
{
    return j.contains(key) ? j.at(key).get<std::string>() : std::string();
}

std::string oneOf(const Json &j, const char *key, std::vector<std::string> allowed)
{
    std::string value = text(j, key);
    if (j.contains(key) && std::ranges::find(allowed, value) == allowed.end())
        throw Refused{badMessage(std::string("`") + key + "` is one of: " + core::joined(allowed, ", ") + ".", allowed)};
    return value;
}

std::vector<std::string> functionWords()
{
    std::vector<std::string> words;
    for (int m = 0; m <= static_cast<int>(core::Measure::OpensAt); ++m)
        words.emplace_back(word(static_cast<core::Measure>(m)));
    return words;
}

std::optional<core::Amount> amountIn(const Json &j, const char *key, core::Measure measure, const core::Meter &meter)
{
    if (!j.contains(key))
        return std::nullopt;
    const auto understood = core::understand(text(j, key), measure, meter);
    if (!understood)
        throw Refused{badMessage(std::string("`") + key + "`: " + understood.error().text, understood.error().suggestions)};
    if (understood->reading.what != core::Reading::What::Value)
        throw Refused{badMessage(std::string("`") + key + "` is a value with its unit.")};
    return understood->reading.amount;
}

core::Meter meterIn(const Json &j)
{
    if (!j.is_object())
        throw Refused{badMessage("`meter` is an object with `functions` and `category`.")};
    core::Meter meter;
    const std::vector<std::string> known = functionWords();
    if (j.contains("functions"))
        meter.functions = j.at("functions").get<std::set<std::string>>();
    for (const std::string &function : meter.functions)
        if (std::ranges::find(known, function) == known.end())
            throw Refused{badMessage("`" + function + "` is no function of a meter.", known)};
    meter.category = text(j, "category");
    if (!core::trimmed(meter.category).empty() && core::markIn(meter.category).category == 0)
        throw Refused{
            badMessage("`category` is the mark as printed, or empty.", {"CAT II 600 V", "CAT III 600 V", "CAT IV 600 V"})};
    if (j.contains("auto_range"))
        meter.autoRange = j.at("auto_range").get<bool>();
    meter.probeZero = amountIn(j, "probe_zero", core::Measure::Resistance, meter);
    return meter;
}

Command commandOf(const Json &j, Command::What what)
{
    Command c;
    c.what = what;
    c.value = what == Command::What::Outcome     ? oneOf(j, "value", {kOutcomes.begin(), kOutcomes.end()})
              : what == Command::What::Energized ? oneOf(j, "value", {"on", "off"})
                                                 : text(j, "value");
    if (what == Command::What::Outcome && c.value.empty())
        throw Refused{badMessage("`outcome` needs its `value`.", {kOutcomes.begin(), kOutcomes.end()})};
    c.test = text(j, what == Command::What::Sheet ? "of" : "test");
    c.step = text(j, "step");
    c.why = text(j, "why");
    c.way = text(j, "way");
    c.who = oneOf(j, "who", {"owner", "proxy"});
    if (j.contains("placement"))
        c.placement = static_cast<std::size_t>(std::max<std::int64_t>(1, j.at("placement").get<std::int64_t>()));
    if (j.contains("boxes"))
        c.boxes = j.at("boxes").get<std::vector<std::string>>();
    if (j.contains("with"))
        c.with = j.at("with").get<std::map<std::string, std::string>>();
    const auto flag = [&](const char *key) { return j.contains(key) && j.at(key).get<bool>(); };
    c.reseated = flag("reseated");
    c.reported = flag("reported");
    c.never = flag("never");
    c.wireLeftOn = flag("wire_left_on");
    if (j.contains("event"))
        c.event = j.at("event").get<int>();
    if (j.contains("after_s"))
        c.afterS = std::clamp(j.at("after_s").get<double>(), 0., kLongestWaitS);
    if (j.contains("meter"))
        c.meter = meterIn(j.at("meter"));
    if (what == Command::What::MeterChanged && !c.meter)
        throw Refused{badMessage("`meter` needs the `meter`.")};
    return c;
}

core::Snapshot startIn(const Json &j)
{
    core::Snapshot s;
    s.tree = text(j, "tree");
    if (const std::string who = oneOf(j, "who", {"owner", "proxy"}); !who.empty())
        s.who = who;
    s.energized = j.contains("energized") && j.at("energized").get<bool>();
    s.toldClock = oneOf(j, "clock", {"told"}) == "told";
    s.program = "meterfirst " METERFIRST_VERSION;
    if (j.contains("meter"))
        s.meter = meterIn(j.at("meter"));
    s.ambient = amountIn(j, "ambient", core::Measure::Temperature, s.meter);
    return s;
}

// What `read` gives, or why the object cannot be read.
template<class Read>
auto guarded(Read read) -> core::Expected<decltype(read()), Denial>
{
    try {
        return read();
    } catch (const Refused &refused) {
        return core::unexpected(refused.denial);
    } catch (const std::exception &) { // a field of another type than the protocol's
        return core::unexpected(badMessage("A field of this message has the wrong type."));
    }
}

} // namespace

Denial badMessage(std::string why, std::vector<std::string> allowed)
{
    return Denial{"bad_message", std::move(why), std::move(allowed)};
}

core::Expected<Json, Denial> objectIn(std::string_view line)
{
    Json j = line.size() > kLongestLine ? Json() : Json::parse(line, nullptr, false);
    if (!j.is_object() || !j.contains("do") || !j.at("do").is_string())
        return core::unexpected(badMessage("A message is one JSON object a line, with `do`."));
    return j;
}

core::Expected<Command, Denial> commandIn(std::string_view line)
{
    const auto j = objectIn(line);
    if (!j)
        return core::unexpected(j.error());
    const std::string verb = j->at("do").get<std::string>();
    const auto at = std::ranges::find(kVerbs, verb, &Verb::word);
    if (at == kVerbs.end())
        return core::unexpected(badMessage("`do` is none of the known ones."));
    return guarded([&] { return commandOf(*j, at->what); });
}

core::Expected<core::Snapshot, Denial> snapshotIn(const Json &object)
{
    return guarded([&] { return startIn(object); });
}

} // namespace app
