#include "app/walk/choice_button.h"

#include "app/shared/key_button.h"
#include "app/shared/theme.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kPad = 14, kPictureHeight = 130;

} // namespace

ChoiceButton::ChoiceButton(const QString &head, const QString &text, const QString &key, QWidget *parent)
    : QAbstractButton(parent), m_head(head), m_text(text), m_key(key)
{
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setAccessibleName(head);
    setAccessibleDescription(key.isEmpty() ? text : tr("%1 Key: %2").arg(text, key));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    followTheme(this);
}

void ChoiceButton::setPicture(TestPictureState picture)
{
    m_picture = std::move(picture);
    updateGeometry();
    update();
}

Runs ChoiceButton::runs() const
{
    Runs runs{{m_head, Type::Title, Role::Petrol}};
    if (!m_text.isEmpty())
        runs.push_back({QLatin1Char('\n') + m_text, Type::Text});
    return runs;
}

double ChoiceButton::left() const
{
    const Style &style = Theme::current().style();
    return style.px(kPad) + (m_key.isEmpty() ? 0 : keyBoxSize(m_key, style).width() + style.px(14));
}

int ChoiceButton::heightForWidth(int width) const
{
    const Style &style = Theme::current().style();
    const TextBlock text(runs(), style, std::max(1.0, width - left() - style.px(kPad)));
    const double picture = m_picture ? kPictureHeight : 0; // pictures do not grow with the text
    return static_cast<int>(std::ceil(text.height() + picture + style.px(2 * kPad - 4)));
}

QSize ChoiceButton::sizeHint() const
{
    const int width = Theme::current().spx(340);
    return {width, heightForWidth(width)};
}

QSize ChoiceButton::minimumSizeHint() const
{
    const Style &style = Theme::current().style();
    return {static_cast<int>(std::ceil(left() + widestWord(runs(), style) + style.px(kPad))), Theme::current().spx(40)};
}

void ChoiceButton::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool marked = isDown() || isChecked() || hasFocus();
    painter.setPen(QPen(style[underMouse() || isDown() ? Role::PetrolDown : Role::Petrol], 2));
    painter.setBrush(style[marked ? Role::Tint : Role::Sheet]);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4, 4);
    const TextBlock text(runs(), style, std::max(1.0, width() - left() - style.px(kPad)));
    const double top = style.px(kPad - 2);
    text.paint(painter, {left(), top});
    if (m_picture) {
        const double from = top + text.height() + style.px(4);
        paintTestPicture(painter, QRectF(style.px(kPad), from, width() - 2 * style.px(kPad), height() - from - style.px(8)),
                         *m_picture, style);
    }
    if (!m_key.isEmpty())
        paintKeyBox(painter, m_key, style, style.px(kPad), top + style.px(11), style[Role::Petrol]);
}

void ChoiceButton::keyPressEvent(QKeyEvent *event)
{
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
        QAbstractButton::keyPressEvent(event);
        return;
    }
    if (!event->isAutoRepeat())
        click();
    event->accept();
}

} // namespace app
