#pragma once
// The scenes of safety screens that are more than a row of acts.
#include "app/draw/safety_picture.h"

namespace app {

void paintUnplug(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);
void paintAtTheOutlet(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);
void paintPutBack(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);
void paintProvingDead(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);

} // namespace app
