#include "core/load/read.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace core {
namespace {

Then readThen(const Node &value, Notes &notes)
{
    Then then;
    then.place = notes.place(value);
    if (!value.isMap()) {
        then.step = idOf(value, notes, false);
        return then;
    }
    Fields fields(value, notes, "the branch");
    if (fields.has("claim"))
        then.what = Then::What::Claim, then.suspect = fields.dottedId("claim");
    else if (fields.has("fix"))
        then.what = Then::What::Fix, then.suspect = fields.dottedId("fix");
    else if (fields.has("call"))
        then.what = Then::What::Call, then.trade = fields.sentence("call"), then.suspect = fields.dottedId("for"),
        then.because = fields.sentence("because");
    else if (fields.has("stop"))
        then.what = Then::What::Stop, fields.sentence("stop"), then.because = fields.sentence("because");
    else if (fields.has("found"))
        then.what = Then::What::Found, then.suspect = fields.dottedId("found"), then.step = fields.id("go", true);
    else
        fields.lacks(DiagnosticKind::MissingKey, "the branch leads nowhere",
                     "name a step, or write one of claim, fix, call, stop, found");
    fields.done();
    return then;
}

// ask, look, do or test: one of them, and what belongs to it
void readWhat(Fields &fields, Step &step)
{
    struct Sort
    {
        std::string_view key;
        Step::What what;
        double minutes;
    };
    static constexpr std::array<Sort, 4> kSorts{
        {{"ask", Step::What::Ask, 1}, {"look", Step::What::Look, 2}, {"do", Step::What::Do, 3}, {"test", Step::What::Test, 0}}};
    std::string_view chosen;
    for (const Sort &sort : kSorts) {
        const Node *value = fields.find(sort.key);
        if (value == nullptr)
            continue;
        if (!chosen.empty()) {
            fields.notes().add(DiagnosticKind::KeyNotHere, *fields.node().key(sort.key),
                               fmt::format("`{}` beside `{}`", sort.key, chosen), "a step is one thing; make two");
            continue;
        }
        chosen = sort.key;
        step.what = sort.what;
        step.minutes = sort.minutes;
        (sort.what == Step::What::Test ? step.test : step.text) =
            sort.what == Step::What::Test ? idOf(*value, fields.notes(), true) : textOf(*value, fields.notes());
    }
    if (chosen.empty())
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} says nothing to do", fields.what()),
                     "add `ask:`, `look:`, `do:` or `test:`");
}

void readPower(Fields &fields, Step &step)
{
    Notes &notes = fields.notes();
    const bool declared = step.what == Step::What::Look || step.what == Step::What::Do;
    step.appliance = fields.word<ApplianceState>(
        "appliance", {{"as_is", ApplianceState::AsIs}, {"no_power", ApplianceState::NoPower}, {"in_use", ApplianceState::InUse}},
        ApplianceState::Unsaid);
    step.at = fields.id("at");
    step.touches = fields.word<std::string>("touches", {{"breaker", "breaker"}, {"plug", "plug"}, {"outlet", "outlet"}}, "");
    if (declared && !fields.has("appliance"))
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} does not say whether the machine has power", fields.what()),
                     "add `appliance: as_is`, `no_power` or `in_use`");
    if (!declared && fields.has("appliance"))
        notes.add(DiagnosticKind::PowerKey, *fields.node().key("appliance"),
                  fmt::format("{} may not say whether there is power", fields.what()),
                  step.what == Step::What::Ask ? "for a question nothing is opened or run; take the key out"
                                               : "what is measured decides it; take the key out");
    if (step.what == Step::What::Ask)
        step.appliance = ApplianceState::AsIs;
}

// Keys that only some sorts of step can have.
void refuseKeys(Fields &fields, const Step &step)
{
    const auto refuse = [&](std::string_view key, bool allowed, std::string_view why) {
        if (const Node *at = fields.node().key(key); at != nullptr && !allowed)
            fields.notes().add(DiagnosticKind::KeyNotHere, *at, fmt::format("{} has a `{}`", fields.what(), key),
                               std::string(why));
    };
    const bool words = step.what != Step::What::Test;
    refuse("changes", step.what == Step::What::Do, "only a `do` changes something");
    refuse("touches", step.what == Step::What::Look || step.what == Step::What::Do, "only a `look` or `do` touches something");
    refuse("at", step.what != Step::What::Ask && words, "a test is done where its part is");
    for (const auto *key : {"unsure", "shows", "danger", "sens", "false", "minutes"})
        refuse(key, words, "it is the test that has it");
    if (step.otherwise.empty() != step.only.empty())
        fields.lacks(DiagnosticKind::NoOtherwise,
                     fmt::format("{} has `{}` without `{}`", fields.what(), step.only.empty() ? "otherwise" : "only",
                                 step.only.empty() ? "only" : "otherwise"),
                     "say both: for which machines the step is, and where the others go");
}

void readBranches(Fields &fields, Step &step)
{
    Notes &notes = fields.notes();
    eachEntry(fields.need("then"), notes,
              [&](const Node &key, const Node &value) { step.then.emplace_back(textOf(key, notes), readThen(value, notes)); });
    step.unsure = fields.texts("unsure");
    eachEntry(fields.find("shows"), notes, [&](const Node &answer, const Node &suspects) {
        step.shows[textOf(answer, notes)] = textsOf(suspects, notes, true);
    });
    eachEntry(fields.find("danger"), notes,
              [&](const Node &answer, const Node &danger) { step.danger[textOf(answer, notes)] = dangerIn(danger, notes); });
    if (step.what == Step::What::Test)
        return;
    const std::vector<std::string> answers = step.answers();
    const auto check = [&](const Node &at, const std::string &answer) {
        if (!answer.empty() && std::ranges::find(answers, answer) == answers.end())
            notes.add(DiagnosticKind::UnknownAnswer, at, fmt::format("`{}` is no answer of {}", answer, fields.what()),
                      didYouMean(answer, answers));
    };
    for (const std::string &answer : step.unsure)
        check(itemOf(*fields.node().value("unsure"), answer), answer);
    for (const auto &[answer, suspects] : step.shows)
        check(keyOf(*fields.node().value("shows"), answer), answer);
    for (const auto &[answer, danger] : step.danger)
        check(keyOf(*fields.node().value("danger"), answer), answer);
    if (answers.empty() && fields.has("then"))
        notes.add(DiagnosticKind::MissingKey, *fields.node().value("then"), fmt::format("{} has no answers", fields.what()),
                  "name them under `then`");
}

Step readStep(const Node &key, const Node &value, Notes &notes)
{
    Step step;
    step.id = idOf(key, notes, false);
    step.place = notes.place(key);
    Fields fields(key, value, notes, "the step");
    readWhat(fields, step);
    step.why = fields.sentence("why");
    readPower(fields, step);
    step.changes = fields.dottedIds("changes");
    step.sensitivity = fields.number("sens", 0, 1).value_or(step.sensitivity);
    step.falseAlarm = fields.number("false", 0, 1).value_or(step.falseAlarm);
    if (step.falseAlarm >= step.sensitivity)
        fields.lacks(DiagnosticKind::OutOfRange,
                     fmt::format("{} says yes of a good part as often as of a bad one", fields.what()),
                     "`sens` must be above `false`");
    step.minutes = fields.number("minutes", 0, 600).value_or(step.minutes);
    step.only = fields.only("only");
    step.otherwise = fields.id("otherwise");
    readBranches(fields, step);
    refuseKeys(fields, step);
    fields.done();
    return step;
}

void readSeen(const Node *node, Tree &tree, Notes &notes)
{
    static const std::vector<std::string> kWords{"runs", "weak", "nothing", "always"};
    eachEntry(node, notes, [&](const Node &key, const Node &value) {
        std::string text = textOf(value, notes);
        if (key.text == "during") {
            tree.during = std::move(text);
            return;
        }
        if (std::ranges::find(kWords, text) == kWords.end())
            notes.add(DiagnosticKind::UnknownWord, value, fmt::format("`{}` is no word for what is seen", text),
                      "one of runs, weak, nothing, always");
        tree.seen[idOf(key, notes, false)] = std::move(text);
    });
    if (node != nullptr && node->isMap() && tree.during.empty())
        notes.add(DiagnosticKind::MissingKey, *node, "`seen` does not say in which position", "add `during:`");
}

} // namespace

Tree readTree(Fields &file)
{
    Notes &notes = file.notes();
    Tree tree;
    if (const Node *id = file.need("tree")) {
        tree.id = textOf(*id, notes);
        const std::size_t slash = tree.id.find('/');
        if (slash == std::string::npos || !isId(std::string_view(tree.id).substr(0, slash)) ||
            !isId(std::string_view(tree.id).substr(slash + 1)))
            notes.add(DiagnosticKind::BadId, *id, fmt::format("`{}` is no name of a tree", tree.id),
                      "write `appliance/complaint`");
        else
            tree.appliance = tree.id.substr(0, slash);
    }
    tree.place = notes.place(file.node());
    tree.complaint = file.sentence("complaint", true);
    tree.say = file.sentence("say");
    tree.alsoCalled = file.texts("also_called");
    readSeen(file.find("seen"), tree, notes);
    eachEntry(file.need("weights"), notes, [&](const Node &key, const Node &value) {
        tree.weights.emplace_back(idOf(key, notes, true), numberOf(value, notes, 0.01, 10'000).value_or(1));
    });
    eachEntry(file.need("steps"), notes,
              [&](const Node &key, const Node &value) { tree.steps.push_back(readStep(key, value, notes)); });
    if (file.has("steps") && tree.steps.empty() && file.node().value("steps")->isMap())
        notes.add(DiagnosticKind::MissingKey, *file.node().value("steps"), "no steps", "add the first");
    tree.after = file.sentence("after");
    return tree;
}

std::vector<WorkedCase> readCases(Fields &file)
{
    Notes &notes = file.notes();
    std::vector<WorkedCase> cases;
    eachEntry(file.need("cases"), notes, [&](const Node &key, const Node &value) {
        WorkedCase c;
        c.id = idOf(key, notes, false);
        c.place = notes.place(key);
        Fields fields(key, value, notes, "the case");
        c.tree = fields.sentence("tree", true);
        c.story = fields.sentence("story");
        eachEntry(fields.find("asks"), notes, [&](const Node &k, const Node &v) { c.asks[k.text] = textOf(v, notes); });
        if (const Node *truth = fields.need("truth"))
            c.truth = textsOf(*truth, notes, true);
        eachEntry(fields.need("answers"), notes, [&](const Node &k, const Node &v) { c.answers[k.text] = textOf(v, notes); });
        if (const Node *verdict = fields.need("verdict")) {
            Fields wanted(*verdict, notes, "the verdict");
            wanted.need("kind");
            c.kind = wanted.word<std::string>(
                "kind", {{"replace", "replace"}, {"fix", "fix"}, {"call", "call"}, {"not_proven", "not_proven"}}, "");
            c.parts = wanted.dottedIds("parts");
            c.conditions = wanted.dottedIds("conditions");
            wanted.done();
        }
        c.energized = !fields.has("energized") || fields.flag("energized");
        fields.done();
        cases.push_back(std::move(c));
    });
    return cases;
}

} // namespace core
