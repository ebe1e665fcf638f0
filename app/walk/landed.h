#pragma once
// A reading just taken, still on the screen until the person goes on: what it means, in words.
#include "core/reading/conformity.h"
#include "core/session/session.h"
#include "core/session/view.h"

#include <QCoreApplication>
#include <QString>

namespace app {

struct Landed
{
    core::StepView step; // as it was asked
    core::Reading reading;
    QString typed;
};

// Whether the session asks for the same once more: lifted and set back, or closer to the limit.
bool isAskedAgain(const Landed &landed, const core::StateView &after);

struct LandedWords
{
    Q_DECLARE_TR_FUNCTIONS(app::LandedWords)
public:
    QString sentence, second;
    static LandedWords of(const Landed &landed, const core::StateView &after, const core::Session &session);
    // The same test, asked once more, before anything is typed.
    static QString again(const core::StepView &step);
};

core::Judgement judgedOf(const Landed &landed, const core::Meter &meter);

} // namespace app
