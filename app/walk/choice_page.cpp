#include "app/walk/choice_page.h"

#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/choice_button.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QAbstractButton>
#include <QGridLayout>
#include <QKeyEvent>

namespace app {

ChoicePage::ChoicePage(const QString &caption, const QString &head, const QString &text, QWidget *parent)
    : Page(parent), m_sheet(new ScrollSheet), m_grid(new QGridLayout), m_head(new SaySentence(head))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(textLabel(caption, Type::Quiet, Role::Ink2));
    m_sheet->body()->addWidget(m_head);
    m_line = textLabel(text, Type::Safety);
    m_sheet->body()->addWidget(m_line);
    m_line->setVisible(!text.isEmpty());
    m_grid->setSpacing(Theme::current().spx(14));
    m_sheet->body()->addLayout(m_grid);
    m_sheet->body()->addStretch(1);
    auto *row = new QWidget;
    m_row = new FlowLayout(row, Theme::current().spx(10));
    m_back = new KeyButton(tr("Back"), QStringLiteral("Esc"));
    m_back->setObjectName(QStringLiteral("back"));
    connect(m_back, &QPushButton::clicked, this, &Page::closed);
    m_row->addWidget(m_back);
    m_sheet->dock()->addWidget(row);
}

ChoiceButton *ChoicePage::add(const QString &head, const QString &text, const char *name, std::function<void()> chosen)
{
    auto *button = new ChoiceButton(head, text, QString::number(m_chosen.size() + 1));
    button->setObjectName(QLatin1String(name));
    connect(button, &QAbstractButton::clicked, this, [run = chosen] { run(); });
    m_choices.push_back(button);
    m_chosen.push_back(std::move(chosen));
    m_columns = 0;
    lay();
    return button;
}

void ChoicePage::setMost(int columns)
{
    m_most = columns;
    m_columns = 0;
    lay();
}

void ChoicePage::addQuiet(const QString &words, const char *name, std::function<void()> chosen)
{
    auto *button = new KeyButton(words, QString::number(m_chosen.size() + 1));
    button->setObjectName(QLatin1String(name));
    connect(button, &QPushButton::clicked, this, [run = chosen] { run(); });
    m_row->addWidget(button);
    m_chosen.push_back(std::move(chosen));
}

void ChoicePage::setBack(const QString &words)
{
    m_back->setWords(words);
}

// Two beside each other where there is room.
void ChoicePage::lay()
{
    const int columns = width() < Theme::current().px(640) ? 1 : m_most;
    if (columns == m_columns)
        return;
    m_columns = columns;
    for (std::size_t i = 0; i < m_choices.size(); ++i)
        m_grid->addWidget(m_choices[i], static_cast<int>(i) / columns, static_cast<int>(i) % columns);
}

void ChoicePage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    lay();
}

QWidget *ChoicePage::firstFocus()
{
    return m_choices.empty() ? static_cast<QWidget *>(m_back) : m_choices.front();
}

QString ChoicePage::help() const
{
    return tr("Press the number of a choice, or walk to it with Tab and press Enter. Esc goes back; nothing has changed then.");
}

bool ChoicePage::key(QKeyEvent *event)
{
    const int digit = digitOf(*event);
    if (digit > 0 && static_cast<std::size_t>(digit) <= m_chosen.size()) {
        m_chosen[static_cast<std::size_t>(digit) - 1]();
        return true;
    }
    if (event->key() == Qt::Key_PageDown || event->key() == Qt::Key_PageUp) {
        m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
        return true;
    }
    return false;
}

void ChoicePage::showDenial(const core::Denial &denial)
{
    m_line->setText(qs(denial.text), Type::Strong);
    m_line->show();
}

} // namespace app
