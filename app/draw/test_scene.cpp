#include "app/draw/test_scene.h"

#include "app/draw/outlet_picture.h"

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
        switch (way) {
        case Way::Left:
            probe.upper = pair ? probe.tip.y() <= other->tip.y() : true;
            probe.direction = turned(probe.upper ? 16 : -9);
            break;
        case Way::Up:
            probe.upper = pair ? probe.tip.x() > other->tip.x() : true;
            probe.direction = turned(!pair ? 42 : probe.upper ? 62 : 20);
            break;
        case Way::Down:
            probe.upper = pair ? probe.tip.x() < other->tip.x() : false;
            probe.direction = turned(!pair ? -42 : probe.upper ? -20 : -62);
            break;
        }
    }
}

std::vector<SetProbe> setProbes(const TestPictureState &state, const PartPlace &part)
{
    std::vector<SetProbe> probes;
    if (!state.black.isEmpty() && part.has(state.black))
        probes.push_back({Probe::Black, state.black, part.tip(state.black), {}, true});
    if (!state.red.isEmpty() && part.has(state.red))
        probes.push_back({Probe::Red, state.red, part.tip(state.red), {}, true});
    lean(probes, part);
    return probes;
}

// The part of the area the component gets: handles that come from above or below need room there.
QRectF partArea(const TestScene &scene, const TestPictureState &state, double left)
{
    const bool fists = state.form == Form::Fists;
    const bool captions = std::any_of(state.captions.begin(), state.captions.end(), [](const auto &caption) { return caption.element.isEmpty(); });
    QRectF area(left, scene.area.top(), scene.area.right() - left, scene.area.height() - (captions ? scene.text.px(20) : 0));
    if (fists) {
        const double unit = area.height() / (260 + kPersonBelow);
        return QRectF(area.right() - 400 * unit, area.top(), 400 * unit, 260 * unit);
    }
    const PartPlace trial(state, area, scene.style);
    for (const QString &id : {state.red, state.black}) {
        if (!trial.has(id))
            continue;
        const Way way = wayOf(trial.looks(id));
        if (way == Way::Up)
            area.setTop(std::max(area.top(), scene.area.top() + scene.area.height() * 0.16));
        else if (way == Way::Down)
            area.setBottom(std::min(area.bottom(), scene.area.bottom() - scene.area.height() * 0.16));
    }
    return area;
}

} // namespace

TestScene layOutScene(const QRectF &into, const TestPictureState &state, const Style &style)
{
    TestScene scene;
    scene.style = style;
    scene.clamp = state.form == Form::Clamp;
    scene.length = state.form == Form::Clips ? kClipLength : kProbeLength;
    const bool meter = state.meter.shown && state.form != Form::Look;
    const double wide = meter ? kWide : 420;
    scene.unit = std::min(into.width() / wide, into.height() / kHigh);
    scene.text = style;
    scene.text.scale = std::clamp(scene.unit * 1.1, 1.0, std::max(1.0, style.scale));
    const double extra = meter ? std::min(into.width() - wide * scene.unit, 110 * scene.unit) : 0;
    const QSizeF size(wide * scene.unit + extra, std::min(into.height(), kHigh * scene.unit * 1.1));
    scene.area = QRectF(into.center() - QPointF(size.width() / 2, size.height() / 2), size);
    double left = scene.area.left();
    if (meter) {
        const double high = 320 * kMeterScale * scene.unit;
        scene.meter = placeMeter(QRectF(scene.area.left(), scene.area.center().y() - high / 2, 200 * scene.unit, high), scene.clamp, style);
        left = scene.meter.rect.right() + 100 * scene.unit;
    }
    scene.part.emplace(state, partArea(scene, state, left), style);
    if (state.form == Form::Probes || state.form == Form::Clips)
        scene.probes = setProbes(state, *scene.part);
    return scene;
}

// Out of the jack downwards, up to the handle's end from behind it.
QPainterPath cablePath(const TestScene &scene, const SetProbe &probe)
{
    const double unit = scene.unit;
    const QPointF jack = probe.probe == Probe::Red ? scene.meter.volt : scene.meter.com;
    const QPointF end = probe.tip + probe.direction * (scene.length - 1) * scene.part->unit();
    const double far = std::hypot(end.x() - jack.x(), end.y() - jack.y());
    const double reach = std::clamp(far * 0.45, 40 * unit, 150 * unit);
    QPainterPath path(jack);
    path.cubicTo(jack + QPointF((end.x() - jack.x()) * 0.35, 78 * unit), end + probe.direction * reach, end);
    return path;
}

} // namespace app
