#pragma once
// Small pictures of one act each, for the drawings of safety screens.
#include "app/shared/style.h"

#include <QRectF>

class QPainter;

namespace app {

enum class Act { OffAtControl, PlugOut, BreakerOff, TapeOn, ClipsOff, ClipsOn, ProbeRedOut, ProbeBlackOut, HandsAway, PowerOn, JawAlone, Closed,
                 FlapLifts, StayBeside, Wait, BackOfHand };

void paintAct(QPainter &painter, Act act, const QRectF &into, const Style &style);

} // namespace app
