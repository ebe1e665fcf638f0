#include "core/verdict/hazard.h"

#include <algorithm>

namespace core {

Verdict withHazards(Verdict verdict, std::vector<Hazard> hazards, bool searchOpen)
{
    std::erase_if(hazards, [&](const Hazard &d) {
        return std::ranges::any_of(verdict.items, [&](const Proven &p) {
            return p.component == d.component && (p.cure == Cure::Replace || p.cure == Cure::Call);
        });
    });
    for (const Hazard &d : hazards)
        verdict.hazards.push_back(d.id);
    const auto calls = std::ranges::find_if(hazards, [&](const Hazard &h) { return !h.isSearched || !searchOpen; });
    if (calls != hazards.end() && (verdict.kind == Verdict::Kind::NotProven || verdict.kind == Verdict::Kind::Fix)) {
        verdict.kind = Verdict::Kind::Call;
        verdict.trade = calls->trade;
    }
    return verdict;
}

} // namespace core
