#pragma once
// What a safety screen says besides its text, and which command each of its ways is.
#include "core/session/command.h"
#include "core/session/session.h"
#include "core/session/view.h"

#include <QCoreApplication>
#include <QString>

namespace app {

struct SafetyWords
{
    Q_DECLARE_TR_FUNCTIONS(app::SafetyWords)
public:
    static QString why(const core::StateView &view, const core::Session &session); // why this screen comes now
    static QString without(const core::StepView &step); // what declining leaves
    static bool isOn(const std::string &way);           // needs every box ticked
    static core::Command commandOf(const core::StepView &step, const std::string &way);
};

} // namespace app
