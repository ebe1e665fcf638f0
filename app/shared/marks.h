#pragma once
// Where a component or condition stands, as a mark and a word. Never by colour.
#include "app/shared/style.h"

#include <QCoreApplication>
#include <QRectF>

class QPainter;

namespace app {

enum class Standing { Untested, Suspected, Cleared, Failed, Proven, NoConclusion, Noted };

struct StandingWords
{
    Q_DECLARE_TR_FUNCTIONS(app::StandingWords)
public:
    static QString word(Standing standing); // "untested", "suspected", "cleared", "failed its test", …
};

// The mark in a square of side px(14) whose middle is `middle`. Drawn in `ink`; the cross in a filled square and the
// like are left open in `ground`.
void paintMark(QPainter &painter, Standing standing, QPointF middle, const Style &style, QColor ink, QColor ground);
void paintMark(QPainter &painter, Standing standing, QPointF middle, const Style &style); // ink on the sheet
inline constexpr double kMarkSide = 14; // px at 100 %

} // namespace app
