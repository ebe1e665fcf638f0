#include "core/verdict/verdict.h"

#include <algorithm>
#include <array>

namespace core {
namespace {

constexpr std::array<std::string_view, 7> kCures{"replace", "reset", "clean", "free", "reconnect", "adjust", "call"};

} // namespace

bool fails(const Finding &finding)
{
    return finding.out >= 1 && (finding.jumps || finding.out >= finding.good);
}

bool shows(const Finding &finding, std::string_view mode)
{
    return finding.modes.empty() || std::ranges::find(finding.modes, mode) != finding.modes.end();
}

double Chances::of(std::string_view id) const
{
    if (const auto at = suspect.find(id); at != suspect.end())
        return at->second;
    const auto at = component.find(id);
    return at == component.end() ? 0 : at->second;
}

std::optional<Cure> cureNamed(std::string_view name)
{
    const auto at = std::ranges::find(kCures, name);
    return at == kCures.end() ? std::nullopt : std::optional(static_cast<Cure>(at - kCures.begin()));
}

std::string_view word(Cure cure) { return kCures[static_cast<std::size_t>(cure)]; }
bool buysNothing(Cure cure) { return cure != Cure::Replace && cure != Cure::Call; }

std::string_view word(ProvenBy proof)
{
    static constexpr std::array<std::string_view, 3> kWords{"reading", "look", "elimination"};
    return kWords[static_cast<std::size_t>(proof)];
}

std::string_view word(Verdict::Kind kind)
{
    static constexpr std::array<std::string_view, 4> kWords{"replace", "fix", "call", "not_proven"};
    return kWords[static_cast<std::size_t>(kind)];
}

Verdict verdictOf(const Ruling &ruling)
{
    Verdict verdict;
    verdict.items = ruling.proven;
    std::ranges::stable_sort(verdict.items, [](const Proven &a, const Proven &b) {
        return std::pair(!a.listed, a.cure != Cure::Replace) < std::pair(!b.listed, b.cure != Cure::Replace);
    });
    const bool anyListed = std::ranges::any_of(verdict.items, &Proven::listed);
    if (!anyListed)
        return verdict;
    const auto has = [&](auto wanted) { return std::ranges::any_of(verdict.items, [&](const Proven &p) { return p.listed && wanted(p); }); };
    for (const Proven &p : verdict.items)
        if (p.listed && !p.trade.empty() && verdict.trade.empty())
            verdict.trade = p.trade;
    if (has([](const Proven &p) { return p.cure == Cure::Replace && p.trade.empty(); }))
        verdict.kind = Verdict::Kind::Replace;
    else if (has([](const Proven &p) { return p.cure == Cure::Call || !p.trade.empty(); }))
        verdict.kind = Verdict::Kind::Call;
    else
        verdict.kind = Verdict::Kind::Fix;
    return verdict;
}

} // namespace core
