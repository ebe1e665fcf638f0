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
    QPointF direction;  // of the handle, away from the tip
    bool upper = true;  // of two that come the same way
    bool nameUp = true; // its name stands above it, else below
};

struct PulledWire
{
    QString terminal;
    QPointF end;       // of the terminal, or the edge below which it hangs
    QPointF mouth;     // of the connector
    QPointF direction; // of its wire
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
    std::vector<PulledWire> wires;
    double length = kProbeLength; // of what is set on a terminal: probe or clip
};

bool hasNotes(const TestScene &scene, const TestPictureState &state);
double notesWidth(const TestScene &scene); // of the words beside the display
TestScene layOutScene(const QRectF &into, const TestPictureState &state, const Style &style);
QPainterPath clampedWire(const TestScene &scene, const TestPictureState &state); // through the jaw to the component
QPainterPath cablePath(const TestScene &scene, const SetProbe &probe);
// The words of the picture: each looks for a place where it covers no other word, probe or wire.
void paintTestWords(QPainter &painter, const TestScene &scene, const TestPictureState &state);

} // namespace app
