#include "core/load/read.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace core {
namespace {

// Calls take(volts, value) for a map by voltage, take(0, value) for a value alone.
template<class F>
void byVoltage(const Node &node, Notes &notes, F &&take)
{
    if (!node.isMap()) {
        take(0, node);
        return;
    }
    eachEntry(&node, notes, [&](const Node &key, const Node &value) {
        const Read<double> volts = amountIn(key.text, Unit::Volt);
        if (!volts)
            noteQuantity(volts.error(), key, notes);
        else if (*volts < 1 || *volts > 1000 || *volts != std::floor(*volts))
            notes.add(DiagnosticKind::OutOfRange, key, fmt::format("a supply of {}", key.text), "whole volts, as on the plate");
        else
            take(static_cast<int>(*volts), value);
    });
}

void readGood(Fields &fields, PathLimits &limits)
{
    const Node *node = fields.find("good");
    if (node == nullptr)
        return;
    byVoltage(*node, fields.notes(), [&](int volts, const Node &value) {
        const std::string text = textOf(value, fields.notes());
        const Read<Shown> shown = text.empty() ? Read<Shown>(Shown{}) : shownIn(text);
        if (!shown)
            noteQuantity(shown.error(), value, fields.notes());
        else if (shown->what == Shown::What::Jumps)
            fields.notes().add(DiagnosticKind::NotAQuantity, value, "a reading that jumps is never good", "write a range or OL");
        else
            limits.good[volts] = *shown;
    });
}

// An edge is one value; it lies outside what is good.
void readEdge(Fields &fields, std::string_view key, const ByVoltage<Shown> &good, ByVoltage<Span> &edges)
{
    const Node *node = fields.find(key);
    if (node == nullptr)
        return;
    Notes &notes = fields.notes();
    byVoltage(*node, notes, [&](int volts, const Node &value) {
        const std::string text = textOf(value, notes);
        const Read<Span> edge = text.empty() ? Read<Span>(Span{}) : spanIn(text);
        if (!edge) {
            noteQuantity(edge.error(), value, notes);
            return;
        }
        if (edge->lo != edge->hi)
            notes.add(DiagnosticKind::NotAQuantity, value, fmt::format("`{}` takes one value", key), "write where bad begins");
        edges[volts] = *edge;
        const auto beside = good.contains(volts) ? good.find(volts) : good.find(0);
        if (beside == good.end() || beside->second.what != Shown::What::Value)
            return;
        const Span &span = beside->second.span;
        if (span.unit != edge->unit || span.of != edge->of)
            notes.add(DiagnosticKind::WrongUnit, value, fmt::format("`{}` and `good` are written in different units", key),
                      "write both in one");
        else if (key == "bad_below" ? edge->lo > span.lo : edge->hi < span.hi)
            notes.add(DiagnosticKind::Reversed, value, fmt::format("`{}` lies inside what is good", key),
                      "between good and bad there may be a gap, never an overlap");
    });
}

void readBasis(Fields &fields, PathLimits &limits, bool needsBasis)
{
    Notes &notes = fields.notes();
    limits.basis = fields.word<Basis>("basis",
                                      {{"common practice", Basis::CommonPractice},
                                       {"plate", Basis::Plate},
                                       {"sheet", Basis::Sheet},
                                       {"published", Basis::Published}},
                                      Basis::CommonPractice);
    limits.source = fields.sentence("source");
    if (limits.basis == Basis::Published && limits.source.empty())
        fields.lacks(DiagnosticKind::MissingKey, fmt::format("{} is published, but not where", fields.what()),
                     "add `source:` with the clause or page");
    if (limits.basis != Basis::Published && fields.has("source"))
        notes.add(DiagnosticKind::KeyNotHere, *fields.node().key("source"), "a `source` without `basis: published`",
                  "add the basis");
    if (needsBasis && !fields.has("basis") && hasNumbers(limits))
        fields.lacks(DiagnosticKind::NoBasis, fmt::format("{} has numbers and no `basis`", fields.what()),
                     "say where they come from: common practice, plate, sheet, or published with a source");
}

} // namespace

bool hasNumbers(const PathLimits &limits)
{
    for (const auto &[volts, shown] : limits.good)
        if (shown.what == Shown::What::Value)
            return true;
    return !limits.badBelow.empty() || !limits.badAbove.empty();
}

PathLimits readLimits(Fields &fields, bool needsBasis)
{
    PathLimits limits;
    readGood(fields, limits);
    readEdge(fields, "bad_below", limits.good, limits.badBelow);
    readEdge(fields, "bad_above", limits.good, limits.badAbove);
    readBasis(fields, limits, needsBasis);
    const auto open = [](const auto &entry) { return entry.second.what == Shown::What::Open; };
    if (!limits.badAbove.empty() && std::ranges::any_of(limits.good, open))
        fields.notes().add(DiagnosticKind::KeyNotHere, *fields.node().key("bad_above"), "`bad_above` where good is OL",
                           "nothing reads higher than OL; take it out");
    return limits;
}

Span readSpan(Fields &fields, std::string_view key, Unit wanted)
{
    const Node *node = fields.find(key);
    const std::string text = node == nullptr ? "" : textOf(*node, fields.notes());
    if (text.empty())
        return {};
    const Read<Span> span = spanIn(text);
    if (!span)
        noteQuantity(span.error(), *node, fields.notes());
    else if (span->unit != wanted || span->of != Span::Of::Itself)
        fields.notes().add(DiagnosticKind::WrongUnit, *node, fmt::format("`{}` has not the unit wanted here", text),
                           fmt::format("write it in {}", wanted == Unit::Celsius ? "C" : unitCode(wanted)));
    return span.value_or(Span{});
}

} // namespace core
