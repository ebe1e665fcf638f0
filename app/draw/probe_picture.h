#pragma once
// Probes, clips, cables and pulled wires, drawn by the program in one hand. All measures in units of a drawing, times `unit`.
#include "app/shared/style.h"

#include <QPainterPath>
#include <QPointF>

class QPainter;

namespace app {

enum class Probe { Red, Black };

inline constexpr double kProbeLength = 96; // tip to cable
inline constexpr double kClipLength = 74;

// The tip at `tip`, the handle towards `direction` (a unit vector).
void paintProbe(QPainter &painter, Probe probe, QPointF tip, QPointF direction, double unit, const Style &style);
void paintClip(QPainter &painter, Probe probe, QPointF tip, QPointF direction, double unit, const Style &style);
// A mitten fist round the handle, behind the guard; drawn over the probe.
void paintFist(QPainter &painter, QPointF tip, QPointF direction, bool left, double unit, const Style &style);
void paintCable(QPainter &painter, Probe probe, const QPainterPath &path, double unit, const Style &style);
// A push-on connector, its mouth at `mouth`, its wire going away along `direction`.
void paintConnector(QPainter &painter, QPointF mouth, QPointF direction, double wireLength, double unit, const Style &style);
// The appliance's wire as a line with an edge.
void paintWire(QPainter &painter, const QPainterPath &path, double unit, const Style &style);
void paintDots(QPainter &painter, QPointF from, QPointF to, double unit, const Style &style);

} // namespace app
