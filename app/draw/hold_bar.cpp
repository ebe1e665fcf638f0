#include "app/draw/hold_bar.h"

#include "app/draw/safety_colours.h"
#include "app/draw/sign.h"
#include "app/shared/fit_height.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kLeft = 58;

TextBlock words(const QString &sentence, const Style &style, double width)
{
    TextBlock::Options options;
    options.colour = QColor::fromRgba(safety::kBlack);
    return TextBlock({{sentence, Type::SafetyStrong}}, style, std::max(1.0, width - style.px(kLeft + 16)), options);
}

} // namespace

HoldBar::HoldBar(const QString &sentence, QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    followHeight(this);
    setSentence(sentence);
    followTheme(this);
}

void HoldBar::setSentence(const QString &sentence)
{
    m_sentence = sentence;
    setAccessibleName(tr("Warning: %1").arg(sentence));
    fitHeight(this);
    update();
}

QSize HoldBar::sizeHint() const
{
    const int width = Theme::current().spx(600);
    return {width, heightForWidth(width)};
}

QSize HoldBar::minimumSizeHint() const
{
    return {Theme::current().spx(240), 0};
}

int HoldBar::heightForWidth(int width) const
{
    const Style &style = Theme::current().style();
    return static_cast<int>(std::ceil(std::max(style.px(46), words(m_sentence, style, width).height() + style.px(20))));
}

void HoldBar::paintEvent(QPaintEvent *)
{
    const Style &style = Theme::current().style();
    const QColor black = QColor::fromRgba(safety::kBlack);
    const QColor orange = QColor::fromRgba(safety::kOrange);
    QPainter painter(this);
    painter.fillRect(rect(), orange);
    painter.setPen(QPen(style.dark() ? QColor::fromRgba(safety::kWhite) : black, 2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    const double side = style.px(30);
    paintAlert(painter, {style.px(16), (height() - side) / 2, side, side}, black, orange);
    const TextBlock text = words(m_sentence, style, width());
    text.paint(painter, {style.px(kLeft), (height() - text.height()) / 2});
}

} // namespace app
