#include "app/draw/number_line.h"

#include "app/draw/axis.h"
#include "app/shared/fit_height.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <cmath>

namespace app {

QString judgementWord(Judgement judgement)
{
    switch (judgement) {
    case Judgement::Good: return NumberLine::tr("good");
    case Judgement::NoConclusion: return NumberLine::tr("no conclusion");
    case Judgement::Bad: return NumberLine::tr("bad");
    }
    Q_UNREACHABLE();
}

QString numberLineWords(const NumberLineState &state)
{
    QStringList words;
    if (!state.quantity.isEmpty())
        words += state.quantity;
    for (const auto &band : state.bands) {
        const QString word = judgementWord(band.is);
        words += state.numbers
            ? NumberLine::tr("%1: %2 to %3 %4").arg(word, tickText(band.from), tickText(band.to), state.unit)
            : word;
    }
    if (state.over)
        words += NumberLine::tr("OL, over limit: %1").arg(judgementWord(*state.over));
    for (const auto &printed : state.printed)
        words += printed.text;
    for (const auto &flag : state.flags) {
        QString said = flag.over && flag.text.isEmpty() ? NumberLine::tr("OL") : flag.text;
        if (!flag.over && flag.halfWidth > 0)
            said = NumberLine::tr("%1, give or take %2").arg(said, tickText(flag.halfWidth));
        words += (flag.earlier ? NumberLine::tr("earlier reading %1") : NumberLine::tr("reading %1")).arg(said);
    }
    return words.join(QStringLiteral("; "));
}

NumberLine::NumberLine(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    followHeight(this);
    followTheme(this);
}

void NumberLine::setState(NumberLineState state)
{
    m_state = std::move(state);
    setAccessibleName(numberLineWords(m_state));
    fitHeight(this);
    update();
}

QSize NumberLine::sizeHint() const
{
    const int width = Theme::current().spx(m_state.small ? 212 : 450);
    return {width, heightForWidth(width)};
}

QSize NumberLine::minimumSizeHint() const
{
    return {Theme::current().spx(m_state.small ? 120 : 300), 0};
}

int NumberLine::heightForWidth(int width) const
{
    return static_cast<int>(std::ceil(numberLineHeight(m_state, width, Theme::current().style())));
}

void NumberLine::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    paintNumberLine(painter, rect(), m_state, Theme::current().style());
}

} // namespace app
