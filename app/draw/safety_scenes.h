#pragma once
// The scenes of safety screens that are more than a row of acts.
#include "app/draw/safety_picture.h"
#include "app/draw/test_picture.h"

namespace app {

void paintUnplug(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);
void paintAtTheOutlet(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);
void paintPutBack(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);
void paintProvingDead(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);

// One of the three stations of proving dead: 1 and 3 the known outlet, 2 the machine.
TestPictureState stationPicture(const SafetyPictureState &state, int station);

} // namespace app
