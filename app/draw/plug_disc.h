#pragma once
// The plug in an ink disc: the appliance is isolated. On the rail and on the tape.
#include "app/shared/style.h"

#include <QPointF>

class QPainter;

namespace app {

inline constexpr double kDiscReach = 14; // px at 100 %
void paintPlugDisc(QPainter &painter, QPointF middle, const Style &style);

} // namespace app
