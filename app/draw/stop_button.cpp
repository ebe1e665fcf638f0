#include "app/draw/stop_button.h"

#include "app/shared/key_button.h"
#include "app/shared/theme.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace app {
namespace {

constexpr double kPad = 10;

QString keyText()
{
    return QStringLiteral("F12");
}

} // namespace

StopButton::StopButton(Qt::Orientation orientation, QWidget *parent) : QAbstractButton(parent), m_orientation(orientation)
{
    setText(tr("Stop"));
    setAccessibleName(tr("Stop: gas, smoke, shock, water"));
    setAccessibleDescription(tr("Key: %1").arg(keyText()));
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    connect(this, &QAbstractButton::clicked, this, [this] { Q_EMIT stopped(std::exchange(m_pressed, StopWord::Unsaid)); });
    followTheme(this);
}

void StopButton::setOrientation(Qt::Orientation orientation)
{
    m_orientation = orientation;
    updateGeometry();
    update();
}

double StopButton::headWidth() const
{
    return TextBlock({{tr("Stop"), m_orientation == Qt::Vertical ? Type::Heading : Type::Strong}}, Theme::current().style()).width();
}

// The four words, each with a comma but the last; in two lines where the button stands.
std::vector<StopButton::Word> StopButton::words() const
{
    const Style &style = Theme::current().style();
    std::vector<Word> words{{StopWord::Gas, tr("gas,"), {}}, {StopWord::Smoke, tr("smoke,"), {}},
                            {StopWord::Shock, tr("shock,"), {}}, {StopWord::Water, tr("water"), {}}};
    const bool standing = m_orientation == Qt::Vertical;
    const double line = style.px(standing ? 16 : 30);
    double x = standing ? style.px(kPad) : style.px(14) + headWidth() + style.px(10);
    double y = standing ? style.px(32) : (sizeHint().height() - line) / 2;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const double width = TextBlock({{words[i].text, Type::Quiet}}, style).width();
        if (standing && i == 2) {
            x = style.px(kPad);
            y += line;
        }
        words[i].rect = {x, y, width, line};
        x += width + style.px(4);
    }
    return words;
}

QRectF StopButton::wordRect(StopWord word) const
{
    for (const Word &each : words())
        if (each.word == word)
            return each.rect;
    return {};
}

QSize StopButton::sizeHint() const
{
    const Style &style = Theme::current().style();
    const double key = keyBoxSize(keyText(), style).width();
    if (m_orientation == Qt::Horizontal) {
        double width = style.px(14) + headWidth() + style.px(10);
        for (const QString &word : {tr("gas,"), tr("smoke,"), tr("shock,"), tr("water")})
            width += TextBlock({{word, Type::Quiet}}, style).width() + style.px(4);
        return {static_cast<int>(std::ceil(width + key + style.px(8 + 12))), Theme::current().spx(38)};
    }
    double width = style.px(2 * kPad) + headWidth() + style.px(10) + key;
    for (const Word &word : words())
        width = std::max(width, word.rect.right() + style.px(kPad));
    return {static_cast<int>(std::ceil(width)), static_cast<int>(std::ceil(words().back().rect.bottom() + style.px(6)))};
}

QSize StopButton::minimumSizeHint() const
{
    return sizeHint();
}

void StopButton::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    const bool standing = m_orientation == Qt::Vertical;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Role petrol = isDown() || underMouse() ? Role::PetrolDown : Role::Petrol;
    painter.setPen(QPen(style[petrol], 3));
    painter.setBrush(style[isDown() ? Role::Tint : Role::Sheet]);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5), 3, 3);
    const double headY = standing ? style.px(19) : height() / 2.0;
    paintLine(painter, {tr("Stop"), standing ? Type::Heading : Type::Strong, petrol}, style, {style.px(standing ? kPad : 14), headY});
    for (const Word &word : words())
        paintLine(painter, {word.text, Type::Quiet}, style, {word.rect.left(), word.rect.center().y()});
    const double key = keyBoxSize(keyText(), style).width();
    paintKeyBox(painter, keyText(), style, width() - key - style.px(standing ? kPad : 12), headY, style[petrol]);
}

// Enter stops as Space does, once for each press.
void StopButton::keyPressEvent(QKeyEvent *event)
{
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
        QAbstractButton::keyPressEvent(event);
        return;
    }
    if (!event->isAutoRepeat())
        click();
    event->accept();
}

void StopButton::mouseReleaseEvent(QMouseEvent *event)
{
    m_pressed = StopWord::Unsaid;
    for (const Word &word : words())
        if (word.rect.adjusted(-2, -2, 2, 2).contains(event->position()))
            m_pressed = word.word;
    QAbstractButton::mouseReleaseEvent(event);
    m_pressed = StopWord::Unsaid;
}

} // namespace app
