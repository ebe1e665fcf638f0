#include "app/draw/power_rail_paint.h"

#include "app/draw/hatch.h"
#include "app/draw/hold_mark.h"
#include "app/draw/plug_disc.h"
#include "app/draw/safety_colours.h"
#include "app/draw/sign.h"
#include "app/shared/text_block.h"

#include <QPainter>

#include <algorithm>
#include <array>

namespace app {
namespace {

// From the top; the hold point stands between Running and ProvenDead.
constexpr std::array kPlaces{PowerPlace::Energized, PowerPlace::Running,   PowerPlace::ProvenDead,
                             PowerPlace::Isolated,  PowerPlace::NotProven, PowerPlace::Unknown};
constexpr int kHoldAfter = 1;
constexpr double kLine = 18, kTitle = 28, kStep = 40;

QString discText(PowerPlace place)
{
    switch (place) {
    case PowerPlace::ProvenDead: return QStringLiteral("0");
    case PowerPlace::NotProven: return QStringLiteral("0?");
    case PowerPlace::Unknown: return QStringLiteral("?");
    case PowerPlace::Energized:
    case PowerPlace::Running:
    case PowerPlace::Isolated: return {};
    }
    Q_UNREACHABLE();
}

void paintDisc(QPainter &painter, QPointF middle, PowerPlace place, const Style &style)
{
    if (place == PowerPlace::Isolated) {
        paintPlugDisc(painter, middle, style);
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(style[Role::Ink]);
    painter.drawEllipse(middle, style.px(kDiscReach), style.px(kDiscReach));
    if (place == PowerPlace::Running) { // a closed ring with an arrow: it turns
        painter.setPen(QPen(style[Role::Sheet], style.px(1.8)));
        painter.setBrush(Qt::NoBrush);
        const double r = style.px(6);
        painter.drawArc(QRectF(middle.x() - r, middle.y() - r, 2 * r, 2 * r), 30 * 16, 290 * 16);
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Sheet]);
        const QPointF tip = middle + QPointF(style.px(5.4), -style.px(0.6));
        painter.drawPolygon(QPolygonF({tip, tip + QPointF(style.px(2.6), -style.px(5)), tip + QPointF(-style.px(3.6), -style.px(3.4))}));
    } else {
        paintLine(painter, {discText(place), Type::QuietStrong, Role::Sheet}, style, middle, Qt::AlignHCenter);
    }
}

void paintRing(QPainter &painter, QPointF middle, double reach, const Style &style)
{
    painter.setPen(QPen(style[Role::Edge], style.px(2.4)));
    painter.setBrush(style[Role::Desk]);
    painter.drawEllipse(middle, reach, reach);
}

TextBlock blackText(const Runs &runs, const Style &style, double width)
{
    TextBlock::Options options;
    options.colour = QColor::fromRgba(safety::kBlack);
    options.leading = 1.0;
    return TextBlock(runs, style, width, options);
}

void paintOrange(QPainter &painter, const QRectF &box, const Style &style)
{
    painter.setPen(QPen(style.dark() ? QColor::fromRgba(safety::kWhite) : QColor::fromRgba(safety::kBlack), 2, Qt::SolidLine,
                        Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(QColor::fromRgba(safety::kOrange));
    painter.drawRect(box.adjusted(1, 1, -1, -1));
}

double sinceWidth(const Style &style)
{
    return style.px(75);
}

double headHeight(const RailState &state, const Style &style)
{
    const TextBlock since = blackText({{state.since, Type::QuietStrong}}, style, style.px(98));
    return style.px(32) + since.height() + style.px(6);
}

// Orange, with the alert symbol: the head of the rail under voltage.
void paintHead(QPainter &painter, const QRectF &box, const RailState &state, const Style &style)
{
    paintOrange(painter, box, style);
    const double side = style.px(28);
    paintAlert(painter, {box.left() + style.px(6), box.top() + style.px(4), side, side}, QColor::fromRgba(safety::kBlack),
               QColor::fromRgba(safety::kOrange));
    const TextBlock word = blackText({{placeWord(PowerPlace::Energized), Type::QuietStrong}}, style, box.width() - side - style.px(8));
    word.paint(painter, {box.left() + side + style.px(9), box.top() + style.px(20) - word.height() / 2});
    blackText({{state.since, Type::QuietStrong}}, style, box.width() - style.px(14))
        .paint(painter, {box.left() + style.px(8), box.top() + style.px(33)});
}

double sinceHeight(const RailState &state, const Style &style)
{
    return TextBlock({{state.since, Type::Quiet}}, style, sinceWidth(style)).height();
}

} // namespace

void paintHoldMark(QPainter &painter, const QRectF &bar, bool closed, const Style &style)
{
    const QColor edge = closed ? (style.dark() ? QColor::fromRgba(safety::kWhite) : QColor::fromRgba(safety::kBlack)) : style[Role::Ink];
    const QColor lines = closed ? QColor::fromRgba(safety::kBlack) : style[Role::Ink];
    painter.fillRect(bar, closed ? QColor::fromRgba(safety::kOrange) : style[Role::Sheet]);
    paintHatch(painter, bar, bar.height() * (closed ? 0.95 : 0.9), lines, style.px(closed ? 2.6 : 1.6));
    painter.setPen(QPen(edge, closed ? 2 : 1.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(bar, 1.5, 1.5);
}

double standingRailHeight(const RailState &state, const Style &style)
{
    const bool head = state.place == PowerPlace::Energized;
    return style.px(kTitle + kStep * 6 + 16) + (head ? headHeight(state, style) - style.px(kStep) : sinceHeight(state, style));
}

void paintStandingRail(QPainter &painter, const QRectF &into, const RailState &state, const Style &style)
{
    const double x = into.left() + style.px(17);
    const double textLeft = into.left() + style.px(37);
    paintLine(painter, {PowerRail::tr("Power"), Type::QuietStrong}, style, {into.left() + style.px(3), into.top() + style.px(9)});

    const bool energized = state.place == PowerPlace::Energized;
    const double extra = energized ? headHeight(state, style) - style.px(22) : sinceHeight(state, style);
    const double step = std::clamp((into.height() - style.px(kTitle + 10) - extra) / 6.5, style.px(30), style.px(60));
    std::array<double, kPlaces.size()> ys{};
    double y = into.top() + style.px(kTitle) + (energized ? 0 : style.px(18));
    double holdY = 0;
    for (std::size_t i = 0; i < kPlaces.size(); ++i) {
        ys[i] = y;
        y += step * (static_cast<int>(i) == kHoldAfter ? 1.5 : 1) + (kPlaces[i] == state.place ? extra : 0);
        if (static_cast<int>(i) == kHoldAfter)
            holdY = ys[i] + (state.place == kPlaces[i] ? extra : 0) + step * 0.75;
    }
    painter.setPen(QPen(style[Role::Edge], style.px(3)));
    painter.drawLine(QPointF(x, ys.front()), QPointF(x, ys.back()));
    const double width = style.px(state.onHoldPoint ? 34 : 30);
    paintHoldMark(painter, {x - width / 2, holdY - style.px(state.onHoldPoint ? 7 : 4), width, style.px(state.onHoldPoint ? 14 : 8)}, state.onHoldPoint, style);
    paintLine(painter, {PowerRail::tr("hold point"), state.onHoldPoint ? Type::QuietStrong : Type::Quiet,
                        state.onHoldPoint ? Role::Ink : Role::Ink2}, style, {textLeft, holdY});
    for (std::size_t i = 0; i < kPlaces.size(); ++i) {
        const QPointF middle(x, ys[i]);
        if (kPlaces[i] != state.place) {
            paintRing(painter, middle, style.px(6), style);
            paintLine(painter, {placeWord(kPlaces[i]), Type::Quiet, Role::Ink2}, style, {textLeft, ys[i]});
        } else if (energized) {
            paintHead(painter, {into.left(), ys[i] - style.px(2), into.width(), headHeight(state, style)}, state, style);
        } else {
            paintDisc(painter, middle, state.place, style);
            paintLine(painter, {placeWord(state.place), Type::QuietStrong}, style, {textLeft, ys[i]});
            TextBlock({{state.since, Type::Quiet, Role::Ink2}}, style, sinceWidth(style)).paint(painter, {textLeft, ys[i] + style.px(9)});
        }
    }
}

double lyingRailWidth(const RailState &state, const Style &style, bool withSince)
{
    Runs words{{placeWord(state.place), Type::Strong}};
    if (withSince)
        words.push_back({QStringLiteral("  ") + plainText({{state.since}}), Type::Text});
    return style.px(124 + 12 + 2 * kDiscReach + 10) + TextBlock(words, style).width() + style.px(12);
}

void paintLyingRail(QPainter &painter, const QRectF &into, const RailState &state, const Style &style)
{
    const double y = into.center().y();
    const double step = style.px(20);
    double x = into.left() + style.px(6);
    painter.setPen(QPen(style[Role::Edge], style.px(2.5)));
    painter.drawLine(QPointF(x, y), QPointF(x + step * 5.9, y));
    for (int i = static_cast<int>(kPlaces.size()) - 1; i >= 0; --i) {
        const bool present = kPlaces[static_cast<std::size_t>(i)] == state.place;
        if (present) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(style[Role::Ink]);
            painter.drawEllipse(QPointF(x, y), style.px(5.5), style.px(5.5));
        } else {
            paintRing(painter, {x, y}, style.px(4.5), style);
        }
        x += step * 0.95;
        if (i == kHoldAfter + 1) {
            paintHoldMark(painter, {x - style.px(2.5), y - style.px(8), style.px(5), style.px(16)}, state.onHoldPoint, style);
            x += step * 0.95;
        }
    }
    x += style.px(10);
    const bool since = lyingRailWidth(state, style, true) <= into.width() + 1;
    Runs words{{placeWord(state.place), Type::Strong}};
    if (since)
        words.push_back({QStringLiteral("  ") + plainText({{state.since}}), Type::Text, Role::Ink2});
    if (state.place == PowerPlace::Energized) {
        const TextBlock text = blackText(words, style, TextBlock::kNoLimit);
        const QRectF box(x - style.px(6), y - style.px(18), style.px(50) + text.width(), style.px(36));
        paintOrange(painter, box, style);
        paintAlert(painter, {box.left() + style.px(6), y - style.px(13), style.px(26), style.px(26)}, QColor::fromRgba(safety::kBlack), QColor::fromRgba(safety::kOrange));
        text.paint(painter, {box.left() + style.px(40), text.topAt(y)});
        return;
    }
    paintDisc(painter, {x + style.px(kDiscReach), y}, state.place, style);
    const TextBlock text(words, style);
    text.paint(painter, {x + style.px(2 * kDiscReach + 10), text.topAt(y)});
}

} // namespace app
