#include "app/walk/start_page.h"

#include "app/shared/counted.h"
#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/walk/hit_list.h"
#include "app/walk/meter_profile.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

namespace app {
namespace {

constexpr std::size_t kMostHits = 9, kMostJobs = 6;

} // namespace

StartPage::StartPage(const ContentFiles &content, const std::filesystem::path &folder, bool energized, QWidget *parent)
    : Page(parent), m_all(complaintsOf(content)), m_columns(new QHBoxLayout), m_main(new ScrollSheet), m_side(new ScrollSheet),
      m_field(new QLineEdit), m_hits(new HitList(tr("What it may be"))), m_line(textLabel({})),
      m_start(new KeyButton(tr("Start this job"), QStringLiteral("Enter")))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(Theme::current().spx(12));
    m_columns->setSpacing(Theme::current().spx(12));
    m_columns->addWidget(m_main, 5);
    m_columns->addWidget(m_side, 3);
    layout->addLayout(m_columns, 1);
    const JobList jobs = JobList::read(content, folder);
    addSearch();
    addJobs(jobs);
    addStrip(content, jobs, energized);
    look();
}

void StartPage::addSearch()
{
    QVBoxLayout *body = m_main->body();
    body->addWidget(textLabel(tr("What is wrong?"), Type::Say));
    m_field->setObjectName(QStringLiteral("complaint"));
    m_field->setAccessibleName(tr("What is wrong? Appliance and trouble, a few letters of each"));
    m_field->setPlaceholderText(tr("appliance and trouble, a few letters of each"));
    m_field->setMaxLength(120);
    const auto dress = [this] {
        m_field->setFont(Theme::current().font(Type::Heading));
        m_field->setMinimumHeight(Theme::current().spx(54));
        m_field->setTextMargins(Theme::current().spx(10), 0, Theme::current().spx(10), 0);
    };
    dress();
    connect(&Theme::current(), &Theme::changed, m_field, dress);
    m_field->installEventFilter(this);
    body->addWidget(m_field);
    body->addWidget(m_line);
    m_hits->setObjectName(QStringLiteral("hits"));
    body->addWidget(m_hits, 1);
    m_start->setObjectName(QStringLiteral("start"));
    m_start->setFace(KeyButton::Face::Filled);
    m_main->dock()->addWidget(m_start, 0, Qt::AlignLeft);
    connect(m_field, &QLineEdit::textChanged, this, &StartPage::look);
    connect(m_hits, &HitList::chosen, this, &StartPage::begins);
    connect(m_start, &QPushButton::clicked, this, [this] { Q_EMIT begins(m_hits->currentId()); });
}

void StartPage::addJobs(const JobList &jobs)
{
    QVBoxLayout *body = m_side->body();
    body->addWidget(headingLabel(tr("Go on with a job")));
    if (jobs.jobs.empty()) {
        body->addWidget(textLabel(
            jobs.fault.isEmpty()
                ? tr("There is none yet. Every answer is saved as you give it, in your own folder; nothing leaves this computer.")
                : jobs.fault));
        body->addStretch(1);
        return;
    }
    m_jobs = new HitList(tr("Jobs to go on with"));
    m_jobs->setObjectName(QStringLiteral("jobs"));
    std::vector<Hit> shown = jobs.jobs;
    if (shown.size() > kMostJobs)
        shown.resize(kMostJobs);
    m_jobs->setHits(std::move(shown));
    m_jobs->clearSelection();
    connect(m_jobs, &HitList::chosen, this, &StartPage::goesOn);
    body->addWidget(m_jobs, 1);
    body->addWidget(new RunLabel({{tr("After any break the power counts as "), Type::Text},
                                  {tr("unknown"), Type::Strong},
                                  {tr(". The program asks for the plug or the breaker again before the next test; if the machine "
                                      "was on, making it off comes first."),
                                   Type::Text}}));
}

void StartPage::addStrip(const ContentFiles &content, const JobList &jobs, bool energized)
{
    auto *strip = new Sheet;
    m_strip = new QHBoxLayout(strip);
    m_strip->setContentsMargins(Theme::current().spx(16), Theme::current().spx(8), Theme::current().spx(16),
                                Theme::current().spx(8));
    m_strip->setSpacing(Theme::current().spx(24));
    const auto add = [this](const QString &quiet, const QString &strong, const QString &more, KeyButton *link) {
        auto *column = new QVBoxLayout;
        column->setSpacing(Theme::current().spx(2));
        auto *facts = new RunLabel({{quiet + QLatin1Char('\n'), Type::Quiet, Role::Ink2},
                                    {strong + QLatin1Char('\n'), Type::Strong},
                                    {more, Type::Quiet, Role::Ink2}});
        column->addWidget(facts);
        m_more.push_back(facts);
        if (link != nullptr) {
            link->setFace(KeyButton::Face::Link);
            link->setSize(KeyButton::Size::Row);
            column->addWidget(link, 0, Qt::AlignLeft);
        }
        column->addStretch();
        m_strip->addLayout(column, 1);
    };
    const auto meter = loadMeter();
    auto *change = new KeyButton(tr("Your meter and this job"));
    change->setObjectName(QStringLiteral("meter"));
    connect(change, &QPushButton::clicked, this, &StartPage::wantsMeter);
    const QString power =
        energized ? tr("readings with power on: allowed for the next job, last of all") : tr("readings with power on: off");
    add(tr("Your meter"), meter ? MeterWords::inShort(*meter) : tr("not told yet"),
        (meter ? MeterWords::probes(*meter) + QStringLiteral(" · ") : QString()) + power, change);
    add(tr("Jobs kept on this computer"), counted(static_cast<int>(jobs.jobs.size()), tr("%1 job"), tr("%1 jobs")),
        jobs.damaged > 0 ? tr("%1 cannot be read").arg(jobs.damaged) : tr("names and numbers only if you type them"), nullptr);
    const int faults = static_cast<int>(content.diagnostics.size());
    KeyButton *which = nullptr;
    if (faults > 0) {
        which = new KeyButton(tr("Which?"));
        which->setObjectName(QStringLiteral("faults"));
        connect(which, &QPushButton::clicked, this, &StartPage::wantsFaults);
    }
    add(tr("Trees"),
        tr("%1, %2").arg(counted(static_cast<int>(content.library.appliances.size()), tr("%1 appliance"), tr("%1 appliances")),
                         counted(static_cast<int>(m_all.size()), tr("%1 complaint"), tr("%1 complaints"))),
        faults == 0 ? tr("all loaded, no faults")
                    : counted(faults, tr("%1 fault; what it touches is left out"), tr("%1 faults; what they touch is left out")),
        which);
    static_cast<QVBoxLayout *>(layout())->addWidget(strip);
}

void StartPage::look()
{
    std::vector<Hit> hits = nearest(m_all, m_field->text(), kMostHits);
    const bool none = !hits.empty() && !m_field->text().trimmed().isEmpty() && !hits.front().match.all;
    m_line->setVisible(none || m_all.empty());
    m_line->setText(m_all.empty() ? tr("No tree could be loaded. The line at the bottom says why.")
                                  : tr("Nothing fits all of that. The nearest:"),
                    Type::Text);
    m_start->setEnabled(!hits.empty());
    m_hits->setHits(std::move(hits));
}

void StartPage::say(const QString &sentence)
{
    m_line->setText(sentence, Type::Strong);
    m_line->show();
}

// Down and Up walk the list while letters go on into the field; a digit after a space, or in an empty field, chooses.
bool StartPage::fieldKey(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Up) {
        m_hits->step(event->key() == Qt::Key_Down ? 1 : -1);
        return true;
    }
    if (isEnter(*event)) {
        if (!m_hits->currentId().isEmpty())
            Q_EMIT begins(m_hits->currentId());
        return true;
    }
    const QString text = m_field->text();
    const int digit = digitOf(*event);
    const bool chooses = text.isEmpty() || text.endsWith(QLatin1Char(' '));
    if (digit > 0 && chooses && !m_hits->idAt(digit).isEmpty()) {
        Q_EMIT begins(m_hits->idAt(digit));
        return true;
    }
    return false;
}

bool StartPage::eventFilter(QObject *object, QEvent *event)
{
    if (object == m_field && event->type() == QEvent::KeyPress && fieldKey(static_cast<QKeyEvent *>(event)))
        return true;
    return Page::eventFilter(object, event);
}

// Letters typed anywhere on this page belong to the question.
bool StartPage::key(QKeyEvent *event)
{
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    if (!plain || event->text().isEmpty() || !event->text().at(0).isPrint())
        return false;
    m_field->setFocus();
    m_field->insert(event->text());
    return true;
}

void StartPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    const bool narrow = width() < Theme::current().px(760);
    m_columns->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    const bool low = height() < Theme::current().px(narrow ? 700 : 480);
    m_strip->setDirection(narrow && !low ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    for (RunLabel *more : m_more)
        more->setVisible(!low); // what can be pressed stays
    m_side->setVisible(m_jobs != nullptr || !(narrow && low));
}

QWidget *StartPage::firstFocus()
{
    return m_field;
}

QString StartPage::help() const
{
    return tr("Type a few letters of the appliance and of what is wrong, as you would say it: “dry cold”. Down and Up choose, "
              "Enter starts. A "
              "digit chooses after a space. Below: your meter, so that no test is asked that it cannot do, and whether readings "
              "with power on "
              "may be offered at all; they are off until you turn them on.");
}

void StartPage::showDenial(const core::Denial &denial)
{
    say(qs(denial.text));
}

} // namespace app
