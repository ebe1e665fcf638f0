#pragma once
// Symbols of a ladder diagram turned upright: the wire runs from the upper end to the lower one.
#include "app/draw/chain.h"

#include <QPointF>

class QPainter;

namespace app {

struct SymbolLook
{
    bool open = false;   // contacts
    bool broken = false; // failed its test: the symbol itself is broken or crossed out
    bool lit = false;    // on the zone of the path under test
};

// Between `top` and a point `length` below it.
void paintSymbol(QPainter &painter, LadderSymbol symbol, QPointF top, double length, SymbolLook look, const Style &style);
double symbolLength(LadderSymbol symbol); // px at 100 %
double symbolReach(LadderSymbol symbol);  // to the right of the wire, px at 100 %

} // namespace app
