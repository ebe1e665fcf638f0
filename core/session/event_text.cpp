#include "core/session/event_text.h"

#include "core/base/text.h"

#include <nlohmann/json.hpp>

namespace core {
namespace {

using Json = nlohmann::json;

Json amountJson(const Amount &amount)
{
    return Json{{"value", amount.value}, {"unit", unitCode(amount.unit)}};
}

Amount amountFrom(const Json &j)
{
    const auto unit = unitNamed(j.at("unit").get<std::string>());
    return {j.at("value").get<double>(), unit ? unit->unit : Unit::None};
}

Json readingJson(const Reading &r)
{
    Json j{{"what", static_cast<int>(r.what)}, {"amount", amountJson(r.amount)}, {"step", r.step}};
    if (!r.answer.empty())
        j["answer"] = r.answer;
    for (const auto &[id, amount] : r.with)
        j["with"][id] = amountJson(amount);
    return j;
}

Reading readingFrom(const Json &j)
{
    Reading r;
    const int what = j.at("what").get<int>();
    if (what < 0 || what > static_cast<int>(Reading::What::Answer))
        throw Json::out_of_range::create(401, "reading of an unknown sort", nullptr);
    r.what = static_cast<Reading::What>(what);
    r.amount = amountFrom(j.at("amount"));
    r.step = j.at("step").get<double>();
    r.answer = j.value("answer", "");
    if (j.contains("with"))
        for (const auto &[id, amount] : j.at("with").items())
            r.with[id] = amountFrom(amount);
    return r;
}

Json meterJson(const Meter &m)
{
    Json j{{"functions", m.functions},
           {"category", m.category},
           {"auto_range", m.autoRange},
           {"top", m.top},
           {"counts", m.displayCounts}};
    if (m.probeZero)
        j["probe_zero"] = amountJson(*m.probeZero);
    return j;
}

Meter meterFrom(const Json &j)
{
    Meter m;
    m.functions = j.at("functions").get<std::set<std::string>>();
    m.category = j.value("category", "");
    m.autoRange = j.value("auto_range", true);
    m.top = j.value("top", m.top);
    m.displayCounts = j.value("counts", m.displayCounts);
    if (j.contains("probe_zero"))
        m.probeZero = amountFrom(j.at("probe_zero"));
    return m;
}

Json snapshotJson(const Snapshot &s)
{
    Json j{{"tree", s.tree},
           {"appliance", s.appliance},
           {"hashes", s.hashes},
           {"meter", meterJson(s.meter)},
           {"who", s.who},
           {"energized", s.energized},
           {"told_clock", s.toldClock},
           {"hard_wired", s.hardWired},
           {"frame_tests", s.frameTests},
           {"program", s.program}};
    if (s.ambient)
        j["ambient"] = amountJson(*s.ambient);
    return j;
}

Snapshot snapshotFrom(const Json &j)
{
    Snapshot s;
    s.tree = j.at("tree").get<std::string>();
    s.appliance = j.at("appliance").get<std::string>();
    s.hashes = j.value("hashes", std::map<std::string, std::string>{});
    s.meter = meterFrom(j.at("meter"));
    s.who = j.value("who", "owner");
    s.energized = j.value("energized", false);
    s.toldClock = j.value("told_clock", false);
    s.hardWired = j.value("hard_wired", false);
    s.frameTests = j.value("frame_tests", std::vector<std::string>{});
    s.program = j.value("program", "");
    if (j.contains("ambient"))
        s.ambient = amountFrom(j.at("ambient"));
    return s;
}

Json requestJson(const StepRequest &r)
{
    Json j{{"step", r.step},
           {"test", r.test},
           {"placement", r.placement},
           {"process", r.process},
           {"class", static_cast<int>(r.stepClass)},
           {"place", r.place},
           {"cover_off", r.coverOff},
           {"pulls", r.pulls},
           {"touches", r.touches},
           {"in_use", r.inUse},
           {"hot_part", r.hotPart},
           {"hot_wait_s", r.hotWaitS},
           {"hot_connector", r.hotConnector},
           {"wants_hot", r.wantsHot},
           {"store", static_cast<int>(r.store)},
           {"store_name", r.storeName},
           {"category", r.needs.category},
           {"volts", r.needs.volts},
           {"frame_check", r.needsFrameCheck},
           {"frame_not_here", r.frameNotHere},
           {"conductors", r.conductors},
           {"zone", r.zone},
           {"params", r.params},
           {"notes", r.notes}};
    return j;
}

template<class E>
E enumFrom(const Json &j, const char *key, E last)
{
    const int value = j.value(key, 0);
    if (value < 0 || value > static_cast<int>(last))
        throw Json::out_of_range::create(401, std::string("unknown value of ") + key, nullptr);
    return static_cast<E>(value);
}

StepRequest requestFrom(const Json &j)
{
    StepRequest r;
    r.step = j.value("step", "");
    r.test = j.value("test", "");
    r.placement = j.value("placement", "");
    r.process = j.value("process", "");
    r.stepClass = enumFrom(j, "class", StepClass::X);
    r.place = j.value("place", "");
    r.coverOff = j.value("cover_off", false);
    r.pulls = j.value("pulls", std::vector<std::string>{});
    r.touches = j.value("touches", "");
    r.inUse = j.value("in_use", false);
    r.hotPart = j.value("hot_part", "");
    r.hotWaitS = j.value("hot_wait_s", 0.);
    r.hotConnector = j.value("hot_connector", "");
    r.wantsHot = j.value("wants_hot", false);
    r.store = enumFrom(j, "store", Store::Board);
    r.storeName = j.value("store_name", "");
    r.needs = {j.value("category", kInsideMark.category), j.value("volts", kInsideMark.volts)};
    r.needsFrameCheck = j.value("frame_check", false);
    r.frameNotHere = j.value("frame_not_here", std::vector<std::string>{});
    r.conductors = j.value("conductors", std::vector<std::string>{});
    r.zone = j.value("zone", "");
    r.params = j.value("params", std::map<std::string, std::string>{});
    r.notes = j.value("notes", std::vector<std::string>{});
    return r;
}

std::optional<Event::What> whatNamed(std::string_view name)
{
    for (int i = 0; i <= static_cast<int>(Event::What::NeverTakenBack); ++i)
        if (word(static_cast<Event::What>(i)) == name)
            return static_cast<Event::What>(i);
    return std::nullopt;
}

Event parsed(const Json &j)
{
    Event e;
    const auto what = whatNamed(j.at("what").get<std::string>());
    if (!what)
        throw Json::out_of_range::create(401, "event of an unknown sort", nullptr);
    e.what = *what;
    e.number = j.at("n").get<int>();
    e.at = {j.at("wall").get<std::int64_t>(), j.at("steady").get<std::int64_t>()};
    e.who = j.value("who", "");
    e.step = j.value("step", "");
    e.test = j.value("test", "");
    e.value = j.value("value", "");
    e.placement = j.value("placement", 0);
    e.boxes = j.value("boxes", std::vector<std::string>{});
    e.reseated = j.value("reseated", false);
    e.reported = j.value("reported", false);
    e.never = j.value("never", false);
    e.wireLeftOn = j.value("wire_left_on", false);
    e.target = j.value("target", 0);
    e.outcome = j.value("outcome", "");
    if (j.contains("veto"))
        e.veto = enumFrom(j, "veto", VetoReason::StaysCharged);
    if (j.contains("request"))
        e.request = requestFrom(j.at("request"));
    if (j.contains("reading"))
        e.reading = readingFrom(j.at("reading"));
    if (j.contains("snapshot"))
        e.snapshot = snapshotFrom(j.at("snapshot"));
    if (j.contains("meter"))
        e.meter = meterFrom(j.at("meter"));
    return e;
}

} // namespace

std::string toLine(const Event &e)
{
    Json j{{"n", e.number}, {"wall", e.at.wallMs}, {"steady", e.at.steadyMs}, {"what", word(e.what)}};
    const auto text = [&](const char *key, const std::string &value) {
        if (!value.empty())
            j[key] = value;
    };
    const auto flag = [&](const char *key, bool value) {
        if (value)
            j[key] = true;
    };
    text("who", e.who);
    text("step", e.step);
    text("test", e.test);
    text("value", e.value);
    if (e.placement != 0)
        j["placement"] = e.placement;
    if (!e.boxes.empty())
        j["boxes"] = e.boxes;
    flag("reseated", e.reseated);
    flag("reported", e.reported);
    flag("never", e.never);
    flag("wire_left_on", e.wireLeftOn);
    if (e.target != 0)
        j["target"] = e.target;
    text("outcome", e.outcome);
    if (e.veto)
        j["veto"] = static_cast<int>(*e.veto);
    if (e.request)
        j["request"] = requestJson(*e.request);
    if (e.reading)
        j["reading"] = readingJson(*e.reading);
    if (e.snapshot)
        j["snapshot"] = snapshotJson(*e.snapshot);
    if (e.meter)
        j["meter"] = meterJson(*e.meter);
    return j.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Expected<Event, std::string> eventFrom(std::string_view line)
{
    try {
        const Json j = Json::parse(line);
        return parsed(j);
    } catch (const std::exception &fault) { // what nlohmann throws, turned into a value here
        return unexpected("this line is no event: " + printable(fault.what()));
    }
}

} // namespace core
