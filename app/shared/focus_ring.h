#pragma once
// The mark of what has the keyboard: a petrol line of 3 px, 2 px outside, round anything that takes focus, panels too.
class QPainter;
class QRectF;

namespace app {

struct Style;

inline constexpr int kFocusRoom = 5; // what a layout leaves free round a widget that takes focus, in px

void paintFocusRing(QPainter &painter, const QRectF &around, const Style &style);
// The ring follows QApplication::focusWidget() from now on. Once, by Theme::install().
void installFocusRing();

} // namespace app
