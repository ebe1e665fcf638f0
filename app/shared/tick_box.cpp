#include "app/shared/tick_box.h"

#include "app/shared/fit_height.h"
#include "app/shared/theme.h"

#include <QPainter>
#include <QStyleOptionButton>

#include <algorithm>
#include <cmath>

namespace app {

TickBox::TickBox(const QString &words, const QString &number, QWidget *parent)
    : QCheckBox(parent), m_words(words), m_number(number)
{
    const QString spoken = number.isEmpty() ? words : tr("%1: %2").arg(number, words);
    setText(QString(spoken).replace(QLatin1Char('&'), QStringLiteral("&&")));
    setAccessibleName(spoken);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    followHeight(this);
    followTheme(this);
}

void TickBox::setCompact(bool compact)
{
    m_compact = compact;
    fitHeight(this);
    update();
}

Runs TickBox::runs() const
{
    const Type type = m_compact ? Type::Text : Type::Safety;
    if (m_number.isEmpty())
        return {{m_words, type}};
    return {{m_number + QStringLiteral("  "), m_compact ? Type::Strong : Type::SafetyStrong}, {m_words, type}};
}

double TickBox::boxSide() const
{
    return Theme::current().px(m_compact ? 24 : 30);
}

double TickBox::textLeft() const
{
    return boxSide() + Theme::current().px(m_compact ? 10 : 14);
}

QSize TickBox::sizeHint() const
{
    const TextBlock text(runs(), Theme::current().style());
    const int width = static_cast<int>(std::ceil(textLeft() + text.width() + 1));
    return {width, heightForWidth(width)};
}

QSize TickBox::minimumSizeHint() const
{
    return {static_cast<int>(std::ceil(textLeft() + widestWord(runs(), Theme::current().style()) + 1)),
            static_cast<int>(std::ceil(boxSide()))};
}

int TickBox::heightForWidth(int width) const
{
    const TextBlock text(runs(), Theme::current().style(), std::max(1.0, width - textLeft()));
    const double room = Theme::current().px(m_compact ? 6 : 15);
    return static_cast<int>(std::ceil(std::max(boxSide(), text.height()) + room));
}

void TickBox::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    const TextBlock text(runs(), style, std::max(1.0, width() - textLeft()));
    const double middle = (height() - (m_compact ? 0 : 1)) / 2.0;

    QStyleOptionButton option;
    initStyleOption(&option);
    const int side = qRound(boxSide());
    option.rect = QRect(0, qRound(middle - side / 2.0), side, side);
    this->style()->drawPrimitive(QStyle::PE_IndicatorCheckBox, &option, &painter, this);
    text.paint(painter, {textLeft(), text.topAt(middle)});
    if (!m_compact) {
        painter.setPen(QPen(style[Role::Rule], 1));
        painter.drawLine(QPointF(0, height() - 0.5), QPointF(width(), height() - 0.5));
    }
}

bool TickBox::hitButton(const QPoint &at) const
{
    return rect().contains(at);
}

} // namespace app
