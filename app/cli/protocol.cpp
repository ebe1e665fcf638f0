#include "app/cli/protocol.h"

#include "app/cli/state_json.h"
#include "core/base/text.h"
#include "core/reading/understand.h"
#include "core/session/view_of.h"

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
    {"state", Command::What::State}, {"reading", Command::What::Reading}, {"answer", Command::What::Answer}, {"confirm", Command::What::Confirm},
    {"acknowledge", Command::What::Acknowledge}, {"decline", Command::What::Decline}, {"detour", Command::What::Detour}, {"choose", Command::What::Choose},
    {"skip", Command::What::Skip}, {"amend", Command::What::Amend}, {"undo", Command::What::Undo}, {"stop", Command::What::Stop},
    {"park", Command::What::Park}, {"outcome", Command::What::Outcome}, {"sheet", Command::What::Sheet}, {"meter", Command::What::MeterChanged},
    {"prove", Command::What::Prove}, {"energized", Command::What::Energized},
});

constexpr std::size_t kLongestLine = 100'000;
constexpr double kLongestWaitS = 100 * 24 * 3600.;

// Values of the expected type, or a throw that the caller turns into a denial.
std::string text(const Json &j, const char *key)
{
    return j.contains(key) ? j.at(key).get<std::string>() : std::string();
}

core::Meter meterIn(const Json &j)
{
    core::Meter meter;
    if (j.contains("functions"))
        meter.functions = j.at("functions").get<std::set<std::string>>();
    meter.category = text(j, "category");
    if (j.contains("auto_range"))
        meter.autoRange = j.at("auto_range").get<bool>();
    if (const auto zero = core::understand(text(j, "probe_zero"), core::Measure::Resistance, meter); zero && zero->reading.what == core::Reading::What::Value)
        meter.probeZero = zero->reading.amount;
    return meter;
}

Command commandOf(const Json &j, Command::What what)
{
    Command c;
    c.what = what;
    c.value = text(j, "value");
    c.test = text(j, what == Command::What::Sheet ? "of" : "test");
    c.step = text(j, "step");
    c.why = text(j, "why");
    c.way = text(j, "way");
    c.who = text(j, "who");
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
    return c;
}

core::Snapshot snapshotIn(const Json &j)
{
    core::Snapshot s;
    s.tree = text(j, "tree");
    s.who = text(j, "who").empty() ? "owner" : text(j, "who");
    s.energized = j.contains("energized") && j.at("energized").get<bool>();
    s.toldClock = text(j, "clock") == "told";
    s.program = "meterfirst " METERFIRST_VERSION;
    if (j.contains("meter"))
        s.meter = meterIn(j.at("meter"));
    if (const auto ambient = core::understand(text(j, "ambient"), core::Measure::Temperature, s.meter); ambient && ambient->reading.what == core::Reading::What::Value)
        s.ambient = ambient->reading.amount;
    return s;
}

Denial badMessage(std::string why)
{
    return {"bad_message", std::move(why), {}};
}

} // namespace

std::string denied(const Denial &denial)
{
    Json refusal{{"code", denial.code}, {"text", denial.text}};
    if (!denial.suggestions.empty())
        refusal["suggestions"] = denial.suggestions;
    return Json{{"ok", false}, {"refusal", refusal}}.dump(-1, ' ', false, Json::error_handler_t::replace);
}

core::Expected<Command, Denial> commandIn(std::string_view line)
{
    const Json j = line.size() > kLongestLine ? Json() : Json::parse(line, nullptr, false);
    if (!j.is_object() || !j.contains("do") || !j.at("do").is_string())
        return core::unexpected(badMessage("A message is one JSON object a line, with `do`."));
    const std::string verb = j.at("do").get<std::string>();
    const auto at = std::ranges::find(kVerbs, verb, &Verb::word);
    if (at == kVerbs.end())
        return core::unexpected(badMessage("`do` is none of the known ones."));
    try {
        return commandOf(j, at->what);
    } catch (const std::exception &) { // a field of another type than the protocol's
        return core::unexpected(badMessage("A field of this message has the wrong type."));
    }
}

std::string Protocol::answer(std::string_view line, core::Instant now)
{
    const Json j = line.size() > kLongestLine ? Json() : Json::parse(line, nullptr, false);
    const bool start = j.is_object() && j.contains("do") && j.at("do") == "start";
    if (start) {
        try {
            core::Snapshot snapshot = snapshotIn(j);
            auto keep = m_keepFor ? m_keepFor(snapshot) : core::Session::Keep();
            auto begun = core::Session::begin(m_content, std::move(snapshot), "p" + std::to_string(now.wallMs), now, std::move(keep));
            if (!begun)
                return denied(begun.error());
            m_session = std::make_unique<core::Session>(std::move(*begun));
            m_told = 0;
        } catch (const std::exception &) {
            return denied(badMessage("A field of this message has the wrong type."));
        }
    } else {
        const auto command = commandIn(line);
        if (!command)
            return denied(command.error());
        if (!m_session)
            return denied(Denial{"not_now", "First a job has to be started.", {}});
        if (const auto denial = m_session->handle(*command, now))
            return denied(*denial);
    }
    const Json state = stateJson(core::viewOf(*m_session), *m_session, m_told);
    m_told = m_session->events().size();
    return Json{{"ok", true}, {"state", state}}.dump(-1, ' ', false, Json::error_handler_t::replace);
}

} // namespace app
