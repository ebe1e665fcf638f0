// How a test picture is painted: wires and drawings first, cables above them, probes last, then the words.
#include "app/draw/outlet_picture.h"
#include "app/draw/test_scene.h"
#include "app/shared/text_block.h"

#include <QPainter>

namespace app {
namespace {

using Form = TestPictureState::Form;

void paintProbes(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    if (!scene.meter.rect.isEmpty())
        for (const SetProbe &probe : scene.probes) // black first: red runs above it
            paintCable(painter, probe.probe, cablePath(scene, probe), scene.unit, scene.style);
    for (const SetProbe &probe : scene.probes) {
        if (state.form == Form::Clips)
            paintClip(painter, probe.probe, probe.tip, probe.direction, scene.part->unit(), scene.style);
        else
            paintProbe(painter, probe.probe, probe.tip, probe.direction, scene.part->unit(), scene.style);
    }
}

void paintPulled(QPainter &painter, const TestScene &scene)
{
    const double unit = scene.part->unit();
    for (const PulledWire &wire : scene.wires) {
        paintDots(painter, wire.end, wire.mouth, unit, scene.style);
        paintConnector(painter, wire.mouth, wire.direction, 26, unit, scene.style);
    }
}

// The left hand's cable goes straight to its jack; the right one's runs round the person, low.
QPainterPath heldCable(const TestScene &scene, const HeldProbe &held, bool left)
{
    const double unit = scene.unit;
    const QPointF jack = held.probe == Probe::Red ? scene.meter.volt : scene.meter.com;
    QPainterPath path(held.cable);
    if (left) {
        path.cubicTo(held.cable + held.direction * 90 * unit, jack + QPointF(110, 74) * unit, jack);
        return path;
    }
    const double low = scene.area.bottom() - 6 * unit;
    const QPointF below((jack.x() + held.cable.x()) / 2, low);
    path.cubicTo(held.cable + QPointF(70, 70) * unit, QPointF(held.cable.x() + 130 * unit, low), below);
    path.cubicTo(QPointF(below.x() - 120 * unit, low), jack + QPointF(10, 60) * unit, jack);
    return path;
}

void paintFists(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    const auto held = paintPersonAtOutlet(painter, *scene.part, state.red, state.black, scene.style);
    const double unit = scene.part->unit();
    for (const Probe probe : {Probe::Black, Probe::Red})
        for (std::size_t i = 0; i < held.size(); ++i)
            if (held[i].probe == probe && !scene.meter.rect.isEmpty())
                paintCable(painter, probe, heldCable(scene, held[i], i == 0), scene.unit, scene.style);
    for (std::size_t i = 0; i < held.size(); ++i)
        paintFist(painter, held[i].cable - held[i].direction * (kProbeLength - 4) * unit, held[i].direction, i == 0, unit,
                  scene.style);
    for (const auto &terminal : state.terminals)
        paintContactLetter(painter, *scene.part, terminal.id, terminal.number.isEmpty() ? terminal.name : terminal.number,
                           scene.text, scene.style);
    const QRectF plate = scene.part->rect();
    for (std::size_t i = 0; i < held.size(); ++i) {
        const QString note = held[i].probe == Probe::Red ? state.redNote : state.blackNote;
        const TextBlock text({{note, Type::QuietStrong}}, scene.text, scene.text.px(96));
        const double x = i == 0 ? plate.left() + 66 * unit - text.width() : plate.right() - 66 * unit;
        text.paint(painter, {x, plate.top() + 40 * unit});
    }
}

} // namespace

bool paintTestPicture(QPainter &painter, const QRectF &into, const TestPictureState &state, const Style &style)
{
    if (into.width() < 40 || into.height() < 40)
        return false;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (state.form == Form::Meter) {
        const double wide = std::min(into.width(), into.height() * 200 / 320);
        paintMeter(painter, placeMeter(QRectF(into.center().x() - wide / 2, into.top(), wide, into.height()), false, style),
                   state.meter, false, true, style);
        painter.restore();
        return true;
    }
    const TestScene scene = layOutScene(into, state, style);
    if (scene.clamp)
        paintWire(painter, clampedWire(scene, state), scene.unit * 1.3, style); // behind the jaw, seen in its hole
    if (!scene.meter.rect.isEmpty())
        paintMeter(painter, scene.meter, state.meter, scene.clamp, !state.red.isEmpty() || !state.black.isEmpty(), style);
    scene.part->paint(painter);
    if (state.form == Form::Fists && scene.part->has(state.red) && scene.part->has(state.black)) {
        paintFists(painter, scene, state);
    } else {
        paintPulled(painter, scene);
        paintProbes(painter, scene, state);
        if (state.fault)
            scene.part->paintFault(painter, *state.fault, scene.text);
    }
    paintTestWords(painter, scene, state);
    painter.restore();
    return true;
}

} // namespace app
