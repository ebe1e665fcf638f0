#include "app/draw/curve_view.h"

#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

namespace app {

QString curveWords(const CurveState &state)
{
    QStringList words;
    if (!state.quantity.isEmpty())
        words += state.quantity;
    for (const auto &curve : state.curves)
        words += plainText({{curve.name}});
    for (const auto &reading : state.readings) {
        const QString said = plainText({{reading.value + QStringLiteral(", ") + reading.says}});
        words += (reading.earlier ? CurveView::tr("earlier reading %1") : CurveView::tr("reading %1")).arg(said);
    }
    return words.join(QStringLiteral("; "));
}

CurveView::CurveView(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    followTheme(this);
}

void CurveView::setState(CurveState state)
{
    m_state = std::move(state);
    setAccessibleName(curveWords(m_state));
    update();
}

QSize CurveView::sizeHint() const
{
    return {Theme::current().spx(420), Theme::current().spx(285)};
}

QSize CurveView::minimumSizeHint() const
{
    return {Theme::current().spx(300), Theme::current().spx(220)};
}

void CurveView::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    paintCurve(painter, rect(), m_state, Theme::current().style());
}

} // namespace app
