#include "app/draw/check_picture.h"

#include "app/draw/meter_picture.h"
#include "app/draw/probe_picture.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

using Scene = CheckPictureState::Scene;
constexpr double kWide = 400, kHigh = 340, kProbe = 0.8;

struct Held
{
    QPointF tip, direction; // of the handle, away from the tip
};

struct Pair
{
    Held red, black;
};

QPointF unitVector(double x, double y)
{
    const double length = std::hypot(x, y);
    return {x / length, y / length};
}

// In units of the picture; the meter stands at its left, 200 wide.
Pair pairOf(Scene scene)
{
    switch (scene) {
    case Scene::Apart:
        return {{{372, 96}, unitVector(-1, 0.12)}, {{372, 232}, unitVector(-1, 0.12)}};
    case Scene::Together:
        return {{{372, 150}, unitVector(-0.75, -0.66)}, {{374, 158}, unitVector(-0.62, 0.78)}};
    case Scene::Battery:
        return {{{326, 66}, unitVector(-0.9, -0.44)}, {{326, 284}, unitVector(-0.75, 0.66)}};
    case Scene::WhereIsRed:
        break;
    }
    return {};
}

// Out of the jack, low, and up to the handle from behind it.
void paintLead(QPainter &painter, Probe probe, QPointF jack, const Held &held, double unit, const Style &style)
{
    const QPointF end = held.tip + held.direction * (kProbeLength - 1) * kProbe * unit;
    QPainterPath path(jack);
    path.cubicTo(jack + QPointF((end.x() - jack.x()) * 0.6, 70 * unit), end + held.direction * 70 * unit, end);
    paintCable(painter, probe, path, unit * 0.9, style);
    paintProbe(painter, probe, held.tip, held.direction, kProbe * unit, style);
}

void paintBattery(QPainter &painter, const QRectF &body, double unit, const Style &style)
{
    painter.setPen(style.pen(Role::Line, 2.25 * unit));
    painter.setBrush(style[Role::Terminal]);
    painter.drawRect(QRectF(body.center().x() - 14 * unit, body.top() - 14 * unit, 28 * unit, 14 * unit));
    painter.setBrush(style[Role::Ceramic]);
    painter.drawRoundedRect(body, 4 * unit, 4 * unit);
    const auto write = [&](const QString &text, double y, Type type) {
        TextBlock({{text, type}}, style).paintAround(painter, {body.center().x(), y});
    };
    write(QStringLiteral("+"), body.top() + 22 * unit, Type::Title);
    write(QStringLiteral("1.5 V"), body.center().y(), Type::Quiet);
    write(QStringLiteral("−"), body.bottom() - 22 * unit, Type::Title);
}

void paintJacks(QPainter &painter, const QPointF &at, const CheckPictureState &state, double unit, const Style &style)
{
    const auto jack = [&](QPointF middle, const QString &name, const QString &note, bool red) {
        painter.setPen(style.pen(Role::Line, 2.25 * unit));
        painter.setBrush(style[red ? Role::RedProbe : Role::Ceramic]);
        painter.drawEllipse(middle, 26 * unit, 26 * unit);
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[red ? Role::RedCore : Role::Slot]);
        painter.drawEllipse(middle, 8 * unit, 8 * unit);
        TextBlock({{name, Type::Strong}}, style).paintAround(painter, middle - QPointF(0, 42 * unit));
        const TextBlock words({{note, Type::QuietStrong}}, style, std::max(1.0, 120 * unit));
        words.paint(painter, {middle.x() + 36 * unit, words.topAt(middle.y())});
    };
    jack(at, QStringLiteral("VΩ"), state.note, true);
    jack(at + QPointF(0, 130 * unit), QStringLiteral("A"), state.other, false);
}

} // namespace

QString checkPictureWords(const CheckPictureState &state)
{
    switch (state.scene) {
    case Scene::Apart:
        return CheckPicture::tr("Drawing: the meter on ohms, both probes held apart, touching nothing");
    case Scene::Together:
        return CheckPicture::tr("Drawing: the meter on ohms, both tips pressed together");
    case Scene::Battery:
        return CheckPicture::tr("Drawing: volts with the straight line, red on the plus of a small battery, black on its minus");
    case Scene::WhereIsRed:
        return CheckPicture::tr("Drawing: red in the jack VΩ, the jack A empty");
    }
    Q_UNREACHABLE();
}

CheckPicture::CheckPicture(CheckPictureState state, QWidget *parent) : QWidget(parent), m_state(std::move(state))
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(checkPictureWords(m_state));
    followTheme(this);
}

void CheckPicture::setMeter(MeterState meter)
{
    m_state.meter = std::move(meter);
    update();
}

QSize CheckPicture::sizeHint() const
{
    return {250, 212};
}

QSize CheckPicture::minimumSizeHint() const
{
    return {150, 128};
}

void CheckPicture::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double unit = std::min(width() / kWide, height() / kHigh);
    const QPointF origin(0, (height() - kHigh * unit) / 2);
    const MeterPlace meter = placeMeter(QRectF(origin + QPointF(0, 6 * unit), QSizeF(190, 304) * unit), false, style);
    paintMeter(painter, meter, m_state.meter, false, true, style);
    if (m_state.scene == Scene::WhereIsRed) {
        paintJacks(painter, origin + QPointF(252, 110) * unit, m_state, unit, style);
        return;
    }
    if (m_state.scene == Scene::Battery)
        paintBattery(painter, QRectF(origin + QPointF(286, 82) * unit, QSizeF(80, 200) * unit), unit, style);
    Pair pair = pairOf(m_state.scene);
    for (Held *held : {&pair.red, &pair.black})
        held->tip = origin + held->tip * unit;
    paintLead(painter, Probe::Black, meter.com, pair.black, unit, style);
    paintLead(painter, Probe::Red, meter.volt, pair.red, unit, style);
}

} // namespace app
