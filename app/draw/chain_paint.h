#pragma once
// How the laid-out chain is painted. The rails are painted apart: they stay in sight while the rest scrolls.
#include "app/draw/chain_layout.h"

#include <QStringList>

class QPainter;

namespace app {

// What is scrolled out above and below, in words, the longer form first: the first that fits is painted. Empty: all is in sight.
struct ChainSight
{
    QStringList above;
    QStringList below;
};

// `current`: index into layout.items with the keyboard, or -1.
void paintChainBody(QPainter &painter, const ChainLayout &layout, const ChainState &state, int current, const Style &style);
// The rails at the given heights (one pair for all rungs); no word goes beyond `right`.
void paintRails(QPainter &painter, const ChainLayout &layout, double topY, double bottomY, double right, const ChainSight &sight, const Style &style);
void paintChainFoot(QPainter &painter, const ChainLayout &layout, const ChainState &state, QPointF topLeft, const Style &style);
// All marks in order, with a frame round the part that is in sight (0 to 1 of the height).
void paintStrip(QPainter &painter, const QRectF &into, const ChainState &state, double from, double to, const Style &style);

} // namespace app
