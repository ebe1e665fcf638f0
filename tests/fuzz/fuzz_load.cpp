// Any bytes as a file of the content, by itself and beside sound content. What must hold: a value exactly when there is no
// fault; every message is clean text at a place that exists; no number is reversed or no number; the sound files are never
// blamed and stay usable; the same bytes get the same messages.
#include "core/base/text.h"
#include "core/load/load.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>

using namespace core;

namespace {

constexpr std::string_view kName = "fuzzed/any.yaml";

void must(bool holds, const char *what, std::string_view text)
{
    if (holds)
        return;
    std::fprintf(stderr, "%s: [%s]\n", what, printable(text.substr(0, 400)).c_str());
    std::abort();
}

void checkMessages(const std::vector<Diagnostic> &diagnostics, std::string_view text)
{
    const auto lines = std::ranges::count(text, '\n') + 2;
    for (const Diagnostic &d : diagnostics) {
        if (d.place.file != kName)
            continue;
        must(!d.text.empty(), "a message without words", text);
        must(firstBadByte(toText(d)) == std::string_view::npos, "a message that is no clean text", text);
        must(d.place.line >= 0 && d.place.line <= lines && d.place.column >= (d.place.line > 0 ? 1 : 0),
             "a place that does not exist", text);
    }
}

template<class T>
void checkParsed(const Parsed<T> &parsed, std::string_view text)
{
    must(parsed.value.has_value() == !hasFault(parsed.diagnostics), "a value beside a fault, or none without", text);
    checkMessages(parsed.diagnostics, text);
}

void checkSpan(const Span &span, std::string_view text)
{
    must(!std::isnan(span.lo) && !std::isnan(span.hi) && span.lo <= span.hi, "a span that is none", text);
}

void checkNumbers(const Kind &kind, std::string_view text)
{
    for (const Path &path : kind.paths) {
        must(!path.from.empty() && !path.to.empty(), "a path without ends", text);
        for (const auto &[volts, good] : path.limits.good)
            checkSpan(good.span, text);
        must(!path.curve || path.curve->r0 > 0, "a curve at zero", text);
    }
    double chances = 0;
    for (const auto &[name, chance] : kind.lookBehind)
        chances += chance;
    must(chances <= 0.9 + 1e-6, "causes surer than sure", text);
    for (const FailureMode &mode : kind.fails)
        must(mode.share > 0 && std::isfinite(mode.share), "a share that is none", text);
}

std::vector<SourceText> soundContent()
{
    std::vector<SourceText> texts;
    for (const auto &entry : std::filesystem::recursive_directory_iterator(SOURCE "/tests/golden/good")) {
        std::ifstream in(entry.path(), std::ios::binary);
        if (entry.is_regular_file())
            texts.push_back({entry.path().string(), {std::istreambuf_iterator<char>(in), {}}, 1, false});
    }
    return texts;
}

void checkBesideOthers(std::string_view text)
{
    static const std::vector<SourceText> kSound = soundContent();
    std::vector<SourceText> texts = kSound;
    texts.push_back({std::string(kName), std::string(text), 2, false}); // comes last: it takes nobody's id
    const Loaded loaded = loadTexts(texts);
    checkMessages(loaded.diagnostics, text);
    must(std::ranges::is_sorted(loaded.diagnostics, {},
                                [](const Diagnostic &d) { return std::tie(d.place.file, d.place.line, d.place.column); }),
         "messages out of order", text);
    for (const Diagnostic &d : loaded.diagnostics)
        must(d.place.file == kName, "a sound file is blamed", text);
    must(!loaded.library.faulty.contains("kettle/cold"), "a sound tree cannot be used", text);
    must(loaded.diagnostics == loadTexts(texts).diagnostics, "other messages the second time", text);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    const std::string text(data, data + size);
    const auto kind = parseKind(text, kName);
    checkParsed(kind, text);
    if (kind.value)
        checkNumbers(*kind.value, text);
    checkParsed(parseAppliance(text, kName), text);
    checkParsed(parseTree(text, kName), text);
    checkParsed(parseCases(text, kName), text);
    checkBesideOthers(text);
    return 0;
}
