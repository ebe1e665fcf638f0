#pragma once
// Sentences of the verdict page that are put together from the state.
#include "core/session/session.h"
#include "core/session/view.h"

#include <QCoreApplication>
#include <QString>

namespace app {

struct VerdictWords
{
    Q_DECLARE_TR_FUNCTIONS(app::VerdictWords)
public:
    static QString caption(const core::StateView &view, std::int64_t wallMs);
    static QString basis(const core::VerdictView &verdict);
    static QString readings(const core::ProofLine &proof);   // "OL, OL"
    static QString judged(const core::ProofLine &proof);     // "failed, twice", "good"
    static QString phone(const core::StateView &view);       // what to say to the trade; empty: nothing
    static QString guessed(const core::StateView &view, const core::Session &session); // the price of guessing
};

} // namespace app
