#include "app/shared/key_button.h"

#include "app/shared/fit_height.h"
#include "app/shared/theme.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {

QSizeF keyBoxSize(const QString &key, const Style &style)
{
    const QFontMetricsF metrics(style.font(Type::Key));
    return {metrics.horizontalAdvance(key) + style.px(14), metrics.height() + style.px(3)};
}

double paintKeyBox(QPainter &painter, const QString &key, const Style &style, double left, double middleY, QColor ink)
{
    const QSizeF size = keyBoxSize(key, style);
    const QRectF box(left, middleY - size.height() / 2, size.width(), size.height());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, 1.25));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(box.adjusted(0.75, 0.75, -0.75, -0.75), 3, 3);
    TextBlock::Options options;
    options.colour = ink;
    const TextBlock text({{key, Type::Key}}, style, TextBlock::kNoLimit, options);
    text.paint(painter, {box.center().x() - text.width() / 2, text.topAt(box.center().y())});
    painter.restore();
    return size.width();
}

KeyButton::KeyButton(const QString &words, const QString &key, QWidget *parent) : QPushButton(parent)
{
    setAutoDefault(false);
    setDefault(false);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Minimum);
    followHeight(this);
    setWords(words);
    setKey(key);
    followTheme(this);
}

void KeyButton::setWords(const QString &words)
{
    m_words = words;
    setText(QString(words).replace(QLatin1Char('&'), QStringLiteral("&&")));
    setAccessibleName(words);
    fitHeight(this);
    update();
}

void KeyButton::setKey(const QString &key)
{
    m_key = key;
    setAccessibleDescription(key.isEmpty() ? QString() : tr("Key: %1").arg(key));
    fitHeight(this);
    update();
}

void KeyButton::setFace(Face face)
{
    m_face = face;
    fitHeight(this);
    update();
}

void KeyButton::setSize(Size size)
{
    m_size = size;
    fitHeight(this);
}

void KeyButton::setSpread(bool spread)
{
    m_spread = spread;
    QSizePolicy policy = sizePolicy();
    policy.setHorizontalPolicy(spread ? QSizePolicy::Preferred : QSizePolicy::Minimum); // long words wrap
    setSizePolicy(policy);
    update();
}

Runs KeyButton::runs() const
{
    const bool large = m_size == Size::Safety || m_size == Size::Large;
    return {{m_words, m_face == Face::Link ? Type::Text : large ? Type::SafetyStrong : Type::Strong, Role::Petrol}};
}

double KeyButton::padding() const
{
    return Theme::current().px(m_face == Face::Link ? 0 : m_size == Size::Row ? 10 : 14);
}

double KeyButton::keyWidth() const
{
    if (m_key.isEmpty())
        return 0;
    return keyBoxSize(m_key, Theme::current().style()).width() + Theme::current().px(m_face == Face::Link ? 2 : 10);
}

double KeyButton::leastHeight() const
{
    switch (m_size) {
    case Size::Row:
        return Theme::current().px(32);
    case Size::Normal:
        return Theme::current().px(40);
    case Size::Safety:
        return Theme::current().px(54);
    case Size::Large:
        return Theme::current().px(60);
    }
    Q_UNREACHABLE();
}

QSize KeyButton::sizeHint() const
{
    const TextBlock text(runs(), Theme::current().style());
    return {static_cast<int>(std::ceil(text.width() + keyWidth() + 2 * padding() + 4)),
            static_cast<int>(std::ceil(leastHeight()))};
}

QSize KeyButton::minimumSizeHint() const
{
    const double words = widestWord(runs(), Theme::current().style());
    return {static_cast<int>(std::ceil(words + keyWidth() + 2 * padding() + 4)), static_cast<int>(std::ceil(leastHeight()))};
}

int KeyButton::heightForWidth(int width) const
{
    const TextBlock text(runs(), Theme::current().style(), std::max(1.0, width - keyWidth() - 2 * padding() - 2));
    return static_cast<int>(std::ceil(std::max(leastHeight(), text.height() + Theme::current().px(12))));
}

KeyButton::Colours KeyButton::colours() const
{
    const Style &style = Theme::current().style();
    if (!isEnabled())
        return {style[Role::Edge], Qt::transparent, style[Role::Ink2]};
    const bool down = isDown() || underMouse();
    const QColor petrol = style[down ? Role::PetrolDown : Role::Petrol];
    switch (m_face) {
    case Face::Filled:
        return {petrol, petrol, style[Role::OnPetrol]};
    case Face::Outlined:
        return {petrol, style[isDown() || isChecked() ? Role::Tint : Role::Sheet], petrol};
    case Face::Link:
        return {petrol, Qt::transparent, petrol};
    }
    Q_UNREACHABLE();
}

void KeyButton::paintFrame(QPainter &painter, const Colours &colours) const
{
    if (m_face == Face::Link)
        return;
    QPen pen(colours.edge, 2);
    if (!isEnabled())
        pen.setDashPattern({4, 2.5});
    painter.setPen(pen);
    painter.setBrush(colours.fill);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4, 4);
}

void KeyButton::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Colours ink = colours();
    paintFrame(painter, ink);

    TextBlock::Options options;
    options.colour = ink.text;
    options.align = m_spread ? Qt::AlignLeft : Qt::AlignHCenter;
    const double room = std::max(1.0, width() - keyWidth() - 2 * padding() - 2);
    const double wish = TextBlock(runs(), style).width() + 0.5;
    const TextBlock text(runs(), style, std::min(room, wish), options);
    const double block = std::min(room, wish) + keyWidth();
    const double left = m_spread || m_face == Face::Link ? padding() + 1 : (width() - block) / 2;
    const QPointF topLeft(left, text.topAt(height() / 2.0));
    text.paint(painter, topLeft);
    if (m_face == Face::Link) {
        painter.setPen(QPen(ink.text, 1));
        painter.drawLine(topLeft + QPointF(0, text.height() - 1), topLeft + QPointF(text.width(), text.height() - 1));
    }
    if (!m_key.isEmpty()) {
        const double box = keyBoxSize(m_key, style).width();
        const double x = m_spread ? width() - padding() - box : left + block - box;
        paintKeyBox(painter, m_key, style, x, height() / 2.0, ink.text);
    }
}

void KeyButton::keyPressEvent(QKeyEvent *event)
{
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
        QPushButton::keyPressEvent(event);
        return;
    }
    if (!event->isAutoRepeat())
        click();
    event->accept();
}

void KeyButton::enterEvent(QEnterEvent *event)
{
    QPushButton::enterEvent(event);
    update();
}

void KeyButton::leaveEvent(QEvent *event)
{
    QPushButton::leaveEvent(event);
    update();
}

} // namespace app
