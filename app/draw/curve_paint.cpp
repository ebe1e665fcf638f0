// How a curve is painted: grid, band, curve, then the readings, whose words look for a free corner.
#include "app/draw/axis.h"
#include "app/draw/curve_view.h"
#include "app/shared/text_block.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace app {
namespace {

struct Plot
{
    QRectF area;
    Axis x;
    Axis y;
    std::vector<double> xTicks;
    std::vector<double> yTicks;

    QPointF at(double px, double py) const { return {x.at(px), y.at(py)}; }
};

double widthOf(const QString &text, Type type, const Style &style)
{
    return TextBlock({{text, type}}, style).width();
}

Plot layOut(const QRectF &into, const CurveState &state, const Style &style)
{
    Plot plot;
    plot.yTicks = niceTicks(state.yFrom, state.yTo, state.logarithmic, static_cast<int>(into.height() / style.px(40)));
    double left = widthOf(state.yUnit, Type::QuietStrong, style);
    for (const double tick : plot.yTicks)
        left = std::max(left, widthOf(tickText(tick), Type::Quiet, style));
    plot.area = into.adjusted(left + style.px(12), style.px(8), -style.px(6), -style.px(42));
    plot.xTicks = niceTicks(state.xFrom, state.xTo, false, static_cast<int>(plot.area.width() / style.px(60)));
    plot.x = {state.xFrom, state.xTo, plot.area.left(), plot.area.width(), false};
    plot.y = {state.yFrom, state.yTo, plot.area.bottom(), -plot.area.height(), state.logarithmic};
    return plot;
}

void paintGrid(QPainter &painter, const Plot &plot, const CurveState &state, const Style &style)
{
    painter.setPen(QPen(style[Role::Rule], 1));
    for (const double tick : plot.xTicks) {
        painter.drawLine(QPointF(plot.x.at(tick), plot.area.top()), QPointF(plot.x.at(tick), plot.area.bottom()));
        paintLine(painter, {tickText(tick), Type::Quiet, Role::Ink2}, style,
                  {plot.x.at(tick), plot.area.bottom() + style.px(13)}, Qt::AlignHCenter);
    }
    const double unitAt = plot.area.top() - style.px(1);
    for (const double tick : plot.yTicks) {
        const double y = plot.y.at(tick);
        painter.setPen(QPen(style[Role::Rule], 1));
        painter.drawLine(QPointF(plot.area.left(), y), QPointF(plot.area.right(), y));
        if (y - unitAt > style.px(15) || state.yUnit.isEmpty())
            paintLine(painter, {tickText(tick), Type::Quiet, Role::Ink2}, style, {plot.area.left() - style.px(8), y}, Qt::AlignRight);
    }
    paintLine(painter, {state.yUnit, Type::QuietStrong, Role::Ink}, style,
              {plot.area.left() - style.px(8), unitAt + style.px(2)}, Qt::AlignRight);
    paintLine(painter, {state.xTitle, Type::Quiet, Role::Ink2}, style,
              {plot.area.right(), plot.area.bottom() + style.px(32)}, Qt::AlignRight);
    painter.setPen(QPen(style[Role::Edge], 1.25));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(plot.area);
}

void paintBand(QPainter &painter, const Plot &plot, const CurveState::Curve &curve, const Style &style)
{
    QPolygonF low;
    QPolygonF high;
    QPolygonF middle;
    for (const auto &point : curve.points) {
        low.prepend(plot.at(point.x, point.low));
        high.append(plot.at(point.x, point.high));
        middle.append(plot.at(point.x, point.y));
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Zone]);
    painter.drawPolygon(high + low);
    painter.setPen(QPen(style[Role::Edge], 1));
    painter.drawPolyline(high);
    painter.drawPolyline(low);
    painter.setPen(style.pen(Role::Ink, 2.25));
    painter.drawPolyline(middle);
}

// Where words may stand: inside the plot, off the curve and off each other.
class Room
{
public:
    Room(const Plot &plot, const CurveState &state) : m_area(plot.area)
    {
        for (const auto &curve : state.curves) {
            for (std::size_t i = 0; i + 1 < curve.points.size(); ++i) {
                const auto &a = curve.points[i];
                const auto &b = curve.points[i + 1];
                m_taken.push_back(QRectF(plot.at(a.x, std::max(a.high, b.high)), plot.at(b.x, std::min(a.low, b.low))).normalized());
            }
        }
    }
    void take(const QRectF &rect) { m_taken.push_back(rect); }
    // The first free place for a block of this size round a point, nearest first.
    std::optional<QRectF> place(QPointF near, QSizeF size, double step)
    {
        constexpr std::array kAngles{45, 135, -45, -135, 20, 70, 110, 160, -20, -70, -110, -160, 0, 90, 180, -90}; // degrees, below right first
        for (double far = 1; far < 24; far += 0.5) {
            for (const int angle : kAngles) {
                const QPointF way(std::cos(angle * M_PI / 180), std::sin(angle * M_PI / 180));
                const QPointF middle = near + QPointF(way.x() * (size.width() / 2 + far * step * 0.7), way.y() * (size.height() / 2 + far * step * 0.7));
                const QRectF rect(middle - QPointF(size.width() / 2, size.height() / 2), size);
                if (m_area.contains(rect.adjusted(-3, -3, 3, 3)) && isFree(rect.adjusted(-4, -4, 4, 4))) {
                    m_taken.push_back(rect);
                    return rect;
                }
            }
        }
        return {};
    }

private:
    bool isFree(const QRectF &rect) const
    {
        return std::none_of(m_taken.begin(), m_taken.end(), [&](const QRectF &other) { return other.intersects(rect); });
    }

    QRectF m_area;
    std::vector<QRectF> m_taken;
};

QPointF nearestEdge(const QRectF &rect, QPointF to)
{
    return {std::clamp(to.x(), rect.left(), rect.right()), std::clamp(to.y(), rect.top(), rect.bottom())};
}

void paintErrors(QPainter &painter, const Plot &plot, const CurveState::Reading &reading, const Style &style)
{
    painter.setPen(QPen(style[Role::Ink], 1.75, Qt::SolidLine, Qt::FlatCap));
    const double cap = style.px(4);
    if (reading.yHalf > 0) {
        const QPointF high = plot.at(reading.x, reading.y + reading.yHalf);
        const QPointF low = plot.at(reading.x, std::max(reading.y - reading.yHalf, plot.y.from));
        painter.drawLine(high, low);
        for (const QPointF end : {high, low})
            painter.drawLine(end - QPointF(cap, 0), end + QPointF(cap, 0));
    }
    if (reading.xHalf > 0) {
        const QPointF left = plot.at(reading.x - reading.xHalf, reading.y);
        const QPointF right = plot.at(reading.x + reading.xHalf, reading.y);
        painter.drawLine(left, right);
        for (const QPointF end : {left, right})
            painter.drawLine(end - QPointF(0, cap), end + QPointF(0, cap));
    }
}

void paintPoint(QPainter &painter, QPointF at, bool filled, const Style &style)
{
    const double reach = style.px(7.5);
    painter.setPen(QPen(style[filled ? Role::Sheet : Role::Ink], filled ? 1 : 2));
    painter.setBrush(style[filled ? Role::Ink : Role::Sheet]);
    painter.drawPolygon(QPolygonF({at + QPointF(0, -reach), at + QPointF(reach, 0), at + QPointF(0, reach), at + QPointF(-reach, 0)}));
}

void paintReading(QPainter &painter, const Plot &plot, const CurveState::Reading &reading, Room &room, const Style &style)
{
    const QPointF at(plot.x.clamped(reading.x), plot.y.clamped(reading.y));
    if (!reading.earlier) {
        QPen dashed(style[Role::Ink], 1.5);
        dashed.setDashPattern({3, 3});
        painter.setPen(dashed);
        painter.drawLine(QPointF(at.x(), plot.area.top()), QPointF(at.x(), plot.area.bottom()));
    }
    const Role ink = reading.earlier ? Role::Ink : Role::Sheet;
    const Type type = reading.earlier ? Type::QuietStrong : Type::SafetyStrong;
    const TextBlock value({{reading.value, type, ink}}, style);
    const TextBlock says({{reading.says, reading.earlier ? Type::Quiet : Type::QuietStrong}}, style);
    const double pad = reading.earlier ? 0 : style.px(12);
    const double flag = value.height() + (reading.earlier ? 0 : style.px(6));
    const QSizeF size(std::max(value.width() + 2 * pad, says.width()), flag + style.px(4) + says.height());
    const QRectF box = room.place(at, size, style.px(18)).value_or(QRectF(at + QPointF(style.px(12), style.px(12)), size));
    const QPointF end = nearestEdge(box, at);
    painter.setPen(style.pen(reading.earlier ? Role::Ink2 : Role::Ink, reading.earlier ? 1 : 2.25));
    painter.drawLine(at, end);
    if (!reading.earlier) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Ink]);
        painter.drawRoundedRect(QRectF(box.topLeft(), QSizeF(value.width() + 2 * pad, flag)), 2, 2);
    }
    value.paint(painter, {box.left() + pad, value.topAt(box.top() + flag / 2)});
    says.paint(painter, box.topLeft() + QPointF(0, flag + style.px(4)));
    paintErrors(painter, plot, reading, style);
    paintPoint(painter, at, !reading.earlier, style);
}

void paintName(QPainter &painter, const Plot &plot, const CurveState::Curve &curve, Room &room, const Style &style)
{
    if (curve.points.empty() || curve.name.isEmpty())
        return;
    const auto &point = curve.points[curve.points.size() * 3 / 5];
    const QPointF at = plot.at(point.x, (point.high + point.y) / 2);
    for (const double part : {1.0, 0.45, 0.3}) { // narrower where it does not fit in one piece
        const TextBlock name({{curve.name, Type::Quiet, Role::Ink2}}, style, plot.area.width() * part);
        const auto box = room.place(at, name.size(), style.px(20));
        if (!box)
            continue;
        painter.setPen(QPen(style[Role::Ink2], 1));
        painter.drawLine(at, nearestEdge(*box, at));
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Ink2]);
        painter.drawEllipse(at, 2.2, 2.2);
        name.paint(painter, box->topLeft());
        return;
    }
}

} // namespace

void paintCurve(QPainter &painter, const QRectF &into, const CurveState &state, const Style &style)
{
    if (!(state.xTo > state.xFrom) || !(state.yTo > state.yFrom) || (state.logarithmic && state.yFrom <= 0))
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Plot plot = layOut(into, state, style);
    paintGrid(painter, plot, state, style);
    painter.save();
    painter.setClipRect(plot.area);
    for (const auto &curve : state.curves)
        paintBand(painter, plot, curve, style);
    painter.restore();
    Room room(plot, state);
    for (const auto &reading : state.readings) // no words on any of the points
        room.take(QRectF(plot.at(reading.x, reading.y), QSizeF(1, 1)).adjusted(-style.px(12), -style.px(12), style.px(12), style.px(12)));
    for (const auto &reading : state.readings)
        if (!reading.earlier)
            room.take(QRectF(plot.x.at(reading.x) - 1, plot.area.top(), 2, plot.area.height()));
    for (const bool earlier : {false, true}) // the present one has the first choice
        for (const auto &reading : state.readings)
            if (reading.earlier == earlier)
                paintReading(painter, plot, reading, room, style);
    for (const auto &curve : state.curves)
        paintName(painter, plot, curve, room, style);
    painter.restore();
}

} // namespace app
