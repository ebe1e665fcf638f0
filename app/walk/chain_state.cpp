#include "app/walk/chain_state.h"

#include "app/shared/counted.h"
#include "app/walk/words.h"
#include "core/session/names.h"

#include <algorithm>
#include <set>

namespace app {
namespace {

using core::RungItem;

// Rungs that carry nothing or too little while the complaint is there; the rung of what always runs counts too.
std::vector<const core::Rung *> rungsOf(const core::Machine &machine)
{
    std::vector<const core::Rung *> rungs;
    if (machine.tree == nullptr)
        return rungs;
    for (const auto &[id, how] : machine.tree->seen)
        for (const core::Rung &rung : machine.appliance->rungs)
            if (rung.id == id && how != "runs" && core::holds(rung.only, machine.answers) && rungs.size() < 2)
                rungs.push_back(&rung);
    return rungs;
}

const core::ComponentView *find(const core::StateView &view, const std::string &id)
{
    const auto at = std::ranges::find(view.components, id, &core::ComponentView::id);
    return at == view.components.end() ? nullptr : &*at;
}

const core::Path *pathOf(const core::Machine &machine, const RungItem &item)
{
    const core::Kind *kind = machine.library->kindOf(*machine.appliance, item.component);
    if (kind == nullptr)
        return nullptr;
    return item.path.empty() ? (kind->paths.empty() ? nullptr : &kind->paths.front()) : kind->path(item.path);
}

bool isOfRating(const core::Path &path)
{
    return std::ranges::any_of(path.limits.good, [](const auto &good) { return good.second.span.of == core::Span::Of::Rating; });
}

LadderSymbol symbolOf(const core::Machine &machine, const RungItem &item)
{
    const core::Path *path = pathOf(machine, item);
    const core::Kind *kind = machine.library->kindOf(*machine.appliance, item.component);
    if (path == nullptr || kind == nullptr)
        return LadderSymbol::Box;
    if (isOfRating(*path))
        return LadderSymbol::Heater;
    if (path->opensAbove || path->closesBelow || kind->id == "high_limit" || kind->id.ends_with("_tstat"))
        return LadderSymbol::Thermostat;
    if (kind->id.starts_with("thermal_"))
        return LadderSymbol::OneShot;
    if (path->normally != core::Path::Normally::Always)
        return kind->id.ends_with("relay") ? LadderSymbol::Relay : LadderSymbol::Contact;
    const bool winding = kind->id.find("motor") != std::string::npos;
    return winding ? LadderSymbol::Winding : LadderSymbol::Box;
}

// The name on the chain: with its contact where the part has several.
QString rowName(const core::Machine &machine, const RungItem &item)
{
    const core::Kind *kind = machine.library->kindOf(*machine.appliance, item.component);
    const QString name = qs(core::nameOf(machine, item.component));
    const bool several = kind != nullptr && kind->paths.size() > 1 && !item.path.empty();
    const core::Path *path = pathOf(machine, item);
    const bool contact = path != nullptr && path->normally != core::Path::Normally::Always;
    const bool plain = item.path == "contact" || item.path == "coil";
    return several && !plain && (contact || kind->id.find("motor") != std::string::npos)
               ? name + QStringLiteral(", ") + qs(item.path)
               : name;
}

QString wordsOf(const core::ComponentView &part)
{
    const QString word = part.standing == core::Standing::FailedOnce ? ChainTexts::tr("failed, once")
                                                                     : StandingWords::word(standingOf(part.standing));
    if (part.fromAfar)
        return ChainTexts::tr("cleared if wired so");
    if (part.readings.empty())
        return word;
    QStringList said;
    for (const std::string &reading : part.readings)
        said << qs(reading);
    const QString all = said.size() > 3 ? ChainTexts::tr("%1 readings").arg(said.size()) : said.join(QStringLiteral(", "));
    const bool failed = part.standing == core::Standing::FailedOnce || part.standing == core::Standing::Failed ||
                        part.standing == core::Standing::Proven;
    return failed ? word + QStringLiteral(": ") + all : word + QStringLiteral(", ") + all;
}

bool isPulled(const core::StateView &view, const std::string &component, const std::string &terminal)
{
    return std::ranges::any_of(view.wiresPulled, [&](const core::Named &wire) { return wire.id == component + "." + terminal; });
}

ChainRow rowOf(const core::StateView &view, const core::Machine &machine, const RungItem &item)
{
    ChainRow row;
    row.id = qs(item.component);
    row.name = rowName(machine, item);
    row.symbol = symbolOf(machine, item);
    const core::Path *path = pathOf(machine, item);
    row.open = path != nullptr && path->normally == core::Path::Normally::Open;
    if (path != nullptr) {
        row.pulledTop = isPulled(view, item.component, item.flipped ? path->to : path->from);
        row.pulledBottom = isPulled(view, item.component, item.flipped ? path->from : path->to);
    }
    if (const core::ComponentView *part = find(view, item.component)) {
        row.standing = standingOf(part->standing);
        row.words = wordsOf(*part);
        row.likeliest = part->likeliest;
    }
    return row;
}

ChainRung rungOf(const core::StateView &view, const core::Machine &machine, const core::Rung &rung)
{
    ChainRung out;
    out.title = qs(rung.id);
    for (std::size_t i = 0; i < rung.items.size(); ++i) {
        const RungItem &item = rung.items[i];
        if (item.what == RungItem::What::Part)
            out.rows.push_back(rowOf(view, machine, item));
        else if (i == 0)
            out.top = qs(item.component);
        else if (i + 1 == rung.items.size())
            out.bottom = qs(item.component);
    }
    return out;
}

struct Ends
{
    std::string component, terminal;
};

Ends endsOf(const core::StepView &step, std::string terminal)
{
    if (terminal.starts_with("wire("))
        terminal = terminal.substr(5, terminal.size() - 6);
    if (step.test.starts_with(step.picture.component + "."))
        return {step.picture.component, terminal};
    const auto dot = terminal.find('.');
    return dot == std::string::npos ? Ends{step.picture.component, terminal}
                                    : Ends{terminal.substr(0, dot), terminal.substr(dot + 1)};
}

// Row of the component, and whether the terminal is its upper end; no row: -1.
struct Spot
{
    int row = -1;
    std::optional<bool> upper;
};

Spot spotOf(const core::Machine &machine, const core::Rung &rung, const Ends &ends)
{
    int row = 0;
    Spot found;
    for (const RungItem &item : rung.items) {
        if (item.what != RungItem::What::Part)
            continue;
        const core::Path *path = pathOf(machine, item);
        if (item.component == ends.component) {
            found.row = row;
            if (path != nullptr && (ends.terminal == path->from || ends.terminal == path->to))
                return {row, (ends.terminal == path->from) != item.flipped};
        }
        ++row;
    }
    return found;
}

std::optional<ChainLit> litOf(const core::StateView &view, const core::Machine &machine, const core::Rung &rung)
{
    const core::StepView &step = view.step;
    if (step.kind != core::StepView::Kind::Test || step.picture.red.empty())
        return std::nullopt;
    const Spot red = spotOf(machine, rung, endsOf(step, step.picture.red)),
               black = spotOf(machine, rung, endsOf(step, step.picture.black));
    if (red.row < 0 || black.row < 0 || (!red.upper && !black.upper))
        return std::nullopt;
    ChainLit lit;
    lit.first = std::min(red.row, black.row);
    lit.last = std::max(red.row, black.row);
    if (!red.upper || !black.upper) {
        lit.other = ChainTexts::tr("bare metal");
        lit.redOnTop = red.upper.has_value();
        return lit;
    }
    lit.redOnTop = red.row != black.row ? red.row < black.row : *red.upper;
    return lit;
}

int rowNamed(const ChainRung &rung, const std::string &component)
{
    for (std::size_t i = 0; i < rung.rows.size(); ++i)
        if (utf8(rung.rows[i].id) == component)
            return static_cast<int>(i);
    return -1;
}

// Where a condition acts on this rung; nullopt: nowhere on it.
std::optional<ChainCondition> actingOn(const ChainRung &rung, const core::ConditionUse &use)
{
    ChainCondition out;
    if (!use.loses.empty()) {
        if (qs(use.loses) != rung.top && qs(use.loses) != rung.bottom)
            return std::nullopt;
        out.at = qs(use.loses) == rung.top ? ChainCondition::At::TopRail : ChainCondition::At::BottomRail;
        return out;
    }
    std::set<int> rows;
    for (const std::string &contact : use.opens)
        rows.insert(rowNamed(rung, contact.substr(0, contact.find('.'))));
    for (const std::string &part : use.overheats)
        rows.insert(rowNamed(rung, part));
    rows.erase(-1);
    if (rows.empty())
        return std::nullopt;
    out.first = *rows.begin();
    out.last = *rows.rbegin();
    return out;
}

void addConditions(ChainState &state, const core::StateView &view, const core::Machine &machine)
{
    std::set<std::string> seen;
    for (const core::ConditionUse &use : machine.appliance->conditions) {
        const std::string owner = use.id.substr(0, use.id.find('.'));
        const core::ComponentView *part = find(view, owner);
        const bool weighs = machine.tree->weightOf(use.id) > 0 || machine.tree->weightOf(owner) > 0;
        if (part == nullptr || !weighs || !core::holds(use.only, machine.answers))
            continue;
        auto at = actingOn(state.rungs.front(), use);
        if (!at || !seen.insert(owner).second)
            continue;
        at->id = qs(owner);
        at->name = qs(core::nameOf(machine, owner));
        at->standing = standingOf(part->standing);
        at->words = part->readings.empty() || part->standing == core::Standing::Untested ? StandingWords::word(at->standing)
                                                                                         : qs(part->readings.back());
        state.conditions.push_back(std::move(*at));
    }
}

void addWires(ChainState &state, const core::StateView &view)
{
    if (const core::ComponentView *wires = find(view, "harness")) {
        state.wires = standingOf(wires->standing);
        state.wiresWords = wordsOf(*wires);
    }
}

ChainRow plainRow(const core::ComponentView &part)
{
    ChainRow row;
    row.id = qs(part.id);
    row.name = qs(part.name);
    row.standing = standingOf(part.standing);
    row.words = wordsOf(part);
    row.likeliest = part.likeliest;
    return row;
}

// No rung explains it: the machine from the outside in, with what this complaint suspects at each place.
void byPlace(ChainState &state, const core::StateView &view, const core::Machine &machine)
{
    const auto listed = [&](const core::ComponentView &part) {
        return std::ranges::any_of(machine.tree->weights, [&](const auto &weight) {
            return weight.first.substr(0, weight.first.find('.')) == part.id && weight.second > 0;
        });
    };
    std::vector<std::string> places{""};
    for (const core::ServicePlace &place : machine.appliance->places)
        places.push_back(place.id);
    for (const std::string &id : places) {
        const core::ServicePlace *place = machine.appliance->servicePlace(id);
        ChainPlace out;
        out.name = place == nullptr ? ChainTexts::tr("In use, nothing opened") : qs(place->say);
        out.minutes = place == nullptr ? ChainTexts::tr("0 min") : ChainTexts::tr("%1 min").arg(place->minutes);
        out.open = std::ranges::any_of(view.coversOpen, [&](const core::Named &open) { return open.id == id; });
        for (const core::ComponentView &part : view.components) {
            const core::ConditionUse *use = machine.appliance->condition(part.id);
            const std::string at = part.place.empty() && use != nullptr ? use->at : part.place;
            if (at == id && listed(part))
                out.rows.push_back(plainRow(part));
        }
        if (!out.rows.empty())
            state.places.push_back(std::move(out));
    }
}

} // namespace

ChainState chainOf(const core::StateView &view, const core::Session &session)
{
    const core::Machine &machine = session.facts().machine;
    ChainState state;
    for (const core::Rung *rung : rungsOf(machine))
        state.rungs.push_back(rungOf(view, machine, *rung));
    if (state.rungs.empty()) {
        if (machine.tree != nullptr)
            byPlace(state, view, machine);
        state.title = ChainTexts::tr("The machine, by place");
        return state;
    }
    state.lit = litOf(view, machine, *rungsOf(machine).front());
    addConditions(state, view, machine);
    addWires(state, view);
    state.title = ChainTexts::tr("The chain: %1").arg(ChainTexts::subtitle(state));
    return state;
}

std::vector<ChainState> ladderOf(const core::StateView &view, const core::Session &session)
{
    const core::Machine &machine = session.facts().machine;
    std::vector<ChainState> ladder;
    for (const core::Rung &rung : machine.appliance->rungs) {
        if (!core::holds(rung.only, machine.answers))
            continue;
        ChainState state;
        state.rungs.push_back(rungOf(view, machine, rung));
        state.lit = litOf(view, machine, rung);
        state.title = ChainTexts::tr("The ladder: %1").arg(ChainTexts::subtitle(state));
        if (!state.rungs.front().rows.empty())
            ladder.push_back(std::move(state));
    }
    return ladder;
}

QString ChainTexts::subtitle(const ChainState &state)
{
    if (state.rungs.empty())
        return tr("from the outside in");
    const ChainRung &rung = state.rungs.front();
    if (state.rungs.size() > 1)
        return tr("%1 and %2 · wiring as assumed").arg(rung.title, state.rungs[1].title);
    return tr("%1, from %2 to %3 · wiring as assumed").arg(rung.title, rung.top, rung.bottom);
}

ChainTexts::Foot ChainTexts::foot(const core::StateView &view, const core::Session &session)
{
    const core::Machine &machine = session.facts().machine;
    for (const core::Due &due : session.deduction().ruling.due) {
        const core::ComponentView *part = find(view, due.component);
        if (part == nullptr || (part->standing != core::Standing::FailedOnce && part->standing != core::Standing::Failed))
            continue;
        QStringList missing;
        std::set<std::string> said; // the same test once more is the test
        for (const bool confirm : {true, false})
            for (const core::Due &each : session.deduction().ruling.due)
                if (each.component == due.component && !each.tests.empty() &&
                    (each.why == core::Due::Why::Confirm) == confirm && said.insert(each.tests.front()).second)
                    missing << lowerFirst(qs(core::titleOf(machine, each.tests.front()))) +
                                   (confirm ? tr(", once more") : QString());
        return {tr("Not to be bought yet"), tr("%1. Still needed: %2.").arg(qs(part->name), missing.join(QStringLiteral("; ")))};
    }
    if (!view.atRisk)
        return {};
    const core::ComponentView *risk = find(view, view.atRisk->component);
    if (risk != nullptr && risk->standing == core::Standing::Proven)
        return {};
    QString text = tr("%1, %2, not proven.").arg(qs(view.atRisk->name), qs(view.atRisk->price));
    if (view.step.kind == core::StepView::Kind::Test && view.step.minutes > 0)
        text += QLatin1Char(' ') + counted(qRound(view.step.minutes), tr("This test: %1 minute, a judgement."),
                                           tr("This test: %1 minutes, a judgement."));
    return {tr("If you bought the likeliest part now"), text};
}

} // namespace app
