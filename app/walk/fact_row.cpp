#include "app/walk/fact_row.h"

#include "app/paper/record.h"
#include "app/shared/run_label.h"
#include "app/shared/theme.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QPainter>

namespace app {

FactRow::FactRow(Standing mark, const QString &title, const QString &note, QWidget *parent)
    : QWidget(parent), m_mark(mark), m_row(new QHBoxLayout(this))
{
    const Theme &theme = Theme::current();
    m_row->setContentsMargins(theme.spx(30), theme.spx(4), 0, theme.spx(6));
    m_row->setSpacing(theme.spx(12));
    Runs runs{{title, Type::Strong}};
    if (!note.isEmpty())
        runs.push_back({QLatin1Char('\n') + note, Type::Quiet, Role::Ink2});
    m_row->addWidget(new RunLabel(std::move(runs)), 5, Qt::AlignTop);
    setAccessibleName(StandingWords::word(mark) + QStringLiteral(": ") + title);
    followTheme(this);
}

void FactRow::setValue(const QString &value)
{
    m_value = new RunLabel({{value, Type::Heading}});
    m_row->addWidget(m_value, 3, Qt::AlignTop);
    setAccessibleName(accessibleName() + QStringLiteral(", ") + value);
}

void FactRow::setMiddle(QWidget *widget)
{
    m_row->addWidget(widget, 5);
}

void FactRow::setEnd(const QString &quiet, const QString &strong)
{
    Runs runs;
    if (!quiet.isEmpty())
        runs.push_back({quiet + (strong.isEmpty() ? QString() : QStringLiteral("\n")), Type::Quiet, Role::Ink2});
    if (!strong.isEmpty())
        runs.push_back({strong, Type::QuietStrong});
    m_row->addWidget(new RunLabel(std::move(runs)), 4, Qt::AlignTop);
    setAccessibleName(accessibleName() + QStringLiteral(", ") + strong);
}

void FactRow::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintMark(painter, m_mark, {style.px(9), style.px(16)}, style);
    painter.setPen(QPen(style[Role::Rule], 1));
    painter.drawLine(QPointF(0, height() - 0.5), QPointF(width(), height() - 0.5));
}

void FactRow::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    m_row->setDirection(width() < Theme::current().px(520) ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

QStringList OutcomeWords::values()
{
    return {QStringLiteral("fixed"), QStringLiteral("not_fixed"), QStringLiteral("not_fitted"), QStringLiteral("dead_on_arrival")};
}

QString OutcomeWords::said(const QString &value)
{
    return qs(outcomeSaid(utf8(value)));
}

} // namespace app
