#pragma once
// The one table of colours, by role, for light and dark. Nothing outside this table and draw/safety_colours.h names a colour.
#include <QColor>

#include <span>

namespace app {

enum class Role {
    Desk, Sheet, Well, // surfaces: window, sheet, inset
    Rule,              // hairlines without meaning
    Edge,              // edges that matter, unlit wiring
    Ink, Ink2,         // text and marks; quiet text and wires
    Petrol, PetrolDown, OnPetrol, // what can be pressed; pressed or hovered; text on it
    Tint,              // chosen row, always with a petrol edge
    Zone,              // good band, path under test
    Hatch,             // no conclusion, bad
    Line, Detail,      // drawings: outlines, inner lines
    SheetMetal, Terminal, DarkPlastic, Ceramic, Slot, // drawings: fills
    Copper,            // where current runs inside a part
    Display, Digits,   // the meter's display
    RedProbe, RedCore, BlackProbe, BlackEdge,
};
inline constexpr int kRoles = static_cast<int>(Role::BlackEdge) + 1;

enum class Shade { Light, Dark };

QColor colourOf(Role role, Shade shade);

// Two colours that meet on the screen and the least contrast they need: WCAG 2.2 asks 4.5 of text (1.4.3)
// and 3.0 of parts that carry a meaning (1.4.11).
struct ColourPair
{
    Role part;
    Role on;
    double least;
};
std::span<const ColourPair> pairsInUse();

// The ten hex texts a drawing may use, as roles: a drawing is written in the light ones.
std::span<const Role> drawingRoles();

} // namespace app
