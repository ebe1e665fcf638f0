#include "app/shared/focus_ring.h"

#include "app/shared/theme.h"

#include <QApplication>
#include <QFocusFrame>
#include <QMenu>
#include <QMenuBar>
#include <QPainter>
#include <QPointer>

namespace app {
namespace {

// QFocusFrame keeps the place: it follows moves, parents and scroll areas.
class Ring : public QFocusFrame
{
public:
    explicit Ring(QWidget *target)
    {
        setObjectName(QStringLiteral("focusRing"));
        setWidget(target);
        followTheme(this);
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        QPainter painter(this);
        paintFocusRing(painter, QRectF(rect()).adjusted(kFocusRoom, kFocusRoom, -kFocusRoom, -kFocusRoom),
                       Theme::current().style());
    }
};

bool ringed(const QWidget *widget)
{
    return widget && !widget->isWindow() && !qobject_cast<const QMenu *>(widget) && !qobject_cast<const QMenuBar *>(widget);
}

} // namespace

void paintFocusRing(QPainter &painter, const QRectF &around, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(style.pen(Role::Petrol, 3));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(around.adjusted(-3.5, -3.5, 3.5, 3.5), 5, 5);
    painter.restore();
}

void installFocusRing()
{
    static QPointer<Ring> ring;
    QObject::connect(qApp, &QApplication::focusChanged, qApp, [](QWidget *, QWidget *now) {
        delete ring;
        if (ringed(now)) {
            ring = new Ring(now);
            ring->show();
        }
    });
}

} // namespace app
