#pragma once
// A person at an outlet, seen from behind: both hands on the probes, fingers behind the guards.
#include "app/draw/part_place.h"
#include "app/draw/probe_picture.h"

namespace app {

struct HeldProbe
{
    Probe probe = Probe::Black;
    QPointF cable;     // where its cable begins
    QPointF direction; // and which way it leaves the hand
};

// The person below the outlet, then the probes in the contacts and the fists. Returns the left one first.
std::vector<HeldProbe> paintPersonAtOutlet(QPainter &painter, const PartPlace &outlet, const QString &red, const QString &black, const Style &style);
// How far below the outlet's drawing the person reaches, in units of it.
inline constexpr double kPersonBelow = 165;
// A contact's letter on an ink ground beside its slot.
void paintContactLetter(QPainter &painter, const PartPlace &outlet, const QString &terminal, const QString &letter, const Style &textStyle, const Style &style);

} // namespace app
