// How a test picture is painted: wires and drawings first, cables above them, probes last, then the words.
#include "app/draw/outlet_picture.h"
#include "app/draw/test_scene.h"
#include "app/shared/text_block.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

using Form = TestPictureState::Form;

TextBlock words(const QString &text, const TestScene &scene, double width = TextBlock::kNoLimit, Type type = Type::Quiet, Role role = Role::Ink2)
{
    return TextBlock({{text, type, role}}, scene.text, width);
}

void paintDot(QPainter &painter, QPointF at, const Style &style)
{
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Detail]);
    painter.drawEllipse(at, 2.4, 2.4);
}

// The words beside the display, and the small second display for what a broken one shows.
void paintNotes(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    if (state.meterNote.isEmpty() || scene.meter.rect.isEmpty())
        return;
    const double left = scene.meter.rect.right() + 22 * scene.unit;
    const double room = scene.part->rect().left() + 40 * scene.unit - left;
    const TextBlock note = words(state.meterNote, scene, room);
    const QPointF at(left, scene.meter.rect.top() + 8 * scene.unit);
    note.paint(painter, at);
    const QPointF from(left - 4 * scene.unit, at.y() + note.height() / 2);
    painter.setPen(QPen(scene.style[Role::Detail], 1));
    painter.drawLine(from, {scene.meter.displayEdge.x(), from.y()});
    paintDot(painter, {scene.meter.displayEdge.x(), from.y()}, scene.style);
    if (state.otherDisplay.isEmpty())
        return;
    const QRectF display(left, at.y() + note.height() + scene.text.px(8), scene.text.px(60), scene.text.px(34));
    paintDisplay(painter, display, state.otherDisplay, state.otherUnit, scene.style);
    const double rest = room - display.width() - scene.text.px(8);
    const TextBlock other = words(state.otherNote, scene, std::max(rest, scene.text.px(56)));
    other.paint(painter, {display.right() + scene.text.px(8), display.center().y() - other.height() / 2});
}

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
    for (const SetProbe &probe : scene.probes) {
        const bool red = probe.probe == Probe::Red;
        const QString note = red ? state.redNote : state.blackNote;
        const TextBlock name = words(!note.isEmpty() ? note : red ? TestPicture::tr("red") : TestPicture::tr("black"), scene, scene.text.px(110), Type::QuietStrong, Role::Ink);
        QPointF across(-probe.direction.y(), probe.direction.x());
        if ((across.y() < 0) != probe.upper)
            across = -across;
        const QPointF middle = probe.tip + probe.direction * (scene.length * 0.72) * scene.part->unit();
        const double off = 12 * scene.unit + name.height() / 2 + std::abs(across.x()) * name.width() / 2;
        name.paint(painter, middle + across * off - QPointF(name.width() / 2, name.height() / 2));
    }
}

bool isProbed(const TestScene &scene, const QString &terminal)
{
    return std::any_of(scene.probes.begin(), scene.probes.end(), [&](const SetProbe &probe) { return probe.terminal == terminal; });
}

struct PulledWire
{
    QString terminal;
    QPointF end;       // of the terminal
    QPointF mouth;     // of the connector
    QPointF direction; // of its wire
};

// A wire that is off hangs along its terminal; beside a probe it is turned aside: below terminals that look to the left,
// to the right of those that look up or down.
std::vector<PulledWire> pulledWires(const TestScene &scene, const TestPictureState &state)
{
    const PartPlace &part = *scene.part;
    const double unit = part.unit();
    std::vector<PulledWire> wires;
    double lowest = 0;
    double rightmost = 0;
    for (const auto &terminal : state.terminals) {
        if (terminal.pulled && part.has(terminal.id)) {
            lowest = std::max(lowest, part.bounds(terminal.id).bottom());
            rightmost = std::max(rightmost, part.bounds(terminal.id).right());
        }
    }
    int aside = 0;
    for (const auto &terminal : state.terminals) {
        if (!terminal.pulled || !part.has(terminal.id))
            continue;
        const QPointF end = part.end(terminal.id);
        const QPointF way = part.looks(terminal.id);
        if (!isProbed(scene, terminal.id)) {
            wires.push_back({terminal.id, end, end + way * 26 * unit, way});
        } else if (way.x() < -0.6) {
            const double x = end.x() + (10 + 32 * aside++) * unit;
            wires.push_back({terminal.id, {x, lowest}, {x, lowest + 32 * unit}, {0, 1}});
        } else {
            const double x = rightmost + (24 + 28 * aside++) * unit;
            const double y = end.y() + (way.y() < 0 ? 10 : -10) * unit;
            wires.push_back({terminal.id, end, {x, y}, {0, way.y() < 0 ? -1.0 : 1.0}});
        }
    }
    return wires;
}

void paintPulled(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    const double unit = scene.part->unit();
    const auto wires = pulledWires(scene, state);
    for (const PulledWire &wire : wires) {
        paintDots(painter, wire.end, wire.mouth, unit, scene.style);
        paintConnector(painter, wire.mouth, wire.direction, 26, unit, scene.style);
    }
    if (wires.empty())
        return;
    const PulledWire &first = wires.front();
    const QPointF body = first.mouth + first.direction * 12 * unit;
    const TextBlock note = words(state.pulledNote.isEmpty() ? TestPicture::tr("pulled") : state.pulledNote, scene, scene.text.px(84), Type::QuietStrong, Role::Ink);
    QPointF at(body.x() - 30 * unit - note.width(), body.y() - note.height() / 2 + 10 * unit);
    if (std::abs(first.direction.x()) > 0.6)
        at = {body.x() - note.width() / 2, body.y() + 14 * unit};
    else if (first.direction.y() < 0)
        at = {wires.back().mouth.x() + 16 * unit, wires.back().mouth.y() - 30 * unit};
    note.paint(painter, at);
    if (first.direction.y() > 0) {
        const QPointF dot(body.x() - 14 * unit, body.y() + 6 * unit);
        painter.setPen(QPen(scene.style[Role::Detail], 1));
        painter.drawLine(QPointF(at.x() + note.width() + 4, at.y() + note.height() / 2), dot);
        paintDot(painter, dot, scene.style);
    }
}

void paintNumbers(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    const double unit = scene.part->unit();
    for (const auto &terminal : state.terminals) {
        const QRectF box = scene.part->bounds(terminal.id);
        if (terminal.number.isEmpty() || box.isNull())
            continue;
        const QPointF way = scene.part->looks(terminal.id);
        const double reach = std::max(9.5 * unit, scene.text.px(9.5));
        QPointF at(box.right() + 4 * unit, box.top() - reach - 2 * unit);
        if (std::abs(way.y()) > 0.6)
            at = {box.right() + reach + 2 * unit, box.center().y() - way.y() * box.height() * 0.2};
        painter.setPen(scene.style.pen(Role::Line, 1.75 * unit));
        painter.setBrush(scene.style[Role::Sheet]);
        painter.drawEllipse(at, reach, reach);
        const TextBlock number = words(terminal.number, scene, TextBlock::kNoLimit, Type::QuietStrong, Role::Ink);
        number.paint(painter, at - QPointF(number.width() / 2, number.height() / 2));
    }
}

void paintCaptions(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    const PartPlace &part = *scene.part;
    for (const auto &caption : state.captions) {
        QRectF box = part.bounds(caption.element);
        if (caption.element.isEmpty() || box.isNull()) {
            const TextBlock text = words(caption.text, scene, part.rect().width());
            text.paint(painter, {part.rect().right() - text.width() - 8 * scene.unit, scene.area.bottom() - text.height()});
            continue;
        }
        for (const QString &terminal : {QStringLiteral(".t1"), QStringLiteral(".t2")})
            if (part.has(caption.element + terminal))
                box = box.united(part.bounds(caption.element + terminal));
        const TextBlock text = words(caption.text, scene, std::max(box.width() * 1.6, scene.text.px(80)));
        const bool above = box.center().y() < part.rect().center().y();
        const double y = above ? box.top() - text.height() - 8 * scene.unit : box.bottom() + 6 * scene.unit;
        text.paint(painter, {box.center().x() - text.width() / 2, std::max(y, scene.area.top())});
    }
}

// Without a drawing: the terminals by their names, and what part it is.
void paintLabels(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    const PartPlace &part = *scene.part;
    for (const auto &terminal : state.terminals) {
        const QRectF box = part.bounds(terminal.id);
        if (box.isNull())
            continue;
        const TextBlock name = words(terminal.name.isEmpty() ? terminal.id : terminal.name, scene, part.unit() * 190, Type::QuietStrong, Role::Ink);
        name.paint(painter, {box.right() + 12 * part.unit(), box.center().y() - name.height() / 2});
    }
    const TextBlock name = words(state.part, scene, part.unit() * 200, Type::Strong, Role::Ink);
    const QRectF body = part.bounds(QStringLiteral("body"));
    name.paint(painter, {body.right() - name.width() - 12 * part.unit(), body.bottom() - name.height() - 8 * part.unit()});
}

void paintFists(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    scene.part->paint(painter);
    const auto held = paintPersonAtOutlet(painter, *scene.part, state.red, state.black, scene.style);
    for (const bool red : {false, true}) {
        for (const HeldProbe &each : held) {
            if ((each.probe == Probe::Red) != red || scene.meter.rect.isEmpty())
                continue;
            const bool left = each.direction.x() < 0;
            const QPointF jack = red ? scene.meter.volt : scene.meter.com;
            QPainterPath path(each.cable);
            const double low = scene.area.bottom() - 6 * scene.unit;
            if (left) {
                path.cubicTo(each.cable + each.direction * 90 * scene.unit, jack + QPointF(110, 74) * scene.unit, jack);
            } else {
                const QPointF below((jack.x() + each.cable.x()) / 2, low);
                path.cubicTo(each.cable + QPointF(70, 70) * scene.unit, QPointF(each.cable.x() + 130 * scene.unit, low), below);
                path.cubicTo(QPointF(below.x() - 120 * scene.unit, low), jack + QPointF(10, 60) * scene.unit, jack);
            }
            paintCable(painter, each.probe, path, scene.unit, scene.style);
        }
    }
    const QPointF tips[] = {held[0].cable, held[1].cable};
    for (std::size_t i = 0; i < held.size(); ++i) {
        const QPointF tip = tips[i] - held[i].direction * (kProbeLength - 4) * scene.part->unit();
        paintFist(painter, tip, held[i].direction, i == 0, scene.part->unit(), scene.style);
    }
    for (const auto &terminal : state.terminals)
        paintContactLetter(painter, *scene.part, terminal.id, terminal.number.isEmpty() ? terminal.name : terminal.number, scene.text, scene.style);
    const QRectF plate = scene.part->rect();
    for (std::size_t i = 0; i < held.size(); ++i) {
        const QString note = held[i].probe == Probe::Red ? state.redNote : state.blackNote;
        const TextBlock text = words(note, scene, scene.text.px(96), Type::QuietStrong, Role::Ink);
        const double x = i == 0 ? plate.left() + 66 * scene.part->unit() - text.width() : plate.right() - 66 * scene.part->unit();
        text.paint(painter, {x, plate.top() + 40 * scene.part->unit()});
    }
}

void paintClampedWire(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    const QPointF hole = scene.meter.jawHole;
    const QString terminal = !state.red.isEmpty() ? state.red : state.terminals.empty() ? QString() : state.terminals.front().id;
    QPainterPath wire(QPointF(scene.meter.rect.left(), hole.y() + 10 * scene.unit));
    const bool known = scene.part->has(terminal);
    const QPointF end = known ? scene.part->end(terminal) : QPointF(scene.part->rect().left() + 20 * scene.unit, hole.y());
    const QPointF way = known ? scene.part->looks(terminal) : QPointF(-1, 0);
    wire.cubicTo(QPointF(hole.x() - 30 * scene.unit, hole.y()), QPointF(hole.x() - 20 * scene.unit, hole.y()), hole);
    wire.cubicTo(hole + QPointF(120 * scene.unit, 0), end + way * 90 * scene.unit, end);
    paintWire(painter, wire, scene.unit * 1.3, scene.style);
    const TextBlock name = words(state.wire, scene, scene.text.px(150), Type::QuietStrong, Role::Ink);
    name.paint(painter, {scene.meter.rect.right() + 12 * scene.unit, hole.y() - name.height() - 12 * scene.unit});
}

} // namespace

bool paintTestPicture(QPainter &painter, const QRectF &into, const TestPictureState &state, const Style &style)
{
    if (into.width() < 40 || into.height() < 40)
        return false;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const TestScene scene = layOutScene(into, state, style);
    if (scene.clamp)
        paintClampedWire(painter, scene, state);
    if (!scene.meter.rect.isEmpty())
        paintMeter(painter, scene.meter, state.meter, scene.clamp, !state.red.isEmpty() || !state.black.isEmpty(), style);
    if (state.form == Form::Fists && scene.part->has(state.red) && scene.part->has(state.black)) {
        paintFists(painter, scene, state);
    } else {
        scene.part->paint(painter);
        paintPulled(painter, scene, state);
        if (state.fault)
            scene.part->paintFault(painter, *state.fault, scene.text);
        if (scene.part->isPlain())
            paintLabels(painter, scene, state);
        paintNumbers(painter, scene, state);
        paintCaptions(painter, scene, state);
        paintProbes(painter, scene, state);
    }
    paintNotes(painter, scene, state);
    painter.restore();
    return true;
}

} // namespace app
