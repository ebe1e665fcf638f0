#include "app/draw/seven_segments.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

// Bits a to g: top, upper right, lower right, bottom, lower left, upper left, middle.
unsigned segmentsOf(QChar letter)
{
    switch (letter.toUpper().unicode()) {
    case u'0':
    case u'O': return 0b0111111;
    case u'1': return 0b0000110;
    case u'2': return 0b1011011;
    case u'3': return 0b1001111;
    case u'4': return 0b1100110;
    case u'5': return 0b1101101;
    case u'6': return 0b1111101;
    case u'7': return 0b0000111;
    case u'8': return 0b1111111;
    case u'9': return 0b1101111;
    case u'L': return 0b0111000;
    case u'-':
    case u'\u2212': return 0b1000000;
    default: return 0;
    }
}

bool isPoint(QChar letter)
{
    return letter == QLatin1Char('.') || letter == QLatin1Char(',');
}

// In a cell 0.56 wide and 1 high; segments 0.13 thick with pointed ends.
constexpr double kWidth = 0.56, kThick = 0.13, kAdvance = 0.74, kPoint = 0.05, kSlant = 0.12;

QPolygonF bar(double x1, double y1, double x2, double y2)
{
    const double h = kThick / 2;
    if (y1 == y2)
        return QPolygonF({{x1, y1}, {x1 + h, y1 - h}, {x2 - h, y1 - h}, {x2, y1}, {x2 - h, y1 + h}, {x1 + h, y1 + h}});
    return QPolygonF({{x1, y1}, {x1 + h, y1 + h}, {x1 + h, y2 - h}, {x1, y2}, {x1 - h, y2 - h}, {x1 - h, y1 + h}});
}

void paintDigit(QPainter &painter, unsigned segments)
{
    const double l = kThick / 2;
    const double r = kWidth - kThick / 2;
    const double t = kThick / 2;
    const double b = 1 - kThick / 2;
    const double g = 0.02; // the gap between two segments
    const QPolygonF shapes[] = {bar(l + g, t, r - g, t), bar(r, t + g, r, 0.5 - g), bar(r, 0.5 + g, r, b - g), bar(l + g, b, r - g, b),
                                bar(l, 0.5 + g, l, b - g), bar(l, t + g, l, 0.5 - g), bar(l + g, 0.5, r - g, 0.5)};
    for (unsigned i = 0; i < 7; ++i)
        if (segments & (1U << i))
            painter.drawPolygon(shapes[i]);
}

} // namespace

void paintSevenSegments(QPainter &painter, const QString &text, const QRectF &box, QColor ink)
{
    double width = 0;
    for (const QChar letter : text)
        width += isPoint(letter) ? kPoint : kAdvance;
    if (width <= 0)
        return;
    const double height = std::min(box.height(), box.width() / (width + kSlant));
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.translate(box.right() - width * height, box.center().y() - height / 2);
    painter.scale(height, height);
    painter.shear(-kSlant, 0);
    painter.translate(kSlant * 0.5, 0);
    for (const QChar letter : text) {
        if (isPoint(letter)) {
            painter.drawRect(QRectF(-(kAdvance - kWidth) + 0.045, 1 - kThick, kThick, kThick));
            painter.translate(kPoint, 0);
        } else {
            paintDigit(painter, segmentsOf(letter));
            painter.translate(kAdvance, 0);
        }
    }
    painter.restore();
}

} // namespace app
