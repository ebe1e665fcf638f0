#include "app/walk/text_page.h"

#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QCoreApplication>
#include <QGridLayout>
#include <QKeyEvent>

namespace app {

TextPage::TextPage(const QString &head, const QString &text, QWidget *parent) : Page(parent), m_sheet(new ScrollSheet), m_head(new SaySentence(head))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(m_head);
    m_sheet->body()->addWidget(new SaySentence(text, Type::Safety));
    m_sheet->body()->addStretch(1);
    auto *back = new KeyButton(tr("Back"), QStringLiteral("Esc"));
    back->setObjectName(QStringLiteral("back"));
    connect(back, &QPushButton::clicked, this, &Page::closed);
    m_sheet->dock()->addWidget(back, 0, Qt::AlignLeft);
}

void TextPage::addSection(const QString &head, const QString &text)
{
    QVBoxLayout *body = m_sheet->body();
    body->insertWidget(body->count() - 1, headingLabel(head));
    body->insertWidget(body->count() - 1, new SaySentence(text, Type::Text));
}

void TextPage::addKeys(const std::vector<std::pair<QString, QString>> &keys)
{
    auto *table = new QWidget;
    auto *grid = new QGridLayout(table);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(Theme::current().spx(20));
    const int rows = static_cast<int>((keys.size() + 1) / 2);
    for (std::size_t i = 0; i < keys.size(); ++i) {
        const int row = static_cast<int>(i) % rows, column = 2 * (static_cast<int>(i) / rows);
        grid->addWidget(textLabel(keys[i].first, Type::Key), row, column);
        grid->addWidget(textLabel(keys[i].second), row, column + 1);
        grid->setColumnStretch(column + 1, 1);
    }
    m_sheet->body()->insertWidget(m_sheet->body()->count() - 1, table);
}

QWidget *TextPage::firstFocus()
{
    return m_head;
}

QString TextPage::help() const
{
    return tr("Esc goes back.");
}

bool TextPage::key(QKeyEvent *event)
{
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

TextPage *helpPage(const Page &of)
{
    auto *page = new TextPage(TextPage::tr("Help for this screen"), of.help());
    page->addSection(TextPage::tr("Keys, the same everywhere"), TextPage::tr("Single letters act only while no text field is open."));
    page->addKeys({{QStringLiteral("Enter"), TextPage::tr("take the reading, go on")}, {QStringLiteral("Esc"), TextPage::tr("the safe way; elsewhere back")},
                   {QStringLiteral("R"), TextPage::tr("read once more")}, {QStringLiteral("Backspace"), TextPage::tr("change it")},
                   {QStringLiteral("?"), TextPage::tr("I cannot")}, {QStringLiteral("Ctrl+Z"), TextPage::tr("back one answer")},
                   {QStringLiteral("Ctrl+K"), TextPage::tr("find anything")}, {QStringLiteral("Ctrl+1"), TextPage::tr("start")},
                   {QStringLiteral("F1"), TextPage::tr("help for this screen")}, {QStringLiteral("F4"), TextPage::tr("why")},
                   {QStringLiteral("F6"), TextPage::tr("the chain")}, {QStringLiteral("F7"), TextPage::tr("the way so far")},
                   {QStringLiteral("F8"), TextPage::tr("say how it went")}, {QStringLiteral("F9"), TextPage::tr("copy as text")}, {QStringLiteral("Ctrl+P"), TextPage::tr("print the record")},
                   {QStringLiteral("Ctrl + − 0"), TextPage::tr("text size")}, {QStringLiteral("F12"), TextPage::tr("Stop")}});
    return page;
}

TextPage *aboutPage()
{
    auto *page = new TextPage(TextPage::tr("Meter First %1").arg(QCoreApplication::applicationVersion()),
                              TextPage::tr("From what is wrong, with your own meter, to a part proven bad by a reading, or to nothing to buy, or to whom to call."));
    page->addSection(TextPage::tr("What it does not know"), TextPage::tr("Readings are true for the place and minute given. A ladder drawn here is a claim about somebody else's machine: the sheet in the cabinet stands above it. Local codes and licensed practice stand above this program."));
    page->addSection(TextPage::tr("Licence"), TextPage::tr("Free software under the GNU General Public License, version 3 or later. The typeface is made from B612, under the SIL Open Font License 1.1. No account; nothing leaves this computer."));
    return page;
}

TextPage *faultsPage(const ContentFiles &content)
{
    QStringList lines;
    for (const core::Diagnostic &diagnostic : content.diagnostics)
        lines << qs(core::toText(diagnostic));
    return new TextPage(TextPage::tr("What could not be loaded"), lines.isEmpty() ? TextPage::tr("Everything was loaded.") : lines.join(QLatin1Char('\n')));
}

} // namespace app
