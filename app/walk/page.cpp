#include "app/walk/page.h"

#include <QKeyEvent>

namespace app {

Page::Page(QWidget *parent) : QWidget(parent) {}

bool Page::key(QKeyEvent *)
{
    return false;
}

bool isEnter(const QKeyEvent &event)
{
    return (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter) && !event.isAutoRepeat();
}

int digitOf(const QKeyEvent &event)
{
    const bool plain = !(event.modifiers() & ~Qt::KeypadModifier) && !event.isAutoRepeat();
    return plain && event.key() >= Qt::Key_1 && event.key() <= Qt::Key_9 ? event.key() - Qt::Key_0 : 0;
}

} // namespace app
