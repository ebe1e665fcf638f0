#include "app/shared/theme.h"

#include "app/shared/focus_ring.h"
#include "app/shared/widget_style.h"

#include <QApplication>
#include <QEvent>
#include <QWidget>

#include <algorithm>

namespace app {

Theme &Theme::current()
{
    static Theme theme;
    return theme;
}

bool isDark(const QPalette &palette)
{
    return palette.color(QPalette::Window).lightness() < 128;
}

QPalette widgetPalette(const Style &style)
{
    QPalette palette;
    const auto all = [&](QPalette::ColorRole role, Role colour) { palette.setColor(role, style[colour]); };
    all(QPalette::Window, Role::Desk);
    all(QPalette::WindowText, Role::Ink);
    all(QPalette::Base, Role::Sheet);
    all(QPalette::AlternateBase, Role::Well);
    all(QPalette::ToolTipBase, Role::Sheet);
    all(QPalette::ToolTipText, Role::Ink);
    all(QPalette::PlaceholderText, Role::Ink2);
    all(QPalette::Text, Role::Ink);
    all(QPalette::Button, Role::Sheet);
    all(QPalette::ButtonText, Role::Petrol);
    all(QPalette::BrightText, Role::Ink);
    all(QPalette::Highlight, Role::Petrol);
    all(QPalette::HighlightedText, Role::OnPetrol);
    all(QPalette::Link, Role::Petrol);
    all(QPalette::LinkVisited, Role::Petrol);
    all(QPalette::Light, Role::Sheet);
    all(QPalette::Midlight, Role::Well);
    all(QPalette::Mid, Role::Rule);
    all(QPalette::Dark, Role::Edge);
    all(QPalette::Shadow, Role::Edge);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, style[Role::Ink2]);
    return palette;
}

void Theme::install()
{
    if (m_installed)
        return;
    m_installed = true;
    QApplication::setStyle(new WidgetStyle);
    qApp->installEventFilter(this);
    installFocusRing();
    apply();
}

void Theme::setShadeWish(ShadeWish wish)
{
    m_wish = wish;
    apply();
}

void Theme::setTextPercent(int percent)
{
    m_percent = std::clamp(percent, kLeastPercent, kMostPercent);
    apply();
}

// The system's own palette is only seen while none of ours is set.
void Theme::apply()
{
    m_applying = true;
    Style next{Shade::Light, m_percent / 100.0};
    if (m_wish == ShadeWish::System) {
        QApplication::setPalette(QPalette());
        next.shade = isDark(QApplication::palette()) ? Shade::Dark : Shade::Light;
    } else if (m_wish == ShadeWish::Dark) {
        next.shade = Shade::Dark;
    }
    m_style = next;
    if (m_installed) {
        QApplication::setPalette(widgetPalette(m_style));
        QApplication::setFont(m_style.font(Type::Text));
    }
    m_applying = false;
    Q_EMIT changed();
}

bool Theme::eventFilter(QObject *object, QEvent *event)
{
    if (event->type() == QEvent::ThemeChange && m_wish == ShadeWish::System && !m_applying)
        QMetaObject::invokeMethod(this, &Theme::apply, Qt::QueuedConnection);
    return QObject::eventFilter(object, event);
}

void followTheme(QWidget *widget)
{
    QObject::connect(&Theme::current(), &Theme::changed, widget, [widget] {
        widget->updateGeometry();
        widget->update();
    });
}

} // namespace app
