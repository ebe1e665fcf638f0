#include "app/shared/text_block.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QRegularExpression>

#include <algorithm>
#include <cmath>

namespace app {

QString plainText(const Runs &runs)
{
    QString text;
    for (const Run &run : runs)
        text += run.text;
    return text.replace(QLatin1Char('\n'), QLatin1Char(' '));
}

QString withKeptUnits(QString text)
{
    static const QRegularExpression unit(QStringLiteral("(?<=\\d) (?=(?:[kM]?Ω|[mk]?V|m?A|[µu]F|°[CF]|kW|W|%|min|s)(?:\\W|$))"));
    for (auto each = unit.globalMatch(text); each.hasNext();)
        text[each.next().capturedStart()] = QChar(QChar::Nbsp);
    return text;
}

TextBlock::TextBlock(const Runs &runs, const Style &style, double width, const Options &options)
{
    QString text;
    QList<QTextLayout::FormatRange> formats;
    for (const Run &run : runs) {
        QTextLayout::FormatRange range;
        range.start = static_cast<int>(text.size());
        range.length = static_cast<int>(run.text.size());
        range.format.setFont(style.font(run.type));
        range.format.setForeground(options.colour.isValid() ? options.colour : style[run.role]);
        formats.append(range);
        text += run.text;
    }
    text.replace(QLatin1Char('\n'), QChar(QChar::LineSeparator));
    text = withKeptUnits(text);
    m_layout = std::make_unique<QTextLayout>(text, style.font(runs.empty() ? Type::Text : runs.front().type));
    m_layout->setFormats(formats);
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setAlignment(options.align);
    m_layout->setTextOption(option);
    m_capital = QFontMetricsF(m_layout->font()).capHeight();
    layOut(width, options);
}

TextBlock::TextBlock(const Runs &runs, const Style &style, double width) : TextBlock(runs, style, width, Options{}) {}

void TextBlock::layOut(double width, const Options &options)
{
    double widest = 0;
    double y = 0;
    m_layout->beginLayout();
    for (QTextLine line = m_layout->createLine(); line.isValid(); line = m_layout->createLine()) {
        line.setLineWidth(width);
        line.setPosition({0, y});
        widest = std::max(widest, line.naturalTextWidth());
        y += line.height() * options.leading;
    }
    m_layout->endLayout();
    m_size = {std::ceil(widest), std::ceil(y)};
}

int TextBlock::lines() const
{
    return m_layout->lineCount();
}

double TextBlock::firstBaseline() const
{
    return lines() > 0 ? m_layout->lineAt(0).ascent() : 0;
}

double TextBlock::topAt(double middle) const
{
    if (lines() == 0)
        return middle;
    const QTextLine last = m_layout->lineAt(lines() - 1);
    const double top = firstBaseline() - m_capital;
    const double bottom = last.y() + last.ascent();
    return middle - (top + bottom) / 2;
}

void TextBlock::paint(QPainter &painter, QPointF topLeft) const
{
    m_layout->draw(&painter, topLeft);
}

void TextBlock::paintAround(QPainter &painter, QPointF middle) const
{
    paint(painter, {middle.x() - width() / 2, topAt(middle.y())});
}

double paintLine(QPainter &painter, const Run &run, const Style &style, QPointF leftMiddle, Qt::Alignment align)
{
    const TextBlock block({run}, style);
    double x = leftMiddle.x();
    if (align & Qt::AlignRight)
        x -= block.width();
    else if (align & Qt::AlignHCenter)
        x -= block.width() / 2;
    block.paint(painter, {x, block.topAt(leftMiddle.y())});
    return block.width();
}

double widestWord(const Runs &runs, const Style &style)
{
    double widest = 0;
    for (const Run &run : runs) {
        const QFontMetricsF metrics(style.font(run.type));
        const QStringList words = QString(run.text).replace(QLatin1Char('\n'), QLatin1Char(' ')).split(QLatin1Char(' '));
        for (const QString &word : words)
            widest = std::max(widest, metrics.horizontalAdvance(word));
    }
    return std::ceil(widest);
}

} // namespace app
