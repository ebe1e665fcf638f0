#include "app/walk/find_page.h"

#include "app/shared/theme.h"
#include "app/walk/hit_list.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"

#include <QKeyEvent>
#include <QLineEdit>

namespace app {
namespace {

constexpr std::size_t kMost = 12;

} // namespace

FindPage::FindPage(std::vector<Hit> everything, QWidget *parent)
    : Page(parent), m_all(std::move(everything)), m_field(new QLineEdit), m_hits(new HitList(tr("Found"))), m_line(textLabel({}))
{
    auto *layout = new QVBoxLayout(this);
    auto *sheet = new ScrollSheet;
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(sheet);
    sheet->body()->addWidget(textLabel(tr("Find anything"), Type::Say));
    m_field->setObjectName(QStringLiteral("find"));
    m_field->setAccessibleName(tr("Find a command, a complaint or a job"));
    m_field->setPlaceholderText(tr("a command, a complaint, a job"));
    m_field->setMaxLength(120);
    const auto dress = [this] {
        m_field->setFont(Theme::current().font(Type::Heading));
        m_field->setMinimumHeight(Theme::current().spx(54));
        m_field->setTextMargins(Theme::current().spx(10), 0, Theme::current().spx(10), 0);
    };
    dress();
    connect(&Theme::current(), &Theme::changed, m_field, dress);
    m_field->installEventFilter(this);
    sheet->body()->addWidget(m_field);
    sheet->body()->addWidget(m_line);
    sheet->body()->addWidget(m_hits, 1);
    connect(m_field, &QLineEdit::textChanged, this, &FindPage::look);
    connect(m_hits, &HitList::chosen, this, &FindPage::chosen);
    look();
}

void FindPage::look()
{
    std::vector<Hit> hits = nearest(m_all, m_field->text(), kMost);
    const bool none = !m_field->text().trimmed().isEmpty() && (hits.empty() || !hits.front().match.all);
    m_line->setText(none ? tr("Nothing fits all of that. The nearest:") : QString());
    m_line->setVisible(none);
    m_hits->setHits(std::move(hits));
}

bool FindPage::eventFilter(QObject *object, QEvent *event)
{
    if (object != m_field || event->type() != QEvent::KeyPress)
        return Page::eventFilter(object, event);
    auto *key = static_cast<QKeyEvent *>(event);
    if (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up) {
        m_hits->step(key->key() == Qt::Key_Down ? 1 : -1);
        return true;
    }
    if (isEnter(*key)) {
        if (!m_hits->currentId().isEmpty())
            Q_EMIT chosen(m_hits->currentId());
        return true;
    }
    return Page::eventFilter(object, event);
}

QWidget *FindPage::firstFocus()
{
    return m_field;
}

QString FindPage::help() const
{
    return tr("Type a few letters of a command, a complaint or a job. Down and Up choose, Enter goes there, Esc goes back.");
}

bool FindPage::key(QKeyEvent *)
{
    return false;
}

} // namespace app
