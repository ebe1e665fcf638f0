#include "app/shared/say_block.h"

#include "app/shared/run_label.h"
#include "app/shared/theme.h"

#include <QFontMetrics>
#include <QRegularExpression>
#include <QVBoxLayout>

namespace app {
namespace {

constexpr int kMostLines = 2;

} // namespace

std::pair<QString, QString> firstSentence(const QString &text)
{
    static const QRegularExpression end(QStringLiteral("[.?!]\\s+(?=\\p{Lu})"));
    const auto match = end.match(text);
    if (!match.hasMatch())
        return {text, {}};
    return {text.left(match.capturedStart() + 1), text.mid(match.capturedEnd())};
}

SayBlock::SayBlock(const QString &text, QWidget *parent)
    : QWidget(parent), m_text(text), m_sentence(new SaySentence(text)), m_rest(new RunLabel)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(Theme::current().spx(6));
    layout->addWidget(m_sentence);
    layout->addWidget(m_rest);
    m_rest->hide();
    setFocusProxy(m_sentence);
    connect(&Theme::current(), &Theme::changed, this, &SayBlock::fit);
}

void SayBlock::fit()
{
    const QFontMetrics metrics(m_sentence->font());
    const QRect room(0, 0, std::max(1, width()), QWIDGETSIZE_MAX);
    const bool large = metrics.boundingRect(room, Qt::TextWordWrap, m_text).height() <= kMostLines * metrics.lineSpacing();
    const auto [first, rest] = large ? std::pair<QString, QString>(m_text, {}) : firstSentence(m_text);
    if (m_rest->isHidden() == rest.isEmpty() && m_rest->text() == rest)
        return;
    m_sentence->setSentence(first);
    m_sentence->setAccessibleName(m_text);
    m_rest->setText(rest, Type::Text);
    m_rest->setVisible(!rest.isEmpty());
}

void SayBlock::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    fit();
}

} // namespace app
