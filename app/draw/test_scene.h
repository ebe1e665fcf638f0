#pragma once
// The parts of a test picture at their places, before anything is painted.
#include "app/draw/meter_picture.h"
#include "app/draw/part_place.h"
#include "app/draw/probe_picture.h"

#include <optional>

namespace app {

struct SetProbe
{
    Probe probe = Probe::Red;
    QString terminal;
    QPointF tip;
    QPointF direction; // of the handle, away from the tip
    bool upper = true; // its name stands above it, else below
};

struct TestScene
{
    Style style; // colours
    Style text;  // type of the captions: never below 100 %, never above the theme's
    QRectF area;
    double unit = 1;
    bool clamp = false;
    MeterPlace meter;
    std::optional<PartPlace> part;
    std::vector<SetProbe> probes;
    double length = kProbeLength; // of what is set on a terminal: probe or clip
};

TestScene layOutScene(const QRectF &into, const TestPictureState &state, const Style &style);
QPainterPath cablePath(const TestScene &scene, const SetProbe &probe);

} // namespace app
