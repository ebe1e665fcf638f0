#pragma once
// The gate's state as the rail shows it, and as one line of words.
#include "app/draw/power_rail.h"
#include "core/session/session.h"
#include "core/session/view.h"

#include <QCoreApplication>

namespace app {

RailState railOf(const core::StateView &view, const core::GateState &gate);

struct PowerWords
{
    Q_DECLARE_TR_FUNCTIONS(app::PowerWords)
public:
    static QString state(const core::StateView &view);  // "Power: isolated, plug out, in sight."
    // "Open: rear panel, wires pulled: 3."
    static QString inside(const core::StateView &view, const core::GateState &gate, const core::Machine &machine);
};

} // namespace app
