#include "app/cli/protocol.h"

#include "app/cli/state_json.h"
#include "core/session/view_of.h"

namespace app {

using Json = nlohmann::json;

std::string denied(const core::Denial &denial)
{
    Json refusal{{"code", denial.code}, {"text", denial.text}};
    if (!denial.suggestions.empty())
        refusal["suggestions"] = denial.suggestions;
    return Json{{"ok", false}, {"refusal", refusal}}.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// A job that another one follows is parked, and the answer says how it was left: it may be on.
Json Protocol::parkOpen(core::Instant now)
{
    if (!m_session || m_session->gate().power == core::Power::Stopped)
        return Json::object();
    Json left{{"tree", m_session->start().tree}, {"power", word(m_session->gate().power)}};
    core::Command park;
    park.what = core::Command::What::Park;
    if (m_session->handle(park, now))
        return Json::object();
    return {{"parked", left}};
}

std::string Protocol::start(const Json &object, core::Instant now)
{
    auto snapshot = snapshotIn(object);
    if (!snapshot)
        return denied(snapshot.error());
    auto keep = m_keepFor ? m_keepFor(*snapshot) : core::Session::Keep();
    auto begun = core::Session::begin(m_content, std::move(*snapshot), "p" + std::to_string(now.wallMs), now, std::move(keep));
    if (!begun)
        return denied(begun.error());
    Json parked = parkOpen(now);
    m_session = std::make_unique<core::Session>(std::move(*begun));
    m_told = 0;
    return stateNow(std::move(parked));
}

std::string Protocol::stateNow(Json more)
{
    more["ok"] = true;
    more["state"] = stateJson(core::viewOf(*m_session), *m_session, m_told);
    m_told = m_session->events().size();
    return more.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string Protocol::answer(std::string_view line, core::Instant now)
{
    const auto object = objectIn(line);
    if (!object)
        return denied(object.error());
    if (object->at("do") == "start")
        return start(*object, now);
    const auto command = commandIn(line);
    if (!command)
        return denied(command.error());
    if (!m_session)
        return denied(core::Denial{"not_now", "First a job has to be started.", {}});
    if (const auto denial = m_session->handle(*command, now))
        return denied(*denial);
    return stateNow();
}

} // namespace app
