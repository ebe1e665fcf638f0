#pragma once
// The bar of a hold point: slanted lines in ink; orange while a hold point is on the screen.
#include "app/shared/style.h"

#include <QRectF>

class QPainter;

namespace app {

void paintHoldMark(QPainter &painter, const QRectF &bar, bool closed, const Style &style);

} // namespace app
