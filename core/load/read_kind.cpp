#include "core/load/read.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace core {
namespace {

constexpr std::array<std::string_view, 4> kModeKeys{"share", "cure", "say", "danger"}; // of `fails`, beside the paths
constexpr double kListShares = 0.6;                                                    // a plain `look_behind` list shares it

std::string readCure(Fields &fields)
{
    return fields.word<std::string>("cure",
                                    {{"replace", "replace"},
                                     {"reset", "reset"},
                                     {"clean", "clean"},
                                     {"free", "free"},
                                     {"reconnect", "reconnect"},
                                     {"adjust", "adjust"},
                                     {"call", "call"}},
                                    "");
}

std::optional<Curve> readCurve(const Node *node, Notes &notes)
{
    if (node == nullptr)
        return std::nullopt;
    Fields fields(*node, notes, "the curve");
    const auto ohms = [&](std::string_view key) { return readSpan(fields, key, Unit::Ohm).lo; };
    Curve curve;
    if (fields.has("platinum_r0"))
        curve = {Curve::Family::Platinum, ohms("platinum_r0"), 0};
    else if (fields.has("copper_r20"))
        curve = {Curve::Family::Copper, ohms("copper_r20"), 0};
    else if (fields.need("ntc_r25") != nullptr && fields.need("ntc_b") != nullptr)
        curve = {Curve::Family::Ntc, ohms("ntc_r25"), fields.number("ntc_b", 500, 10'000).value_or(1)};
    fields.done();
    if (curve.r0 <= 0)
        notes.add(DiagnosticKind::OutOfRange, *node, "a curve must rise or fall from a resistance above zero",
                  "`{ntc_r25: 10 kohm, ntc_b: 3950}`, `{platinum_r0: 1000 ohm}` or `{copper_r20: 3 ohm}`");
    return curve;
}

std::optional<Span> readOptionalSpan(Fields &fields, std::string_view key, Unit wanted)
{
    const bool there = fields.has(key);
    const Span span = readSpan(fields, key, wanted);
    return there ? std::optional(span) : std::nullopt;
}

Path readPath(const Node &key, const Node &value, Notes &notes)
{
    Path path;
    path.id = idOf(key, notes, false);
    path.place = notes.place(key);
    if (std::ranges::find(kModeKeys, path.id) != kModeKeys.end())
        notes.add(DiagnosticKind::BadId, key, fmt::format("a path may not be called `{}`", path.id),
                  "the word is a key of `fails`; take another");
    Fields fields(key, value, notes, "the path");
    if (const Node *between = fields.need("between")) {
        const std::vector<std::string> ends = textsOf(*between, notes, true);
        if (ends.size() == 2)
            path.from = ends[0], path.to = ends[1];
        else
            notes.add(DiagnosticKind::WrongShape, *between, "a path lies between two terminals", "write `[t1, t2]`");
    }
    path.along = fields.id("along");
    path.limits = readLimits(fields, true);
    path.normally = fields.word<Path::Normally>("normally", {{"closed", Path::Normally::Closed}, {"open", Path::Normally::Open}},
                                                Path::Normally::Always);
    path.curve = readCurve(fields.find("curve"), notes);
    path.working = readOptionalSpan(fields, "working", Unit::Ohm);
    path.settlesS = fields.seconds("settles");
    path.closesBelow = readOptionalSpan(fields, "closes_below", Unit::Celsius);
    path.opensAbove = readOptionalSpan(fields, "opens_above", Unit::Celsius);
    fields.done();
    for (const auto &[volts, good] : path.limits.good)
        if (good.span.of == Span::Of::Curve && !path.curve)
            fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} goes by a curve it does not have", fields.what()),
                         "add `curve:`");
    if (path.limits.good.empty() && !fields.has("good"))
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} has no `good`", fields.what()), "say what a good one reads");
    return path;
}

FailureMode readMode(const Node &key, const Node &value, const Kind &kind, Notes &notes)
{
    FailureMode mode;
    mode.id = idOf(key, notes, false);
    mode.place = notes.place(key);
    Fields fields(key, value, notes, "the mode");
    fields.need("share");
    mode.share = fields.number("share", 0.01, 1000).value_or(1);
    mode.cure = readCure(fields);
    mode.say = fields.sentence("say");
    if (const Node *danger = fields.find("danger"))
        mode.danger = dangerIn(*danger, notes);
    for (const Path &path : kind.paths) {
        const Node *shows = fields.find(path.id);
        const std::string text = shows == nullptr ? "" : textOf(*shows, notes);
        if (text.empty())
            continue;
        const Read<Shown> shown = shownIn(text);
        if (!shown)
            noteQuantity(shown.error(), *shows, notes);
        else
            mode.paths[path.id] = *shown;
    }
    fields.done();
    return mode;
}

void readNeeds(const Node *node, Kind &kind, Notes &notes)
{
    if (node == nullptr)
        return;
    if (!node->isMap()) {
        kind.buyNeeds["else"] = textsOf(*node, notes, true);
        return;
    }
    eachEntry(node, notes,
              [&](const Node &mode, const Node &tests) { kind.buyNeeds[textOf(mode, notes)] = textsOf(tests, notes, true); });
}

void readLookBehind(const Node *node, Kind &kind, Notes &notes)
{
    if (node == nullptr)
        return;
    if (!node->isMap()) {
        const std::vector<std::string> names = textsOf(*node, notes, true);
        for (const std::string &name : names)
            kind.lookBehind[name] = kListShares / static_cast<double>(names.size());
        return;
    }
    double sum = 0;
    eachEntry(node, notes, [&](const Node &key, const Node &chance) {
        const double share = numberOf(chance, notes, 0, 0.9).value_or(0);
        kind.lookBehind[idOf(key, notes, true)] = share;
        sum += share;
    });
    if (sum > 0.9 + 1e-9)
        notes.add(DiagnosticKind::OutOfRange, *node, fmt::format("the chances add up to {:.2f}", sum),
                  "0.9 at most: sometimes nothing stands behind");
}

void readFate(Fields &fields, Kind &kind) // what follows from a proof
{
    readNeeds(fields.find("buy_needs"), kind, fields.notes());
    readLookBehind(fields.find("look_behind"), kind, fields.notes());
    const std::string cure = readCure(fields);
    if (!kind.isPart && !fields.has("cure"))
        fields.need("cure");
    kind.cure = cure.empty() ? "replace" : cure;
    kind.cureSay = fields.sentence("cure_say");
    kind.call = fields.sentence("call");
    if (kind.cure == "call" && !fields.has("call"))
        fields.notes().add(DiagnosticKind::MissingKey, *fields.node().value("cure"), "`cure: call` does not say whom",
                           "add `call:` with the trade");
    kind.fittedBy = fields.sentence("fitted_by");
    kind.byElimination = fields.flag("by_elimination");
    kind.beside = fields.number("beside", 0, 0.5).value_or(0);
    kind.note = fields.sentence("note");
}

void readTerminals(Fields &fields, Kind &kind)
{
    kind.terminals = fields.dottedIds("terminals");
    eachEntry(fields.find("called"), fields.notes(), [&](const Node &terminal, const Node &name) {
        kind.called[terminal.text] = textOf(name, fields.notes());
        if (std::ranges::find(kind.terminals, terminal.text) == kind.terminals.end())
            fields.notes().add(DiagnosticKind::UnknownTerminal, terminal, fmt::format("no terminal `{}`", terminal.text),
                               didYouMean(terminal.text, kind.terminals));
    });
}

// A test's own numbers may go by the basis of the paths, where these agree on one.
void readBasis(const Node &key, const Node &value, const Kind &kind, Test &test, Notes &notes)
{
    if (!test.limits || !hasNumbers(*test.limits) || value.key("basis") != nullptr)
        return;
    const auto alike = [&](const Path &p) { return p.limits.basis == kind.paths[0].limits.basis; };
    if (kind.paths.empty() || !std::ranges::all_of(kind.paths, alike)) {
        notes.add(DiagnosticKind::NoBasis, key, fmt::format("the test `{}` has numbers and no `basis`", test.id),
                  "say where they come from; the paths do not agree on one");
        return;
    }
    test.limits->basis = kind.paths[0].limits.basis;
    test.limits->source = kind.paths[0].limits.source;
}

// In the tests of a condition its own id stands for every way it can be.
void spellModes(Kind &kind)
{
    std::vector<std::string> all;
    for (const FailureMode &mode : kind.fails)
        all.push_back(mode.id);
    for (Test &test : kind.tests)
        for (auto &[answer, modes] : test.proves)
            if (modes == std::vector{kind.id})
                modes = all;
}

} // namespace

std::string dangerIn(const Node &value, Notes &notes)
{
    const std::string said = textOf(value, notes);
    if (said.empty() || std::ranges::find(kDangers, said) != std::end(kDangers))
        return said;
    const std::vector<std::string> words(std::begin(kDangers), std::end(kDangers));
    notes.add(DiagnosticKind::UnknownWord, value, fmt::format("`{}` is no danger", said), didYouMean(said, words));
    return {};
}

Kind readKind(Fields &file)
{
    Notes &notes = file.notes();
    Kind kind;
    kind.isPart = file.has("kind");
    kind.id = file.id(kind.isPart ? "kind" : "condition", true);
    kind.place = notes.place(file.node());
    kind.name = file.sentence("name", true);
    kind.does = file.sentence("does");
    readTerminals(file, kind);
    eachEntry(file.find("paths"), notes,
              [&](const Node &key, const Node &value) { kind.paths.push_back(readPath(key, value, notes)); });
    std::erase_if(kind.paths, [](const Path &path) { return std::ranges::find(kModeKeys, path.id) != kModeKeys.end(); });
    const Node *fails = kind.isPart ? file.need("fails") : file.find("fails");
    eachEntry(fails, notes, [&](const Node &key, const Node &value) { kind.fails.push_back(readMode(key, value, kind, notes)); });
    if (!kind.isPart && fails == nullptr)
        kind.fails.push_back({"", 1, {}, "", "", "", kind.place});
    eachEntry(file.find("tests"), notes, [&](const Node &key, const Node &value) {
        kind.tests.push_back(readTest(key, value, notes, false));
        readBasis(key, value, kind, kind.tests.back(), notes);
    });
    if (!kind.isPart)
        spellModes(kind);
    readFate(file, kind);
    return kind;
}

} // namespace core
