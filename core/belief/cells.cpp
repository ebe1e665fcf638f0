#include "core/belief/cells.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace core {
namespace {

struct Part // of a span: edges and share
{
    double lo, hi, weight;
};

constexpr double kTop = 100e3; // ohm: over this nothing touches

constexpr std::array<Part, 6> kWhere{{{0, .11, .11}, {.11, .3, .19}, {.3, .5, .2}, {.5, .7, .2}, {.7, .89, .19}, {.89, 1, .11}}};
constexpr std::array<Part, 5> kContact{
    {{.3, 3, .3395}, {3, 30, .3395}, {30, 300, .194}, {300, 5e3, .097}, {5e3, kTop, .03}}};
constexpr std::array<Part, 4> kWhereBroken{{{0, .18, .25}, {.18, .5, .25}, {.5, .82, .25}, {.82, 1, .25}}};
constexpr std::array<Part, 3> kContactBroken{{{.3, 5, .57}, {5, 100, .38}, {100, kTop, .05}}};

std::vector<Cell> intermittent()
{
    std::vector<Cell> cells(3);
    cells[0].state = Cell::State::Open, cells[0].weight = .45;
    cells[1].state = Cell::State::Jumps, cells[1].weight = .25;
    cells[2].state = Cell::State::Hides, cells[2].weight = .30;
    return cells;
}

template<class Where, class Contact>
std::vector<Cell> grounds(const Where &where, const Contact &contacts, std::initializer_list<int> sides)
{
    std::vector<Cell> cells;
    for (const Part &x : where)
        for (const Part &contact : contacts)
            for (const int side : sides) {
                Cell cell;
                cell.weight = x.weight * contact.weight / static_cast<double>(sides.size());
                cell.lo = contact.lo, cell.hi = contact.hi;
                cell.xLo = x.lo, cell.xHi = x.hi;
                cell.side = side;
                cells.push_back(cell);
            }
    return cells;
}

std::vector<Cell> evenInLn(double lo, double hi)
{
    constexpr int kCells = 5;
    const bool fromZero = lo <= 0;
    const double first = fromZero ? hi / 100 : lo;
    const double step = std::pow(hi / first, 1. / (fromZero ? kCells - 1 : kCells));
    std::vector<Cell> cells(kCells);
    for (int i = 0; i < kCells; ++i) {
        Cell &cell = cells[static_cast<std::size_t>(i)];
        const int from = fromZero ? i - 1 : i;
        cell.weight = 1. / kCells;
        cell.lo = from < 0 ? 0 : first * std::pow(step, from);
        cell.hi = first * std::pow(step, from + 1);
    }
    return cells;
}

// values so near each other that cells would tell nothing apart
bool isNarrow(const Span &span) { return (span.lo <= 0 && span.hi <= 2) || (span.lo > 0 && span.hi <= 1.5 * span.lo); }

bool isGood(const Path &path, const Shown &shown)
{
    return std::ranges::any_of(path.limits.good, [&](const auto &good) { return good.second == shown; });
}

bool touches(const Path &path, const Shown &shown) { return !path.along.empty() && shown.what == Shown::What::Value; }

bool isBroken(const FailureMode &mode, const std::string &path)
{
    const auto at = mode.paths.find(path);
    return at != mode.paths.end() && at->second.what == Shown::What::Open;
}

} // namespace

const Path *variedPath(const Kind &kind, const FailureMode &mode)
{
    for (const auto &[id, shown] : mode.paths)
        if (const Path *path = kind.path(id); path != nullptr && touches(*path, shown))
            return path;
    for (const auto &[id, shown] : mode.paths) {
        const Path *path = kind.path(id);
        if (path != nullptr && shown.what == Shown::What::Value && !isNarrow(shown.span) && !isGood(*path, shown))
            return path;
    }
    return nullptr;
}

std::vector<Cell> cellsOf(const Kind &kind, const FailureMode &mode)
{
    for (const auto &[id, shown] : mode.paths)
        if (shown.what == Shown::What::Jumps)
            return intermittent();
    const Path *path = variedPath(kind, mode);
    if (path == nullptr)
        return {Cell{}};
    if (!path->along.empty())
        return isBroken(mode, path->along) ? grounds(kWhereBroken, kContactBroken, {1, 2}) : grounds(kWhere, kContact, {0});
    const Span &span = mode.paths.at(path->id).span;
    return evenInLn(span.lo, span.hi);
}

std::vector<Cell> onEachWire(const std::vector<Cell> &cells, const std::vector<int> &wires)
{
    if (wires.empty())
        return cells;
    std::vector<Cell> result;
    for (const Cell &cell : cells)
        for (const int wire : wires) {
            result.push_back(cell);
            result.back().wire = wire;
            result.back().weight /= static_cast<double>(wires.size());
        }
    return result;
}

} // namespace core
