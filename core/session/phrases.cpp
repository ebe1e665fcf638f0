#include "core/session/phrases.h"

#include "core/base/text.h"
#include "core/gate/texts.h"

#include <nlohmann/json.hpp>

namespace core {

Expected<Phrases, std::string> Phrases::parse(std::string_view text)
{
    const auto json = nlohmann::json::parse(text, nullptr, false);
    if (!json.is_object())
        return unexpected(std::string("the phrases are no JSON object"));
    Phrases phrases;
    for (const auto &[key, value] : json.items()) {
        if (!value.is_string())
            return unexpected("the phrase `" + printable(key) + "` is no text");
        phrases.m_texts[key] = value.get<std::string>();
    }
    return phrases;
}

std::string Phrases::say(const std::string &key, const Params &params) const
{
    const auto at = m_texts.find(key);
    return filled(at == m_texts.end() ? std::string_view(key) : std::string_view(at->second), params);
}

} // namespace core
