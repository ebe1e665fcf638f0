#pragma once
// From a step to its picture: which drawing, where the probes go, which wires are off, what the meter shows.
#include "app/draw/test_picture.h"
#include "core/reading/machine.h"
#include "core/session/view.h"

namespace app {

// The name of the drawing in :/drawings for a component of this machine; it may have none of that name.
QString drawingFor(const core::Machine &machine, const core::Picture &picture, const std::string &test);
QString drawingOfPart(const core::Machine &machine, const std::string &component);

// Before a reading: the display shows what a good part reads, and beside it what a broken one does.
TestPictureState pictureOf(const core::StepView &step, const core::Machine &machine);
// After it: the display shows what was read; `broken` breaks the drawn current into dashes.
TestPictureState pictureWith(TestPictureState before, const core::Reading &reading, bool broken);

// "10.7" and "Ω": an amount in ohm, V, A, uF or Cel as a display shows it.
struct Displayed
{
    QString digits, unit;
};
Displayed displayed(const core::Reading &reading);
Displayed displayed(core::Amount amount);

} // namespace app
