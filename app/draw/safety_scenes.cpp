#include "app/draw/safety_scenes.h"

#include "app/draw/outlet_picture.h"
#include "app/draw/test_picture.h"
#include "app/shared/text_block.h"

#include <QPainter>

#include <algorithm>

namespace app {
namespace {

void paintEye(QPainter &painter, QPointF middle, double unit, const Style &style)
{
    QPainterPath eye;
    eye.moveTo(middle + QPointF(-26, 0) * unit);
    eye.quadTo(middle + QPointF(0, -22) * unit, middle + QPointF(26, 0) * unit);
    eye.quadTo(middle + QPointF(0, 22) * unit, middle + QPointF(-26, 0) * unit);
    painter.setPen(style.pen(Role::Line, 2.25 * unit));
    painter.setBrush(style[Role::Ceramic]);
    painter.drawPath(eye);
    painter.setBrush(style[Role::Line]);
    painter.drawEllipse(middle, 7.5 * unit, 7.5 * unit);
}

void paintLargePlug(QPainter &painter, QPointF at, double unit, const Style &style)
{
    painter.save();
    painter.translate(at);
    painter.scale(unit, unit);
    painter.setPen(style.pen(Role::Line, 1.75));
    painter.setBrush(style[Role::Terminal]);
    for (const double y : {-19.0, -4.0, 11.0})
        painter.drawRect(QRectF(y == -4.0 ? -30 : -24, y, 32, 7));
    painter.setPen(style.pen(Role::Line, 2.5));
    painter.setBrush(style[Role::DarkPlastic]);
    QPainterPath body;
    body.moveTo(0, -25);
    body.lineTo(48, -25);
    body.quadTo(62, -22, 62, -4);
    body.quadTo(62, 16, 48, 24);
    body.lineTo(0, 24);
    body.closeSubpath();
    painter.drawPath(body);
    painter.restore();
}

void paintDisc(QPainter &painter, QPointF at, const QString &number, const Style &style)
{
    const double reach = style.px(13);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Ink]);
    painter.drawEllipse(at, reach, reach);
    paintLine(painter, {number, Type::Strong, Role::Sheet}, style, at, Qt::AlignHCenter);
}

TestPictureState partState(const SafetyPictureState::Part &part)
{
    TestPictureState state;
    state.drawing = part.drawing;
    for (const auto &wire : part.wires)
        state.terminals.push_back({wire.terminal, {}, {}, true});
    return state;
}

} // namespace

void paintUnplug(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style)
{
    const double unit = std::min(into.width() / 560, into.height() / 218);
    const QPointF origin(into.center().x() - 280 * unit, into.center().y() - 108 * unit);
    const auto at = [&](double x, double y) { return origin + QPointF(x, y) * unit; };
    if (const auto outlet = Drawing::load({state.receptacle, {}, {}}, style))
        outlet->paint(painter, QRectF(at(-34, 6), QSizeF(310, 202) * unit));
    if (const auto machine = Drawing::load({QStringLiteral("machine"), {}, {}}, style))
        machine->paint(painter, QRectF(at(330, 29), QSizeF(288, 187) * unit));
    painter.setPen(style.pen(Role::Line, 2.5 * unit));
    painter.drawLine(at(0, 208), at(380, 208));
    QPainterPath cord(at(326, 172));
    cord.cubicTo(at(352, 172), at(346, 200), at(374, 196));
    cord.cubicTo(at(392, 194), at(396, 180), at(412, 178));
    paintWire(painter, cord, unit * 1.2, style);
    paintLargePlug(painter, at(266, 176), unit, style);
    QPen dashed(style[Role::Line], 2.25 * unit, Qt::SolidLine, Qt::FlatCap);
    dashed.setDashPattern({3, 2});
    painter.setPen(dashed);
    painter.drawLine(at(212, 128), at(236, 150));
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Line]);
    painter.drawPolygon(QPolygonF({at(246, 159), at(239, 144), at(231, 153)}));
    paintEye(painter, at(300, 74), unit, style);
    dashed.setWidthF(1.25 * unit);
    painter.setPen(dashed);
    painter.drawLine(at(300, 94), at(296, 144));
    TextBlock::Options options;
    options.align = Qt::AlignHCenter;
    const TextBlock words({{SafetyPicture::tr("keep it where you see it"), Type::QuietStrong}}, style,
                          std::max(190 * unit, style.px(90)), options);
    words.paint(painter, at(300, 52) - QPointF(std::max(190 * unit, style.px(90)) / 2, words.height()));
}

void paintAtTheOutlet(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style)
{
    TestPictureState outlet;
    outlet.drawing = state.receptacle;
    outlet.red = state.red;
    outlet.black = state.black;
    const double unit = std::min(into.width() / 480, into.height() / (260 + 128));
    const QRectF place(into.center().x() - 200 * unit, into.top(), 400 * unit, 260 * unit);
    const PartPlace part(outlet, place, style);
    part.paint(painter);
    if (!part.has(state.red) || !part.has(state.black))
        return;
    painter.save();
    painter.setClipRect(into); // the person goes on below the picture
    const auto held = paintPersonAtOutlet(painter, part, state.red, state.black, style);
    for (std::size_t i = 0; i < held.size(); ++i) {
        const double side = i == 0 ? -1 : 1;
        QPainterPath cable(held[i].cable);
        cable.cubicTo(held[i].cable + held[i].direction * 60 * unit, held[i].cable + QPointF(side * 70, 90) * unit,
                      held[i].cable + QPointF(side * 150, 118) * unit);
        paintCable(painter, held[i].probe, cable, unit, style);
    }
    for (std::size_t i = 0; i < held.size(); ++i)
        paintFist(painter, held[i].cable - held[i].direction * (kProbeLength - 4) * unit, held[i].direction, i == 0, unit, style);
    painter.restore();
    const QRectF plate = part.rect().adjusted(84 * unit, 0, -84 * unit, 0);
    for (std::size_t i = 0; i < held.size(); ++i) {
        const bool black = held[i].probe == Probe::Black;
        const QString slot = (black ? state.black : state.red).toUpper();
        paintContactLetter(painter, part, black ? state.black : state.red, slot, style, style);
        const QString note =
            black ? SafetyPicture::tr("1 black first into %1").arg(slot) : SafetyPicture::tr("2 then red into %1").arg(slot);
        const double room = std::max(style.px(86), (into.width() - plate.width()) / 2 - style.px(16));
        const TextBlock first({{note, Type::QuietStrong}}, style, room);
        const TextBlock second(
            {{i == 0 ? SafetyPicture::tr("fingers stay behind the guards") : SafetyPicture::tr("machine unplugged"),
              Type::Quiet}},
            style, room);
        const double x =
            i == 0 ? plate.left() - style.px(10) - std::max(first.width(), second.width()) : plate.right() + style.px(10);
        first.paint(painter, {x, plate.top() + 30 * unit});
        second.paint(painter, {x, plate.top() + 30 * unit + first.height() + style.px(20)});
    }
}

void paintPutBack(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style)
{
    const double count = std::max(1.0, static_cast<double>(state.parts.size()));
    const double columns = count <= 1 ? 1 : 2;
    const double rows = std::ceil(count / columns);
    const QSizeF cell(into.width() / columns, std::min(into.height() / rows, into.width() / columns * 0.72 + style.px(20)));
    for (std::size_t i = 0; i < state.parts.size(); ++i) {
        const auto &part = state.parts[i];
        const double column = static_cast<double>(i % static_cast<std::size_t>(columns));
        const double row = static_cast<double>(i / static_cast<std::size_t>(columns));
        const QRectF room(into.left() + column * cell.width(), into.top() + row * cell.height(), cell.width(), cell.height());
        const TextBlock caption({{part.caption, Type::Quiet, Role::Ink2}}, style, room.width());
        // room for the wires that come from the left and from above
        const double unit = std::min(room.width() / 470, (room.height() - caption.height()) / 330);
        const QRectF place(room.center().x() - 165 * unit, room.bottom() - caption.height() - 262 * unit, 400 * unit, 260 * unit);
        const PartPlace drawn(partState(part), place, style);
        drawn.paint(painter);
        for (std::size_t w = 0; w < part.wires.size(); ++w) {
            const auto &wire = part.wires[w];
            if (!drawn.has(wire.terminal))
                continue;
            const double above = 2 * w < part.wires.size() ? -1 : 1; // the discs of the lower half stand below
            const QPointF way = drawn.looks(wire.terminal);
            const QPointF mouth = drawn.end(wire.terminal) + way * 24 * unit;
            QPainterPath path(mouth + way * 28 * unit);
            const QPointF drop = std::abs(way.x()) > 0.6 ? QPointF(0, 34) : QPointF(-40, 0);
            path.cubicTo(mouth + way * 44 * unit, mouth + (way * 46 + drop * 0.4) * unit, mouth + (way * 56 + drop) * unit);
            paintWire(painter, path, unit, style);
            paintConnector(painter, mouth, way, 0, unit, style);
            const QPointF aside = std::abs(way.x()) > 0.6 ? QPointF(14 * unit * way.x(), above * (style.px(13) + 10 * unit))
                                                          : QPointF(above * (style.px(13) + 10 * unit), -way.y() * 4 * unit);
            paintDisc(painter, mouth + aside, wire.number, style);
        }
        caption.paint(painter, {place.center().x() - caption.width() / 2, room.bottom() - caption.height()});
    }
}

TestPictureState stationPicture(const SafetyPictureState &state, int station)
{
    TestPictureState picture;
    picture.meter = {true, Dial::VoltAc, {}, QStringLiteral("V"), true, false};
    picture.close = true;
    if (station != 2) {
        picture.drawing = QStringLiteral("receptacle_120");
        picture.black = QStringLiteral("n");
        picture.red = QStringLiteral("l");
        return picture;
    }
    for (const QString &point : state.points)
        picture.terminals.push_back({point, point, {}, false});
    picture.red = state.red;
    picture.black = state.black;
    return picture;
}

void paintProvingDead(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style)
{
    const QString titles[] = {SafetyPicture::tr("1 Known outlet, before"), SafetyPicture::tr("2 At the machine"),
                              SafetyPicture::tr("3 Same outlet, after")};
    const double gap = style.px(10);
    const double width = (into.width() - 2 * gap) / 3;
    for (int i = 0; i < 3; ++i) {
        const QRectF cell(into.left() + i * (width + gap), into.top(), width, std::min(into.height(), width * 0.7 + style.px(34)));
        painter.setPen(QPen(style[Role::Edge], 1));
        painter.drawLine(cell.topLeft(), cell.topRight());
        const TextBlock title({{titles[i], Type::QuietStrong}}, style, width);
        title.paint(painter, cell.topLeft() + QPointF(style.px(4), style.px(6)));
        paintTestPicture(painter, cell.adjusted(0, title.height() + style.px(10), 0, 0), stationPicture(state, i + 1), style);
    }
}

} // namespace app
