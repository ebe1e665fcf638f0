#include "app/shared/fit_height.h"

#include "app/shared/theme.h"

#include <QEvent>
#include <QWidget>

namespace app {
namespace {

class Follower : public QObject
{
public:
    explicit Follower(QWidget *widget) : QObject(widget) { widget->installEventFilter(this); }

protected:
    bool eventFilter(QObject *object, QEvent *event) override
    {
        if (event->type() == QEvent::Resize)
            fitHeight(static_cast<QWidget *>(object));
        return false;
    }
};

} // namespace

// A fixed vertical policy would hold a wrapped text to the height of its size hint, one line.
void followHeight(QWidget *widget)
{
    QSizePolicy policy = widget->sizePolicy();
    policy.setVerticalPolicy(QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    widget->setSizePolicy(policy);
    new Follower(widget);
    QObject::connect(&Theme::current(), &Theme::changed, widget, [widget] { fitHeight(widget); });
}

void fitHeight(QWidget *widget)
{
    if (widget->testAttribute(Qt::WA_Resized) || widget->isVisible())
        widget->setMaximumHeight(widget->heightForWidth(widget->width()));
    widget->updateGeometry();
}

} // namespace app
