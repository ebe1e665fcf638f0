// Any bytes as the lines of a session. What must hold: every line gets one line of JSON; a refusal says why; no step is shown
// against the gate; what was kept leads to the same state again.
#include "app/cli/protocol.h"
#include "core/base/text.h"
#include "core/load/load.h"
#include "tests/support/session_laws.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace core;

namespace {

void must(bool holds, const std::string &what, std::string_view line)
{
    if (holds)
        return;
    std::fprintf(stderr, "%s: [%s]\n", what.c_str(), printable(line).c_str());
    std::abort();
}

std::string fileText(const char *path)
{
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

const Content &shipped()
{
    static const Library library = [] {
        const std::filesystem::path folder = TREES;
        return loadFolders({&folder, 1}).library;
    }();
    static const Phrases phrases = Phrases::parse(fileText(SOURCE "/resources/texts/phrases.en.json")).value();
    static const SafetyTexts safety = safetyTextsIn(fileText(SOURCE "/resources/texts/safety.en.json")).value();
    static const Content content{&library, &phrases, &safety};
    return content;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    constexpr std::size_t kMostLines = 40;
    app::Protocol protocol(shipped(), {});
    std::istringstream lines(std::string(reinterpret_cast<const char *>(data), size));
    std::size_t count = 0;
    for (std::string line; count < kMostLines && std::getline(lines, line); ++count) {
        const nlohmann::json answer = nlohmann::json::parse(protocol.answer(line, {1'000'000, 1'000}), nullptr, false);
        must(answer.is_object() && answer.contains("ok"), "no answer", line);
        must(answer["ok"].get<bool>() || !answer["refusal"]["text"].get<std::string>().empty(), "refused without a word", line);
        if (protocol.session() != nullptr)
            must(brokenLaw(*protocol.session()).empty(), brokenLaw(*protocol.session()), line);
    }
    if (protocol.session() != nullptr)
        must(brokenReplay(*protocol.session()).empty(), brokenReplay(*protocol.session()), "at the end");
    return 0;
}
