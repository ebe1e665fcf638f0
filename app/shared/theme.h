#pragma once
// The program's present style: light, dark or as the system says; text from 100 to 250 %.
#include "app/shared/style.h"

#include <QObject>
#include <QPalette>

class QWidget;

namespace app {

enum class ShadeWish { System, Light, Dark };

class Theme : public QObject
{
    Q_OBJECT
public:
    static constexpr int kLeastPercent = 100;
    static constexpr int kMostPercent = 250;
    static constexpr int kStepPercent = 25;

    static Theme &current(); // needs a QApplication

    // Sets the widget style, palette and font of the application and follows the system from now on. Once, at start.
    void install();
    void setShadeWish(ShadeWish wish);
    void setTextPercent(int percent); // clamped to 100 … 250

    [[nodiscard]] const Style &style() const { return m_style; }
    [[nodiscard]] ShadeWish shadeWish() const { return m_wish; }
    [[nodiscard]] int textPercent() const { return m_percent; }
    [[nodiscard]] QFont font(Type type) const { return m_style.font(type); }
    [[nodiscard]] QColor colour(Role role) const { return m_style[role]; }
    [[nodiscard]] double px(double at100) const { return m_style.px(at100); }
    [[nodiscard]] int spx(double at100) const { return qRound(m_style.px(at100)); }

Q_SIGNALS:
    // Colours or text size are different now: measure again and repaint.
    void changed();

protected:
    bool eventFilter(QObject *object, QEvent *event) override;

private:
    Theme() = default;
    void apply();

    Style m_style;
    ShadeWish m_wish = ShadeWish::System;
    int m_percent = kLeastPercent;
    bool m_installed = false;
    bool m_applying = false;
};

// Text on a dark ground.
bool isDark(const QPalette &palette);
// The palette standard widgets are drawn with.
QPalette widgetPalette(const Style &style);
// Calls updateGeometry() and update() of a self-painted widget whenever the theme changes.
void followTheme(QWidget *widget);

} // namespace app
