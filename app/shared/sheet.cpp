#include "app/shared/sheet.h"

#include "app/shared/theme.h"

#include <QPainter>

namespace app {

Sheet::Sheet(Role surface, QWidget *parent) : QFrame(parent), m_surface(surface)
{
    setFrameShape(QFrame::NoFrame);
    followTheme(this);
}

void Sheet::setLine(bool shown)
{
    m_line = shown;
    update();
}

void Sheet::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.fillRect(rect(), style[m_surface]);
    if (m_line) {
        painter.setPen(QPen(style[Role::Rule], 1));
        painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
    }
}

} // namespace app
