#pragma once
// How the power rail is painted, standing and lying.
#include "app/draw/power_rail.h"

class QPainter;

namespace app {

void paintStandingRail(QPainter &painter, const QRectF &into, const RailState &state, const Style &style);
void paintLyingRail(QPainter &painter, const QRectF &into, const RailState &state, const Style &style);
double standingRailHeight(const RailState &state, const Style &style); // least
double lyingRailWidth(const RailState &state, const Style &style, bool withSince);

} // namespace app
