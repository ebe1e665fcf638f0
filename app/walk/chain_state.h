#pragma once
// From the state of a job to the chain: the rung of the complaint with every standing on its symbol.
#include "app/draw/chain.h"
#include "core/session/session.h"
#include "core/session/view.h"

namespace app {

ChainState chainOf(const core::StateView &view, const core::Session &session);
// Every rung that this machine has, each as a chain of its own.
std::vector<ChainState> ladderOf(const core::StateView &view, const core::Session &session);

struct ChainTexts
{
    Q_DECLARE_TR_FUNCTIONS(app::ChainTexts)
public:
    static QString subtitle(const ChainState &state); // "heat, from L1 to L2 · wiring as assumed"
    struct Foot
    {
        QString head, text;
    };
    static Foot foot(const core::StateView &view, const core::Session &session); // the price of guessing, or what is missing
};

} // namespace app
