#pragma once
// The JSON lines of `meterfirst-cli session`: one object in, one object out. Fields may be added, none renamed.
#include "app/cli/message.h"
#include "core/session/view.h"

#include <functional>
#include <memory>
#include <string>

namespace app {

// One conversation: at most one job at a time. Every line gets one line; nothing a line holds can end it.
class Protocol
{
public:
    // `keepFor` gives the place a job's events are kept, per job started; empty: nowhere.
    using KeepFor = std::function<core::Session::Keep(const core::Snapshot &)>;
    Protocol(core::Content content, KeepFor keepFor) : m_content(content), m_keepFor(std::move(keepFor)) {}

    std::string answer(std::string_view line, core::Instant now);
    const core::Session *session() const { return m_session.get(); }

private:
    std::string start(const nlohmann::json &object, core::Instant now);
    nlohmann::json parkOpen(core::Instant now);
    std::string stateNow(nlohmann::json more = nlohmann::json::object());

    core::Content m_content;
    KeepFor m_keepFor;
    std::unique_ptr<core::Session> m_session;
    std::size_t m_told = 0; // events already in an answer
};

std::string denied(const core::Denial &denial);

} // namespace app
