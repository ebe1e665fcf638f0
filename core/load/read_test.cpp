#include "core/base/text.h"
#include "core/load/read.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace core {
namespace {

constexpr std::array<std::string_view, 5> kTemperatures{"part_temperature", "printed_temperature", "ambient", "air_temperature",
                                                        "water_temperature"};

void readMeasure(Fields &fields, Test &test)
{
    static constexpr int kCount = static_cast<int>(Measure::Ear) + 1;
    if (fields.need("measure") == nullptr)
        return;
    const auto of = [](Measure m) { return std::pair(word(m), m); };
    test.measure =
        fields.word<Measure>("measure",
                             {of(Measure::Resistance), of(Measure::Continuity), of(Measure::Capacitance), of(Measure::Diode),
                              of(Measure::VoltageAc), of(Measure::VoltageDc), of(Measure::VoltageLowImpedance),
                              of(Measure::CurrentClamp), of(Measure::Frequency), of(Measure::Duty), of(Measure::Temperature),
                              of(Measure::OpensAt), of(Measure::Look), of(Measure::Hand), of(Measure::Ear)},
                             Measure::Resistance);
    static_assert(kCount == 15, "every measure stands in the list above");
}

std::optional<Probes> readPair(const Node &node, Notes &notes)
{
    if (!node.isList() || node.items.size() != 2) {
        notes.add(DiagnosticKind::WrongShape, node, "two probes belong here", "write `[red, black]`");
        return std::nullopt;
    }
    Probes probes{textOf(node.items[0], notes), textOf(node.items[1], notes)};
    if (!probes.red.empty() && probes.red == probes.black)
        notes.add(DiagnosticKind::Repeated, node.items[1], "both probes on one point", "name two");
    return probes;
}

void readPlacements(Fields &fields, Test &test)
{
    Notes &notes = fields.notes();
    const Node *one = fields.find("probes");
    const Node *each = fields.find("each");
    test.jaw = fields.sentence("jaw");
    if (one != nullptr)
        if (auto pair = readPair(*one, notes))
            test.placements.push_back(std::move(*pair));
    if (each != nullptr && !each->isList())
        notes.add(DiagnosticKind::WrongShape, *each, "`each` is no list", "write `[[red, black], [red, black]]`");
    else if (each != nullptr)
        for (const Node &item : each->items)
            if (auto pair = readPair(item, notes))
                test.placements.push_back(std::move(*pair));
    const bool clamp = test.measure == Measure::CurrentClamp;
    const bool probed = !clamp && !test.byEye() && test.measure != Measure::Temperature && test.measure != Measure::OpensAt;
    const auto refuse = [&](std::string_view key) {
        if (const Node *at = fields.node().key(key))
            notes.add(DiagnosticKind::KeyNotHere, *at, fmt::format("`{}` with `measure: {}`", key, word(test.measure)),
                      "take it out, or measure something else");
    };
    if (!probed)
        std::ranges::for_each(std::array{"probes", "each"}, refuse);
    if (!clamp)
        refuse("jaw");
    if (one != nullptr && each != nullptr)
        notes.add(DiagnosticKind::KeyNotHere, *fields.node().key("each"), "`each` beside `probes`",
                  "put all placements into `each`");
    if (probed && one == nullptr && each == nullptr)
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} does not say where the probes go", fields.what()),
                     "add `probes: [red, black]`");
    if (clamp && test.jaw.empty() && !fields.has("jaw"))
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} does not say which wire the clamp goes round", fields.what()),
                     "add `jaw:`");
    if (!probed || test.placements.empty())
        test.placements = {Probes{}};
}

void readConditions(Fields &fields, Test &test)
{
    const Node *with = fields.find("with");
    if (with == nullptr)
        return;
    for (const std::string &id : textsOf(*with, fields.notes(), true)) {
        const auto known = std::ranges::find(kTemperatures, id);
        if (known == kTemperatures.end()) {
            const std::vector<std::string> words(kTemperatures.begin(), kTemperatures.end());
            fields.notes().add(DiagnosticKind::UnknownWord, itemOf(*with, id),
                               fmt::format("`{}` is no figure that can be given with a reading", id),
                               didYouMean(id, words).empty() ? "one of " + joined(words, ", ") : didYouMean(id, words));
            continue;
        }
        const bool limited = fields.has(*known);
        const Span span = readSpan(fields, *known, Unit::Celsius);
        test.with.push_back({id, limited ? std::optional(span) : std::nullopt});
    }
}

void readAnswers(Fields &fields, Test &test)
{
    Notes &notes = fields.notes();
    test.ask = fields.sentence("ask", test.byEye());
    const Node *proves = test.byEye() ? fields.need("proves") : fields.find("proves");
    eachEntry(proves, notes, [&](const Node &answer, const Node &modes) {
        std::string name = textOf(answer, notes);
        test.answers.push_back(name);
        test.proves[std::move(name)] = textsOf(modes, notes, true);
    });
    test.unsure = fields.texts("unsure");
    test.sensitivity = fields.number("sens", 0, 1).value_or(test.sensitivity);
    test.falseAlarm = fields.number("false", 0, 1).value_or(test.falseAlarm);
    if (test.falseAlarm >= test.sensitivity)
        fields.lacks(DiagnosticKind::OutOfRange,
                     fmt::format("{} says yes of a good part as often as of a bad one", fields.what()),
                     "`sens` must be above `false`");
    for (const std::string &answer : test.unsure)
        if (!test.proves.contains(answer))
            notes.add(DiagnosticKind::UnknownAnswer, itemOf(*fields.node().value("unsure"), answer),
                      fmt::format("`{}` is no answer of {}", answer, fields.what()), didYouMean(answer, test.answers));
    if (!test.byEye())
        for (const auto *key : {"ask", "proves", "unsure", "sens", "false"})
            if (const Node *at = fields.node().key(key))
                notes.add(DiagnosticKind::KeyNotHere, *at, fmt::format("`{}` with `measure: {}`", key, word(test.measure)),
                          "only what is looked at, felt or heard is answered in words");
}

void readPower(Fields &fields, Test &test)
{
    const bool declared = test.byEye() || test.measure == Measure::Temperature;
    test.appliance = fields.word<ApplianceState>(
        "appliance", {{"as_is", ApplianceState::AsIs}, {"no_power", ApplianceState::NoPower}, {"in_use", ApplianceState::InUse}},
        ApplianceState::Unsaid);
    test.touches = fields.word<std::string>("touches", {{"breaker", "breaker"}, {"plug", "plug"}, {"outlet", "outlet"}}, "");
    if (declared && !fields.has("appliance"))
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} does not say whether the machine has power", fields.what()),
                     "add `appliance: as_is`, `no_power` or `in_use`");
    if (!declared && fields.has("appliance"))
        fields.notes().add(DiagnosticKind::PowerKey, *fields.node().key("appliance"),
                           fmt::format("{} may not say whether there is power", fields.what()),
                           fmt::format("`measure: {}` decides it; take the key out", word(test.measure)));
    test.storedCharge = fields.flag("stored_charge");
    test.hot = fields.flag("hot");
}

void readLoop(Fields &fields, Test &test)
{
    if (const Node *at = fields.need("at"))
        test.at = textsOf(*at, fields.notes(), true);
    test.standsFor = fields.dottedId("stands_for");
    test.frameCheck = fields.flag("frame_check");
    test.covers = fields.dottedIds("covers");
    test.only = fields.only("only");
}

} // namespace

double minutesOf(Measure measure)
{
    return isEnergized(measure) ? 5 : 2;
}

Test readTest(const Node &key, const Node &value, Notes &notes, bool isLoop)
{
    Test test;
    test.id = idOf(key, notes, false);
    test.place = notes.place(key);
    Fields fields(key, value, notes, isLoop ? "the loop" : "the test");
    test.name = fields.sentence("name");
    test.say = fields.sentence("say");
    readMeasure(fields, test);
    readPlacements(fields, test);
    test.pull = fields.texts("pull");
    test.hold = fields.texts("hold");
    test.position = fields.id("position");
    test.run = fields.sentence("run");
    test.waitS = fields.seconds("wait");
    test.withinS = fields.seconds("within");
    readConditions(fields, test);
    test.onceGood = fields.dottedIds("once_good");
    test.convicts = fields.dottedIds("convicts");
    PathLimits limits = readLimits(fields, isLoop);
    if (fields.has("good") || hasNumbers(limits))
        test.limits = std::move(limits);
    readAnswers(fields, test);
    readPower(fields, test);
    test.minutes = fields.number("minutes", 0, 600).value_or(minutesOf(test.measure));
    test.why = fields.sentence("why");
    if (isLoop)
        readLoop(fields, test);
    fields.done();
    if (test.name.empty()) {
        test.name = capitalised(test.id);
        std::ranges::replace(test.name, '_', ' ');
    }
    return test;
}

} // namespace core
