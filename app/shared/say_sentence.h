#pragma once
// The sentence of the screen: what to do, or what the reading says. Plain text, wrapped, reached by Tab so that a
// screen reader can go back to it.
#include "app/shared/style.h"

#include <QLabel>

namespace app {

class SaySentence : public QLabel
{
    Q_OBJECT
public:
    explicit SaySentence(QWidget *parent = nullptr);
    explicit SaySentence(const QString &text, Type type = Type::Say, Role role = Role::Ink, QWidget *parent = nullptr);

    void setSentence(const QString &text); // never read as markup
    void setType(Type type);

private:
    void dress();

    Type m_type = Type::Say;
    Role m_role = Role::Ink;
};

} // namespace app
