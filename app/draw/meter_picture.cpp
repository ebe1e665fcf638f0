#include "app/draw/meter_picture.h"

#include "app/draw/drawing.h"
#include "app/draw/seven_segments.h"

#include <QFontMetricsF>
#include <QPainter>

#include <cmath>

namespace app {
namespace {

QString idOf(Dial dial)
{
    switch (dial) {
    case Dial::Off: return QStringLiteral("dial-off");
    case Dial::VoltAc: return QStringLiteral("dial-voltage_ac");
    case Dial::VoltDc: return QStringLiteral("dial-voltage_dc");
    case Dial::Ohm: return QStringLiteral("dial-ohm");
    case Dial::Continuity: return QStringLiteral("dial-continuity");
    case Dial::Capacitance: return QStringLiteral("dial-capacitance");
    case Dial::ClampAmpere: return QStringLiteral("dial-current_clamp");
    }
    Q_UNREACHABLE();
}

std::unique_ptr<Drawing> meterDrawing(bool clamp, const Style &style)
{
    return Drawing::load({clamp ? QStringLiteral("clamp_meter") : QStringLiteral("meter"), {}, {}}, style);
}

QRectF mapped(const Drawing &drawing, const MeterPlace &place, const QString &id)
{
    const QRectF own = drawing.bounds(id);
    return QRectF(place.rect.topLeft() + own.topLeft() * place.unit, own.size() * place.unit);
}

void paintUnit(QPainter &painter, const QRectF &display, const QString &unit, double size, const Style &style)
{
    QFont font = style.font(Type::Strong);
    font.setPixelSize(std::max(1, qRound(size)));
    painter.setFont(font);
    painter.setPen(style[Role::Digits]);
    painter.drawText(display.adjusted(0, 0, -size * 0.45, -size * 0.25), Qt::AlignRight | Qt::AlignBottom, unit);
}

void paintDigits(QPainter &painter, const QRectF &display, const MeterState &state, const Style &style)
{
    const double size = display.height() * 0.25;
    QFont font = style.font(Type::Strong);
    font.setPixelSize(std::max(1, qRound(size)));
    const double unit = QFontMetricsF(font).horizontalAdvance(state.unit) + size;
    const double sign = state.alternating ? size * 1.3 : size * 0.4;
    paintSevenSegments(painter, state.display, display.adjusted(sign, display.height() * 0.2, -unit, -display.height() * 0.2), style[Role::Digits]);
    paintUnit(painter, display, state.unit, size, style);
    if (state.alternating) {
        painter.setFont(font);
        painter.drawText(display.adjusted(size * 0.4, size * 0.3, 0, 0), Qt::AlignLeft | Qt::AlignTop, QStringLiteral("~"));
    }
}

void paintPointer(QPainter &painter, const QRectF &dial, QPointF mark, double unit, const Style &style)
{
    const QPointF middle = dial.center();
    const double angle = std::atan2(mark.y() - middle.y(), mark.x() - middle.x());
    painter.save();
    painter.translate(middle);
    painter.rotate(angle * 180 / M_PI);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Line]);
    const double reach = dial.width() / 2 - 3 * unit;
    painter.drawRoundedRect(QRectF(-reach, -6 * unit, 2 * reach, 12 * unit), 4 * unit, 4 * unit);
    painter.setBrush(style[Role::Sheet]);
    painter.drawRoundedRect(QRectF(reach * 0.38, -2 * unit, reach * 0.54, 4 * unit), 2 * unit, 2 * unit);
    painter.restore();
}

void paintPlug(QPainter &painter, QPointF middle, double unit, bool red, const Style &style)
{
    painter.setPen(QPen(style[red ? Role::Line : Role::BlackEdge], 1.5 * unit));
    painter.setBrush(style[red ? Role::RedProbe : Role::BlackProbe]);
    painter.drawEllipse(middle, 11 * unit, 11 * unit);
    if (red) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::RedCore]);
        painter.drawEllipse(middle, 3.2 * unit, 3.2 * unit);
    }
}

} // namespace

MeterPlace placeMeter(const QRectF &into, bool clamp, const Style &style)
{
    MeterPlace place;
    const auto drawing = meterDrawing(clamp, style);
    if (!drawing)
        return place;
    const QSizeF size = drawing->viewBox().size().scaled(into.size(), Qt::KeepAspectRatio);
    place.rect = QRectF(into.left(), into.center().y() - size.height() / 2, size.width(), size.height());
    place.unit = size.width() / drawing->viewBox().width();
    place.com = mapped(*drawing, place, QStringLiteral("jack-com")).center();
    place.volt = mapped(*drawing, place, QStringLiteral("jack-v")).center();
    const QRectF display = mapped(*drawing, place, QStringLiteral("display"));
    place.displayEdge = {place.rect.right() - 15 * place.unit, display.top() + display.height() * 0.1};
    place.jawHole = mapped(*drawing, place, QStringLiteral("jaw-hole")).center();
    return place;
}

void paintDisplay(QPainter &painter, const QRectF &rect, const QString &text, const QString &unit, const Style &style)
{
    painter.setPen(style.pen(Role::Line, std::max(1.5, rect.height() * 0.045)));
    painter.setBrush(style[Role::Display]);
    painter.drawRoundedRect(rect, rect.height() * 0.08, rect.height() * 0.08);
    if (!unit.isEmpty()) {
        paintDigits(painter, rect, {true, Dial::Ohm, text, unit, false, false}, style);
        return;
    }
    const double side = rect.width() * 0.2;
    paintSevenSegments(painter, text, rect.adjusted(side, rect.height() * 0.24, -side, -rect.height() * 0.24), style[Role::Digits]);
}

void paintMeter(QPainter &painter, const MeterPlace &place, const MeterState &state, bool clamp, bool plugged, const Style &style)
{
    const auto drawing = meterDrawing(clamp, style);
    if (!drawing)
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    drawing->paint(painter, place.rect);
    const QRectF mark = mapped(*drawing, place, idOf(state.dial));
    const QRectF dial = mapped(*drawing, place, QStringLiteral("dial"));
    if (!mark.isEmpty()) {
        paintPointer(painter, dial, mark.center(), place.unit, style);
        painter.setPen(style.pen(Role::Line, 2 * place.unit));
        painter.setBrush(Qt::NoBrush);
        const double reach = std::max({mark.width(), mark.height(), 18 * place.unit}) / 2 + 5 * place.unit;
        painter.drawEllipse(mark.center(), reach, reach);
    }
    paintDigits(painter, mapped(*drawing, place, QStringLiteral("display")), state, style);
    if (plugged && !clamp) {
        paintPlug(painter, place.com, place.unit, false, style);
        paintPlug(painter, place.volt, place.unit, true, style);
    }
    painter.restore();
}

} // namespace app
