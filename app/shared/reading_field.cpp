#include "app/shared/reading_field.h"

#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QFontMetricsF>
#include <QKeyEvent>
#include <QPainter>

#include <cmath>

namespace app {

ReadingField::ReadingField(QWidget *parent) : QLineEdit(parent)
{
    setMaxLength(200);
    setAccessibleName(tr("Reading"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    dress();
    connect(&Theme::current(), &Theme::changed, this, &ReadingField::dress);
    connect(this, &QLineEdit::textEdited, this, [this] { Q_EMIT typed(reading()); });
}

void ReadingField::setUnit(const QString &unit)
{
    m_unit = unit;
    setAccessibleDescription(unit.isEmpty() ? QString() : tr("in %1; OL for over limit").arg(unit));
    dress();
}

void ReadingField::setNote(const QString &note)
{
    m_note = note;
    dress();
}

void ReadingField::setWaiting(bool waiting)
{
    m_waiting = waiting;
    update();
}

void ReadingField::setClosed(bool closed)
{
    setReadOnly(closed);
    dress();
    if (closed)
        setCursorPosition(0); // its beginning is seen
}

QString ReadingField::reading() const
{
    QString typed = text().trimmed();
    if (typed.count(QLatin1Char(',')) == 1 && !typed.contains(QLatin1Char('.')))
        typed.replace(QLatin1Char(','), QLatin1Char('.'));
    return typed;
}

QString ReadingField::hint() const
{
    const Theme &theme = Theme::current();
    const double needed = QFontMetricsF(theme.font(Type::Reading)).horizontalAdvance(text()) +
                          QFontMetricsF(theme.font(Type::Text)).horizontalAdvance(m_note) + theme.px(48);
    return isClosed() && !m_note.isEmpty() && needed <= width() ? m_note : m_unit; // the reading comes before the note
}

void ReadingField::dress()
{
    const Theme &theme = Theme::current();
    setFont(theme.font(Type::Reading));
    const QFontMetricsF metrics(theme.font(isClosed() ? Type::Text : Type::Say));
    const double right = hint().isEmpty() ? 0 : metrics.horizontalAdvance(hint()) + theme.px(20);
    setTextMargins(theme.spx(10), 0, static_cast<int>(std::ceil(right)), 0);
    updateGeometry();
    update();
}

void ReadingField::resizeEvent(QResizeEvent *event)
{
    QLineEdit::resizeEvent(event);
    dress();
}

QSize ReadingField::sizeHint() const
{
    return {Theme::current().spx(252), Theme::current().spx(54)};
}

QSize ReadingField::minimumSizeHint() const
{
    return {Theme::current().spx(160), Theme::current().spx(54)};
}

void ReadingField::paintEvent(QPaintEvent *event)
{
    QLineEdit::paintEvent(event);
    const Style &style = Theme::current().style();
    QPainter painter(this);
    const Run run{hint(), isClosed() ? Type::Text : Type::Safety, Role::Ink2};
    if (isClosed()) {
        paintLine(painter, run, style, {width() - style.px(14), height() / 2.0}, Qt::AlignRight);
    } else {
        QFont font = style.font(Type::Text);
        font.setPixelSize(qRound(style.px(22)));
        painter.setFont(font);
        painter.setPen(style[Role::Ink2]);
        painter.drawText(rect().adjusted(0, 0, -qRound(style.px(14)), 0), Qt::AlignRight | Qt::AlignVCenter, hint());
    }
    if (m_waiting)
        painter.fillRect(QRectF(style.px(14), height() - style.px(8), width() * 0.4, style.px(2)), style[Role::Ink]);
}

// `?` is no part of a reading and acts everywhere; a closed field leaves single letters and Backspace to the screen.
void ReadingField::keyPressEvent(QKeyEvent *event)
{
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && !isClosed()) {
        if (!event->isAutoRepeat())
            Q_EMIT taken();
        event->accept();
        return;
    }
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
    const bool screens = event->text() == QLatin1String("?") || (isClosed() && plain && event->key() != Qt::Key_Tab);
    if (screens)
        event->ignore();
    else
        QLineEdit::keyPressEvent(event);
}

} // namespace app
