#include "app/draw/meter_tips.h"

#include "app/draw/meter_picture.h"
#include "app/draw/probe_picture.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <array>

namespace app {
namespace {

constexpr double kMeterWide = 200, kMeterHigh = 320, kBelow = 76; // units of the drawing; below it the probes

struct Tip
{
    QPointF at; // in units of the drawing
    QString head, text;
};

std::array<Tip, 7> tips()
{
    return {{{{118, 70}, MeterTips::tr("digits, not a needle"), MeterTips::tr("“OL” shows by itself")},
             {{112, 126}, MeterTips::tr("Ω that starts at 0.1"), MeterTips::tr("the lowest range decides most tests")},
             {{152, 144}, MeterTips::tr("a tone for continuity"), MeterTips::tr("it beeps with the number")},
             {{126, 210}, MeterTips::tr("finds the range by itself"), MeterTips::tr("one thing less to get wrong")},
             {{144, 242}, MeterTips::tr("CAT III 300 V or more, printed"), MeterTips::tr("on the meter and on both probes")},
             {{54, 299}, MeterTips::tr("a fuse named beside the A jack"), MeterTips::tr("ceramic, not glass")},
             {{96, 344}, MeterTips::tr("probes with finger guards"), MeterTips::tr("and tips that can be covered")}}};
}

} // namespace

MeterTips::MeterTips(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    QStringList words;
    for (const Tip &tip : tips())
        words += tr("%1: %2").arg(tip.head, tip.text);
    setAccessibleName(tr("Drawing of a meter; look for: %1").arg(words.join(QStringLiteral("; "))));
    followTheme(this);
}

QSize MeterTips::sizeHint() const
{
    return {Theme::current().spx(620), Theme::current().spx(460)};
}

QSize MeterTips::minimumSizeHint() const
{
    return {Theme::current().spx(380), Theme::current().spx(330)};
}

void MeterTips::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double unit = std::min(height() / (kMeterHigh + kBelow), width() * 0.42 / kMeterWide);
    const MeterPlace meter = placeMeter(QRectF(0, 0, kMeterWide * unit, kMeterHigh * unit), false, style);
    paintMeter(painter, meter, {true, Dial::Ohm, QStringLiteral("0.2"), QStringLiteral("Ω"), false, false}, false, false, style);
    const QRectF mark(56, 232, 84, 18); // between dial and jacks
    painter.setPen(style.pen(Role::Line, 1.5 * unit));
    painter.setBrush(style[Role::Sheet]);
    painter.drawRect(QRectF(mark.topLeft() * unit, mark.size() * unit));
    QFont small = style.font(Type::QuietStrong);
    small.setPixelSize(std::max(7, qRound(11 * unit)));
    painter.setFont(small);
    painter.setPen(style[Role::Ink]);
    painter.drawText(QRectF(mark.topLeft() * unit, mark.size() * unit), Qt::AlignCenter, QStringLiteral("CAT III 300 V"));
    paintProbe(painter, Probe::Red, QPointF(12, 344) * unit, {1, 0}, unit, style);
    paintProbe(painter, Probe::Black, QPointF(92, 374) * unit, {1, 0}, unit, style);
    const auto all = tips();
    const double left = kMeterWide * unit + style.px(44), room = std::max(1.0, width() - left);
    const double step = height() / static_cast<double>(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const TextBlock head({{all[i].head, Type::Strong}}, style, room);
        const TextBlock text({{all[i].text, Type::Quiet, Role::Ink2}}, style, room);
        const double top = step * static_cast<double>(i) + (step - head.height() - text.height()) / 2;
        const QPointF dot(left - style.px(12), top + head.height() / 2);
        painter.setPen(QPen(style[Role::Detail], 1));
        painter.drawLine(dot, all[i].at * unit);
        painter.setPen(Qt::NoPen);
        painter.setBrush(style[Role::Line]);
        painter.drawEllipse(dot, 4, 4);
        painter.drawEllipse(all[i].at * unit, 2.5, 2.5);
        head.paint(painter, {left, top});
        text.paint(painter, {left, top + head.height()});
    }
}

} // namespace app
