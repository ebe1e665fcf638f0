#include "app/draw/test_scene.h"

#include "app/draw/outlet_picture.h"
#include "app/shared/text_block.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

using Form = TestPictureState::Form;
constexpr double kWide = 710, kHigh = 290, kMeterScale = 0.9;

enum class Way { Left, Up, Down };

// A terminal that looks to the right is reached from above: nothing crosses what is measured.
Way wayOf(QPointF direction)
{
    if (direction.y() > 0.6)
        return Way::Down;
    return direction.x() < -0.6 ? Way::Left : Way::Up;
}

QPointF turned(double degreesUpFromLeft)
{
    const double a = degreesUpFromLeft * M_PI / 180;
    return {-std::cos(a), -std::sin(a)};
}

// Handles never cross: of two that come the same way, each leans away from the other, and all lean to the meter.
void lean(std::vector<SetProbe> &probes, const PartPlace &part)
{
    for (SetProbe &probe : probes) {
        const Way way = wayOf(part.looks(probe.terminal));
        const auto other = std::find_if(probes.begin(), probes.end(), [&](const SetProbe &each) {
            return each.terminal != probe.terminal && wayOf(part.looks(each.terminal)) == way;
        });
        const bool pair = other != probes.end();
        // the nearer the two stand, the steeper the one behind passes over the one in front
        const double apart = pair ? std::abs(probe.tip.x() - other->tip.x()) / part.unit() : 0;
        const double steep = apart > 60 ? 38 : apart > 36 ? 52 : 64;
        switch (way) {
        case Way::Left:
            probe.upper = pair ? probe.tip.y() <= other->tip.y() : true;
            probe.direction = turned(probe.upper ? 16 : -9);
            probe.nameUp = probe.upper;
            break;
        case Way::Up:
            probe.upper = pair ? probe.tip.x() > other->tip.x() : true;
            probe.direction = turned(!pair ? 38 : probe.upper ? steep : 16);
            break;
        case Way::Down:
            probe.upper = pair ? probe.tip.x() < other->tip.x() : false;
            probe.direction = part.looks(probe.terminal).x() > 0.3
                                  ? part.looks(probe.terminal) // from the right, clear of what is below
                                  : turned(!pair         ? -38
                                           : probe.upper ? -16
                                                         : -steep);
            probe.nameUp = false;
            break;
        }
    }
}

std::vector<SetProbe> setProbes(const TestPictureState &state, const PartPlace &part)
{
    std::vector<SetProbe> probes;
    if (!state.black.isEmpty() && part.has(state.black))
        probes.push_back({Probe::Black, state.black, part.tip(state.black), {}, true, true});
    if (!state.red.isEmpty() && part.has(state.red))
        probes.push_back({Probe::Red, state.red, part.tip(state.red), {}, true, true});
    lean(probes, part);
    return probes;
}

bool isProbed(const TestScene &scene, const QString &terminal)
{
    return std::any_of(scene.probes.begin(), scene.probes.end(),
                       [&](const SetProbe &probe) { return probe.terminal == terminal; });
}

// Whether a terminal that is not pulled stands in the way of wires that hang below `lowest`.
bool blockedBelow(const PartPlace &part, double lowest, double from, double to)
{
    return std::any_of(part.terminals().begin(), part.terminals().end(), [&](const QString &id) {
        const QRectF box = part.bounds(id);
        return box.bottom() > lowest + 1 && box.top() < lowest + 70 * part.unit() && box.right() > from && box.left() < to;
    });
}

// A wire that is off hangs along its terminal; beside a probe it is turned aside: below terminals that look to the left,
// to the right of those that look up or down. Dots only from the nearest terminal: those of the others would cross it.
std::vector<PulledWire> pulledWires(const TestScene &scene, const TestPictureState &state)
{
    const PartPlace &part = *scene.part;
    const double unit = part.unit();
    std::vector<QString> probed;
    std::vector<PulledWire> wires;
    double lowest = 0;
    double rightmost = 0;
    for (const auto &terminal : state.terminals) {
        if (!terminal.pulled || !part.has(terminal.id))
            continue;
        lowest = std::max(lowest, part.bounds(terminal.id).bottom());
        rightmost = std::max(rightmost, part.bounds(terminal.id).right());
        if (isProbed(scene, terminal.id))
            probed.push_back(terminal.id);
        else
            wires.push_back({terminal.id, part.end(terminal.id), part.end(terminal.id) + part.looks(terminal.id) * 26 * unit,
                             part.looks(terminal.id)});
    }
    for (std::size_t i = 0; i < probed.size(); ++i) {
        const QPointF end = part.end(probed[i]);
        const QPointF way = part.looks(probed[i]);
        const double step = static_cast<double>(i);
        if (way.x() < -0.6) {
            const bool blocked = blockedBelow(part, lowest, end.x(), end.x() + 60 * unit);
            const double x = end.x() + (blocked ? -18 - 32 * step : 10 + 32 * step) * unit;
            const QPointF mouth(x, lowest + 32 * unit);
            wires.push_back({probed[i], {x, blocked ? mouth.y() : lowest}, mouth, {0, 1}});
        } else {
            const QPointF mouth(rightmost + (24 + 28 * step) * unit, end.y() + (way.y() < 0 ? -6 : 6) * unit);
            const bool nearest = part.bounds(probed[i]).right() > rightmost - 1;
            wires.push_back({probed[i], nearest ? end : mouth, mouth, {0, way.y() < 0 ? -1.0 : 1.0}});
        }
    }
    return wires;
}

// What the words beside the display take at the top, in px below the area's top.
double notesHeight(const TestScene &scene, const TestPictureState &state)
{
    if (!hasNotes(scene, state))
        return 0;
    const double note = TextBlock({{state.meterNote, Type::Quiet}}, scene.text, notesWidth(scene)).height();
    return 6 * scene.unit + note + (state.otherDisplay.isEmpty() ? 0 : scene.text.px(40));
}

// The part of the area the component gets: smaller where handles would leave the picture or cover the notes.
QRectF partArea(const TestScene &scene, const TestPictureState &state, double left)
{
    const bool captions =
        std::any_of(state.captions.begin(), state.captions.end(), [](const auto &caption) { return caption.element.isEmpty(); });
    QRectF area(left, scene.area.top(), scene.area.right() - left, scene.area.height() - (captions ? scene.text.px(20) : 0));
    if (state.form == Form::Fists) {
        const double unit = area.height() / (260 + kPersonBelow);
        const double right = area.right() - std::max(0.0, scene.text.px(118) - 84 * unit); // the words beside the plate
        return QRectF(right - 400 * unit, area.top(), 400 * unit, 260 * unit);
    }
    const double notes = scene.area.top() + notesHeight(scene, state);
    const double least = area.height() * 0.55;
    for (int tries = 0; tries < 6; ++tries) {
        const PartPlace trial(state, area, scene.style);
        double above = 0;
        double below = 0;
        for (const SetProbe &probe : setProbes(state, trial)) {
            const QPointF end = probe.tip + probe.direction * scene.length * trial.unit();
            const bool leftwards = wayOf(trial.looks(probe.terminal)) == Way::Left;
            const double name = scene.text.px(18);
            above =
                std::max(above, (leftwards && notes > scene.area.top() ? notes + name : scene.area.top() + 10 * trial.unit()) -
                                    end.y() + 9 * trial.unit());
            below = std::max(below, end.y() - scene.area.bottom() + 16 * trial.unit());
        }
        for (const auto &terminal : state.terminals) // a wire turned aside hangs under it, with its word
            if (terminal.pulled && trial.has(terminal.id) && (terminal.id == state.red || terminal.id == state.black) &&
                wayOf(trial.looks(terminal.id)) == Way::Left)
                below = std::max(below, trial.bounds(terminal.id).bottom() + 66 * trial.unit() - scene.area.bottom());
        if ((above < 1 && below < 1) || area.height() - above - below < least)
            break;
        area.adjust(0, std::max(0.0, above), 0, -std::max(0.0, below));
    }
    return area;
}

} // namespace

// Small pictures do without: the words are said elsewhere too.
bool hasNotes(const TestScene &scene, const TestPictureState &state)
{
    return !state.meterNote.isEmpty() && state.meter.shown && state.form != Form::Look && !state.close && scene.unit >= 0.8;
}

double notesWidth(const TestScene &scene)
{
    return std::max(std::min(144 * scene.unit, scene.text.px(144)), scene.text.px(108));
}

TestScene layOutScene(const QRectF &into, const TestPictureState &state, const Style &style)
{
    TestScene scene;
    scene.style = style;
    scene.clamp = state.form == Form::Clamp;
    scene.length = state.form == Form::Clips ? kClipLength : kProbeLength;
    const bool meter = state.meter.shown && state.form != Form::Look;
    const double wide = !meter ? 420 : state.close ? 500 : kWide;
    scene.unit = std::min(into.width() / wide, into.height() / kHigh);
    scene.text = style;
    scene.text.scale = std::clamp(scene.unit * 1.1, 1.0, std::max(1.0, style.scale));
    const double extra = meter ? std::min(into.width() - wide * scene.unit, 110 * scene.unit) : 0;
    const QSizeF size(wide * scene.unit + extra, std::min(into.height(), kHigh * scene.unit * 1.1));
    scene.area = QRectF(into.center() - QPointF(size.width() / 2, size.height() / 2), size);
    double left = scene.area.left();
    if (meter) {
        const double high = 320 * kMeterScale * scene.unit;
        scene.meter =
            placeMeter(QRectF(scene.area.left(), scene.area.center().y() - high / 2, 200 * scene.unit, high), scene.clamp, style);
        left = scene.meter.rect.right() + (!state.close ? 100 : drawingExists(state.drawing) ? -30 : 20) * scene.unit;
    }
    scene.part.emplace(state, partArea(scene, state, left), style);
    if (state.form == Form::Probes || state.form == Form::Clips)
        scene.probes = setProbes(state, *scene.part);
    scene.wires = pulledWires(scene, state);
    return scene;
}

QPainterPath clampedWire(const TestScene &scene, const TestPictureState &state)
{
    const QPointF hole = scene.meter.jawHole;
    const double unit = scene.unit;
    const QString terminal = !state.red.isEmpty() ? state.red : state.terminals.empty() ? QString() : state.terminals.front().id;
    const bool known = scene.part->has(terminal);
    const QPointF end = known ? scene.part->end(terminal) : QPointF(scene.part->rect().left() + 20 * unit, hole.y());
    const QPointF way = known ? scene.part->looks(terminal) : QPointF(-1, 0);
    QPainterPath wire(QPointF(scene.meter.rect.left(), hole.y() + 10 * unit));
    wire.cubicTo(QPointF(hole.x() - 30 * unit, hole.y()), QPointF(hole.x() - 20 * unit, hole.y()), hole);
    wire.cubicTo(hole + QPointF(120 * unit, 0), end + way * 90 * unit, end);
    return wire;
}

// Out of the jack downwards, up to the handle's end from behind it; flatter where it would leave the picture.
QPainterPath cablePath(const TestScene &scene, const SetProbe &probe)
{
    const double unit = scene.unit;
    const QPointF jack = probe.probe == Probe::Red ? scene.meter.volt : scene.meter.com;
    const QPointF end = probe.tip + probe.direction * (scene.length - 1) * scene.part->unit();
    const double far = std::hypot(end.x() - jack.x(), end.y() - jack.y());
    const double reach = std::clamp(far * 0.45, 40 * unit, 150 * unit);
    const QRectF room = scene.area.adjusted(-1, 4 * unit, 1, -4 * unit);
    const double along = wayOf(scene.part->looks(probe.terminal)) == Way::Up ? 0.55 : 0.35; // below the notes
    QPainterPath path;
    for (const double slack : {1.0, 0.8, 0.6, 0.45, 0.3, 0.15}) {
        path = QPainterPath(jack);
        path.cubicTo(jack + QPointF((end.x() - jack.x()) * along, 78 * unit * slack), end + probe.direction * reach * slack, end);
        const QRectF bounds = path.boundingRect();
        if (bounds.top() >= std::min(room.top(), end.y()) && bounds.bottom() <= std::max(room.bottom(), end.y()))
            break;
    }
    return path;
}

} // namespace app
