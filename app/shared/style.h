#pragma once
// What everything is drawn with: colours, type and measures of one shade at one text size. A value, so that the same
// paint function serves the window and paper.
#include "app/shared/palette.h"

#include <QFont>
#include <QPen>

namespace app {

// Type by role, with its pixels at 96 dpi and 100 %.
enum class Type {
    Verdict,      // 34 bold
    Say,          // 25 bold: what to do
    Reading,      // 30 bold
    SafetyHead,   // 22 bold: hazard and consequence
    Safety,       // 17
    SafetyStrong, // 17 bold
    Heading,      // 19 bold: an appliance, a reading on the tape
    Title,        // 16 bold
    Text,         // 15
    Strong,       // 15 bold
    Quiet,        // 13
    QuietStrong,  // 13 bold
    Key,          // 12 mono bold
    Mono,         // 13 mono
    Stop,         // 27: the stop page
    StopStrong,   // 27 bold
    StopHead,     // 44 bold
};

struct Style
{
    Shade shade = Shade::Light;
    double scale = 1; // text size, 1.0 to 2.5

    QColor operator[](Role role) const { return colourOf(role, shade); }
    // A measure that goes with the text: spacing, marks, line weights of what holds text.
    double px(double at100) const { return at100 * scale; }
    QFont font(Type type) const;
    // A solid pen with round joins and caps, `width` already scaled.
    QPen pen(Role role, double width) const;
    bool dark() const { return shade == Shade::Dark; }
    friend bool operator==(const Style &, const Style &) = default;
};

// For printing: light, 100 %.
Style paperStyle();

// "Meter First Sans" from the program's own resources; the system's sans-serif where it cannot be loaded. Needs a
// QGuiApplication. The packaged B612 is not asked for by that name: its mono faces claim the family too.
QString sansFamily();
QString monoFamily();

} // namespace app
