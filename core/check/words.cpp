// Words and figures that one file holds and that no other contradicts, but that nothing would understand: trades, hazards,
// shares of more than the whole, limits in two units.
#include "core/check/check.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace core {
namespace {

constexpr double kWhole = 100, kRounding = .5; // percent

template<std::size_t N>
void checkWord(const std::string &word, const std::array<std::string_view, N> &known, const char *what, const Place &place,
               std::vector<Diagnostic> &found)
{
    if (word.empty() || std::ranges::find(known, word) != known.end())
        return;
    const std::vector<std::string> words(known.begin(), known.end());
    std::string hint = didYouMean(word, words);
    if (hint.empty())
        hint = "one of: " + fmt::format("{}", fmt::join(words, ", "));
    found.push_back({DiagnosticKind::UnknownWord, place, fmt::format("`{}` is no {}", word, what), std::move(hint)});
}

void checkTrade(const std::string &trade, const Place &place, std::vector<Diagnostic> &found)
{
    checkWord(trade, kTrades, "trade", place, found);
}

std::set<Unit> unitsOf(const PathLimits &limits)
{
    std::set<Unit> units;
    const auto add = [&](const Span &span) {
        if (span.of == Span::Of::Itself && span.unit != Unit::None)
            units.insert(span.unit);
    };
    for (const auto &[volts, good] : limits.good)
        if (good.what == Shown::What::Value)
            add(good.span);
    for (const auto *edges : {&limits.badBelow, &limits.badAbove})
        for (const auto &[volts, edge] : *edges)
            add(edge);
    return units;
}

// A path is read by tests; what they measure is the unit of its limits, and of what a mode makes of it.
void checkUnits(const Kind &kind, std::vector<Diagnostic> &found)
{
    for (const Path &path : kind.paths) {
        std::set<Unit> units = unitsOf(path.limits), read;
        for (const FailureMode &mode : kind.fails)
            if (const auto shows = mode.paths.find(path.id);
                shows != mode.paths.end() && shows->second.what == Shown::What::Value &&
                shows->second.span.of == Span::Of::Itself && shows->second.span.unit != Unit::None)
                units.insert(shows->second.span.unit);
        for (const Test &test : kind.tests)
            for (const Probes &probes : test.placements)
                if (kind.pathBetween(probes.red, probes.black) == &path && !test.limits && !test.byEye())
                    read.insert(unitOf(test.measure));
        const bool fits = std::ranges::all_of(units, [&](Unit u) { return read.empty() || read.contains(u); });
        if (!fits || (read.empty() && units.size() > 1))
            found.push_back({DiagnosticKind::WrongUnit, path.place,
                             fmt::format("the limits of `{}` are not all in what its tests measure", path.id),
                             "write every limit of a path in the unit it is read in"});
    }
}

} // namespace

std::vector<Diagnostic> checkKind(const Kind &kind)
{
    std::vector<Diagnostic> found;
    double sum = 0;
    for (const FailureMode &mode : kind.fails)
        sum += mode.share;
    if (sum > kWhole + kRounding)
        found.push_back({DiagnosticKind::OutOfRange, kind.fails.front().place,
                         fmt::format("the shares of `{}` come to {:g} of 100", kind.id, sum),
                         "shares are parts of this kind's faults"});
    checkTrade(kind.call, kind.place, found);
    checkTrade(kind.fittedBy, kind.place, found);
    checkUnits(kind, found);
    return found;
}

std::vector<Diagnostic> checkHazards(const Appliance &appliance)
{
    std::vector<Diagnostic> found;
    for (const std::string &hazard : appliance.hazards)
        checkWord(hazard, kHazards, "hazard", appliance.place, found);
    return found;
}

std::vector<Diagnostic> checkTrades(const Tree &tree)
{
    std::vector<Diagnostic> found;
    for (const Step &step : tree.steps)
        for (const auto &[reading, then] : step.then)
            checkTrade(then.trade, then.place, found);
    return found;
}

} // namespace core
