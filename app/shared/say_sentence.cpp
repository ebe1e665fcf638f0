#include "app/shared/say_sentence.h"

#include "app/shared/text_block.h"
#include "app/shared/theme.h"

namespace app {

SaySentence::SaySentence(QWidget *parent) : SaySentence(QString(), Type::Say, Role::Ink, parent) {}

SaySentence::SaySentence(const QString &text, Type type, Role role, QWidget *parent) : QLabel(parent), m_type(type), m_role(role)
{
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    setFocusPolicy(Qt::TabFocus);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred); // its height follows from its width alone
    dress();
    connect(&Theme::current(), &Theme::changed, this, &SaySentence::dress);
    setSentence(text);
}

void SaySentence::setSentence(const QString &text)
{
    setText(withKeptUnits(text));
    setAccessibleName(text);
}

void SaySentence::setType(Type type)
{
    m_type = type;
    dress();
}

void SaySentence::dress()
{
    const Style &style = Theme::current().style();
    setFont(style.font(m_type));
    QPalette palette = widgetPalette(style);
    palette.setColor(QPalette::WindowText, style[m_role]);
    setPalette(palette);
}

} // namespace app
