#include "core/belief/part_network.h"

#include "core/belief/cells.h"
#include "core/reading/curves.h"

#include <algorithm>
#include <cmath>

namespace core {
namespace {

constexpr double kHotOverCold = 1.04; // a plate's watts are hot, a dead reading is cold

struct Value // ohm
{
    double mu = 0, sigma = 0, h = 0;
    bool vague = false;
};

bool isContactLike(double lo, double hi) { return lo <= 0 && hi <= 2; }

Value goodValue(double lo, double hi, double scale)
{
    if (isContactLike(lo, hi))
        return {.16 * hi, .10 * hi, 0, false};
    return {(lo + hi) / 2 * scale, (hi - lo) / 4 * scale, 0, false};
}

// what one unit of a span means in ohm; nullopt: not known of this machine
std::optional<double> unitOf(const Span &span, const Path &path, const MachineFacts &facts)
{
    switch (span.of) {
    case Span::Of::Itself: return 1;
    case Span::Of::Rating: return facts.ratedOhm ? std::optional(*facts.ratedOhm / kHotOverCold) : std::nullopt;
    case Span::Of::Curve: break;
    }
    const auto at = facts.with.find("part_temperature");
    if (!path.curve || at == facts.with.end() || at->second.unit != Unit::Celsius)
        return std::nullopt;
    return curveOhm(*path.curve, at->second.value);
}

const Shown *goodOf(const Path &path, int volts)
{
    const auto &good = path.limits.good;
    auto at = good.find(volts);
    if (at == good.end() && volts == 240)
        at = good.find(120);
    if (at == good.end())
        at = good.find(0);
    return at == good.end() ? nullptr : &at->second;
}

bool isOhms(const Span &span) { return span.unit == Unit::Ohm || (span.unit == Unit::None && span.of != Span::Of::Itself); }

class Branches
{
public:
    explicit Branches(const PartState &part) : m_part(part) {}

    std::vector<Branch> take()
    {
        for (const Path &path : m_part.kind->paths)
            if (&path != touching() && !isSplit(path))
                add(path);
        if (touching() != nullptr)
            split();
        return std::move(m_branches);
    }

private:
    const Shown *becomes(const Path &path) const
    {
        if (m_part.mode == nullptr)
            return nullptr;
        const auto at = m_part.mode->paths.find(path.id);
        return at == m_part.mode->paths.end() ? nullptr : &at->second;
    }

    // the ground path that this fault closes, where it lies along a conductor
    const Path *touching() const
    {
        const Path *path = m_part.mode == nullptr ? nullptr : variedPath(*m_part.kind, *m_part.mode);
        return path != nullptr && !path->along.empty() && m_part.kind->path(path->along) != nullptr ? path : nullptr;
    }
    bool isSplit(const Path &path) const { return touching() != nullptr && touching()->along == path.id; }

    bool standsClosed(const Path &path) const
    {
        const auto said = m_part.closed.find(path.id);
        return said != m_part.closed.end() ? said->second : path.normally != Path::Normally::Open;
    }

    // nullopt: does not conduct, or has no ohms
    std::optional<Value> healthy(const Path &path) const
    {
        const Shown *good = goodOf(path, m_part.facts.volts);
        if (good == nullptr || good->what != Shown::What::Value || !isOhms(good->span) || !standsClosed(path))
            return std::nullopt;
        const auto scale = unitOf(good->span, path, m_part.facts);
        return scale ? goodValue(good->span.lo, good->span.hi, *scale) : Value{0, 0, 0, true};
    }

    Value faulty(const Path &path, const Span &span) const
    {
        const auto scale = unitOf(span, path, m_part.facts);
        if (!scale)
            return {0, 0, 0, true};
        if (m_part.mode != nullptr && variedPath(*m_part.kind, *m_part.mode) == &path)
            return {(m_part.cell.lo + m_part.cell.hi) / 2 * *scale, 0, (m_part.cell.hi - m_part.cell.lo) / 2 * *scale, false};
        const Shown *good = goodOf(path, m_part.facts.volts);
        if (isContactLike(span.lo, span.hi) || (good != nullptr && good->span == span)) // reads good, and that is its fault
            return goodValue(span.lo, span.hi, *scale);
        return {(span.lo + span.hi) / 2 * *scale, 0, (span.hi - span.lo) / 2 * *scale, false};
    }

    std::string node(const std::string &terminal) const { return m_part.component + "." + terminal; }

    void push(std::string from, std::string to, const Path &path, const Value &v, bool jumps = false)
    {
        m_branches.push_back({std::move(from), std::move(to), node(path.id), v.mu, v.sigma, v.h, jumps, v.vague});
    }

    void add(const Path &path)
    {
        const Shown *fault = becomes(path);
        const bool hides = m_part.cell.state == Cell::State::Hides;
        if (fault == nullptr || (fault->what == Shown::What::Jumps && hides)) {
            if (const auto value = healthy(path))
                push(node(path.from), node(path.to), path, *value);
        } else if (fault->what == Shown::What::Value) {
            if (isOhms(fault->span))
                push(node(path.from), node(path.to), path, faulty(path, fault->span));
        } else if (fault->what == Shown::What::Jumps && m_part.cell.state == Cell::State::Jumps) {
            if (const auto value = healthy(path))
                push(node(path.from), node(path.to), path, *value, true);
        }
    }

    // from - x R - touch - (1-x) R - to, and the contact from there to the metal; broken: the end that hangs on it alone
    void split()
    {
        const Path &ground = *touching();
        const Path &conductor = *m_part.kind->path(ground.along);
        const Value whole = healthy(conductor).value_or(Value{});
        const std::string touch = node(ground.id) + "'";
        const double x = (m_part.cell.xLo + m_part.cell.xHi) / 2, spread = (m_part.cell.xHi - m_part.cell.xLo) / 2 * whole.mu;
        const bool flipped = ground.from == conductor.to;
        const std::string &first = flipped ? conductor.to : conductor.from, &second = flipped ? conductor.from : conductor.to;
        if (m_part.cell.side != 2)
            push(node(first), touch, conductor, {x * whole.mu, x * whole.sigma, spread, whole.vague});
        if (m_part.cell.side != 1)
            push(touch, node(second), conductor, {(1 - x) * whole.mu, (1 - x) * whole.sigma, spread, whole.vague});
        const double lo = m_part.cell.lo, hi = m_part.cell.hi;
        push(touch, node(ground.to), ground, {(lo + hi) / 2, 0, (hi - lo) / 2, false});
    }

    const PartState &m_part;
    std::vector<Branch> m_branches;
};

} // namespace

std::vector<Branch> branchesOf(const PartState &part) { return Branches(part).take(); }

} // namespace core
