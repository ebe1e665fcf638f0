#include "core/load/read.h"

#include <algorithm>
#include <fmt/format.h>

namespace core {
namespace {

Ask readAsk(const Node &key, const Node &value, Notes &notes)
{
    Ask ask;
    ask.id = idOf(key, notes, false);
    ask.place = notes.place(key);
    Fields fields(key, value, notes, "the question");
    ask.ask = fields.sentence("ask", true);
    if (const Node *answers = fields.need("answers"))
        ask.answers = textsOf(*answers, notes, false);
    if (ask.answers.size() < 2 && fields.has("answers"))
        notes.add(DiagnosticKind::WrongShape, *fields.node().value("answers"), "a question needs two answers", "list them");
    eachEntry(fields.find("says"), notes, [&](const Node &answer, const Node &text) {
        if (std::ranges::find(ask.answers, answer.text) == ask.answers.end())
            notes.add(DiagnosticKind::UnknownAnswer, answer, fmt::format("`{}` is no answer of {}", answer.text, fields.what()),
                      didYouMean(answer.text, ask.answers));
        ask.says[answer.text] = textOf(text, notes);
    });
    ask.only = fields.only("only");
    fields.done();
    return ask;
}

ServicePlace readPlace(const Node &key, const Node &value, Notes &notes)
{
    ServicePlace place;
    place.id = idOf(key, notes, false);
    place.place = notes.place(key);
    Fields fields(key, value, notes, "the place");
    fields.need("minutes");
    place.minutes = fields.number("minutes", 0, 600).value_or(0);
    place.say = fields.sentence("say", true);
    place.called = fields.sentence("called", false);
    place.after = fields.id("after");
    // the receptacle's face has none to take off
    place.cover = fields.word<bool>("cover", {{"none", false}}, true) && place.id != "outlet";
    fields.done();
    return place;
}

template<class T, class R>
std::optional<T> readQuantity(const Node *node, Notes &notes, R &&read)
{
    const std::string text = node == nullptr ? "" : textOf(*node, notes);
    if (text.empty())
        return std::nullopt;
    Read<T> value = read(text);
    if (value)
        return *value;
    noteQuantity(value.error(), *node, notes);
    return std::nullopt;
}

void readRatings(const Node *node, Component &component, Notes &notes)
{
    if (node == nullptr)
        return;
    const auto take = [&](const std::string &answer, const Node &value) {
        if (const auto rating = readQuantity<Rating>(&value, notes, ratingIn))
            component.ratings[answer] = *rating;
    };
    if (!node->isMap())
        take("", *node);
    else
        eachEntry(node, notes, [&](const Node &answer, const Node &value) { take(textOf(answer, notes), value); });
}

Component readComponent(const Node &key, const Node &value, Notes &notes)
{
    Component c;
    c.id = idOf(key, notes, false);
    c.place = notes.place(key);
    Fields fields(key, value, notes, "the component");
    c.kind = fields.id("kind");
    if (c.kind.empty())
        c.kind = c.id;
    c.at = fields.id("at", true);
    c.name = fields.sentence("name");
    eachEntry(fields.find("reach"), notes,
              [&](const Node &test, const Node &place) { c.reach[test.text] = idOf(place, notes, false); });
    eachEntry(fields.find("skips"), notes, [&](const Node &test, const Node &machines) {
        eachEntry(&machines, notes, [&](const Node &ask, const Node &answers) {
            c.skips[test.text].emplace_back(idOf(ask, notes, false), textsOf(answers, notes, false));
        });
    });
    c.only = fields.only("only");
    c.price = readQuantity<Price>(fields.find("price"), notes, priceIn);
    readRatings(fields.find("rating"), c, notes);
    c.workedBy = fields.id("worked_by");
    fields.done();
    return c;
}

ConditionUse readCondition(const Node &key, const Node &value, Notes &notes)
{
    ConditionUse use;
    use.id = idOf(key, notes, true);
    use.place = notes.place(key);
    Fields fields(key, value, notes, "the condition");
    use.at = fields.id("at");
    use.loses = fields.sentence("loses");
    use.opens = fields.dottedIds("opens");
    use.overheats = fields.dottedIds("overheats");
    use.only = fields.only("only");
    fields.done();
    return use;
}

void readRails(const Node *node, Appliance &appliance, Notes &notes)
{
    const auto take = [&](const std::string &answer, const Node &rail, const Node &value) {
        const auto volts = readQuantity<double>(&value, notes, [](std::string_view text) { return amountIn(text, Unit::Volt); });
        appliance.rails[answer][textOf(rail, notes)] = volts.value_or(0);
    };
    eachEntry(node, notes, [&](const Node &key, const Node &value) {
        if (!value.isMap())
            take("", key, value);
        else
            eachEntry(&value, notes, [&](const Node &rail, const Node &volts) { take(key.text, rail, volts); });
    });
}

// What stands in a path is sorted out by name later: a rail, a component with its path, or a point in parentheses.
Rung readRung(const Node &node, Notes &notes)
{
    Rung rung;
    rung.place = notes.place(node);
    Fields fields(node, notes, "the rung");
    rung.id = fields.id("rung", true);
    rung.only = fields.only("only");
    const Node *path = fields.need("path");
    fields.done();
    if (path == nullptr)
        return rung;
    if (!path->isList() || path->items.size() < 2) {
        notes.add(DiagnosticKind::WrongShape, *path, "a rung runs from one point to another", "write `[L1, part, N]`");
        return rung;
    }
    for (const Node &item : path->items) {
        std::string text = textOf(item, notes);
        const bool point = text.size() > 2 && text.front() == '(' && text.back() == ')';
        RungItem entry;
        entry.what = point ? RungItem::What::Point : RungItem::What::Part;
        entry.component = point ? text.substr(1, text.size() - 2) : std::move(text);
        if (point && !isId(entry.component))
            notes.add(DiagnosticKind::BadId, item, fmt::format("`{}` is no name of a point", entry.component),
                      "small letters, digits and _");
        rung.items.push_back(std::move(entry));
    }
    return rung;
}

} // namespace

Appliance readAppliance(Fields &file)
{
    Notes &notes = file.notes();
    Appliance a;
    a.id = file.id("appliance", true);
    a.place = notes.place(file.node());
    a.name = file.sentence("name", true);
    a.hardWired = file.word<bool>("supplied_by", {{"cord", false}, {"hard_wired", true}}, false);
    file.need("supplied_by");
    a.caution = file.sentence("caution");
    a.hazards = file.dottedIds("hazards");
    eachEntry(file.find("asks"), notes, [&](const Node &k, const Node &v) { a.asks.push_back(readAsk(k, v, notes)); });
    eachEntry(file.need("places"), notes, [&](const Node &k, const Node &v) { a.places.push_back(readPlace(k, v, notes)); });
    eachEntry(file.need("components"), notes,
              [&](const Node &k, const Node &v) { a.components.push_back(readComponent(k, v, notes)); });
    readRails(file.find("rails"), a, notes);
    a.frame = file.dottedIds("frame");
    eachEntry(file.find("conditions"), notes,
              [&](const Node &k, const Node &v) { a.conditions.push_back(readCondition(k, v, notes)); });
    if (const Node *rungs = file.find("rungs")) {
        if (!rungs->isList())
            notes.add(DiagnosticKind::WrongShape, *rungs, "`rungs` is no list", "begin each rung with a dash");
        else
            for (const Node &rung : rungs->items)
                a.rungs.push_back(readRung(rung, notes));
    }
    eachEntry(file.find("closed"), notes,
              [&](const Node &k, const Node &v) { a.closed.emplace_back(idOf(k, notes, false), textsOf(v, notes, true)); });
    eachEntry(file.find("loops"), notes, [&](const Node &k, const Node &v) { a.loops.push_back(readTest(k, v, notes, true)); });
    return a;
}

} // namespace core
