#pragma once
// Sentences to a person, by key, from resources/texts/phrases.<language>.json. Named parameters stand in braces.
#include "core/base/expected.h"

#include <map>
#include <string>
#include <string_view>

namespace core {

using Params = std::map<std::string, std::string>;

class Phrases
{
public:
    // A flat JSON object of texts. The error says what is wrong.
    static Expected<Phrases, std::string> parse(std::string_view json);

    // The sentence with its parameters put in; they are never looked at for braces again. An unknown key gives itself.
    std::string say(const std::string &key, const Params &params = {}) const;
    bool has(const std::string &key) const { return m_texts.contains(key); }

private:
    std::map<std::string, std::string> m_texts;
};

} // namespace core
