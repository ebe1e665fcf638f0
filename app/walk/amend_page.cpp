#include "app/walk/amend_page.h"

#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/page_parts.h"
#include "app/walk/reading_entry.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QKeyEvent>

#include <algorithm>

namespace app {
namespace {

const core::Event *eventNumbered(const core::Session &session, int number)
{
    const auto &events = session.events();
    const auto at = std::ranges::find(events, number, &core::Event::number);
    return at == events.end() ? nullptr : &*at;
}

// The answers an event of this step could have had.
std::vector<core::Option> answersOf(const core::Session &session, const core::Event &event)
{
    std::vector<core::Option> options;
    const core::Machine &machine = session.facts().machine;
    if (const core::Ask *ask = machine.appliance->asked(event.step))
        for (const std::string &answer : ask->answers)
            options.push_back({answer, ask->says.contains(answer) ? ask->says.at(answer) : answer, {}, {}});
    const core::Library::Found found = machine.library->test(*machine.appliance, event.test);
    const core::Step *step = machine.tree == nullptr ? nullptr : machine.tree->step(event.step);
    const auto words = found.test != nullptr ? found.test->answers
                       : step != nullptr     ? step->answers()
                                             : std::vector<std::string>();
    for (const std::string &answer : words)
        options.push_back({answer, answer, {}, {}});
    return options;
}

QString lines(const std::vector<std::string> &titles)
{
    QStringList out;
    for (const std::string &title : titles)
        if (!title.empty())
            out << QStringLiteral("–  ") + brief(qs(title));
    return out.isEmpty() ? AmendPage::tr("–  nothing") : out.join(QLatin1Char('\n'));
}

} // namespace

AmendPage::AmendPage(const JobController &job, const core::WayView &way, QWidget *parent)
    : Page(parent), m_job(job), m_way(way), m_sheet(new ScrollSheet),
      m_head(new SaySentence(tr("It was “%1”. What should it be?").arg(qs(way.said)))), m_preview(textLabel({})),
      m_change(new KeyButton(tr("Change it"))), m_leave(new KeyButton(tr("Leave it as it was"), QStringLiteral("Esc")))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(
        textLabel(tr("Way so far · %1 · %2").arg(qs(way.title), Words::time(way.wallMs)), Type::Quiet, Role::Ink2));
    m_sheet->body()->addWidget(m_head);
    const core::Event *event = eventNumbered(job.session(), way.event);
    if (event != nullptr && event->reading)
        addReading();
    else
        addAnswers();
    m_sheet->body()->addSpacing(Theme::current().spx(8));
    m_sheet->body()->addWidget(m_preview);
    m_sheet->body()->addWidget(textLabel(tr("The old one stays in the log, struck. What was done stays done: wires pulled, "
                                            "covers open and power are not changed by this."),
                                         Type::Quiet, Role::Ink2));
    m_sheet->body()->addStretch(1);
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    m_change->setObjectName(QStringLiteral("change"));
    m_leave->setObjectName(QStringLiteral("leave"));
    flow->addWidget(m_change);
    flow->addWidget(m_leave);
    m_sheet->dock()->addWidget(row);
    connect(m_change, &QPushButton::clicked, this, &AmendPage::change);
    connect(m_leave, &QPushButton::clicked, this, &Page::closed);
    preview({});
}

void AmendPage::addReading()
{
    const core::Event &event = *eventNumbered(m_job.session(), m_way.event);
    const core::Machine &machine = m_job.session().facts().machine;
    const core::Library::Found found = machine.library->test(*machine.appliance, event.test);
    const core::Measure measure = found.test == nullptr ? core::Measure::VoltageAc : found.test->measure;
    m_entry = new ReadingEntry(machine.meter, measure, tr("Type what it should read; Enter shows what follows"));
    m_entry->field()->setUnit(Words::unit(std::string(core::unitCode(core::unitOf(measure))), measure));
    m_entry->field()->setAccessibleName(tr("It should read"));
    m_sheet->body()->addWidget(headingLabel(tr("It should read")));
    m_sheet->body()->addWidget(m_entry);
    connect(m_entry, &ReadingEntry::changed, this, [this] { preview(m_entry->understood() ? m_entry->typed() : std::string()); });
    connect(m_entry, &ReadingEntry::taken, this, [this] { m_leave->setFocus(Qt::TabFocusReason); });
}

void AmendPage::addAnswers()
{
    const core::Event *event = eventNumbered(m_job.session(), m_way.event);
    if (event == nullptr)
        return;
    m_sheet->body()->addWidget(headingLabel(tr("It should be")));
    for (const core::Option &option : answersOf(m_job.session(), *event)) {
        auto *button = new KeyButton(capital(qs(option.text)), QString::number(m_answers.size() + 1));
        button->setObjectName(QStringLiteral("answer:") + qs(option.value));
        button->setSpread(true);
        button->setCheckable(true);
        button->setAutoExclusive(true);
        connect(button, &QPushButton::clicked, this, [this, value = option.value] {
            preview(value);
            m_leave->setFocus(Qt::TabFocusReason);
        });
        m_sheet->body()->addWidget(button);
        m_answers.push_back(button);
    }
}

void AmendPage::preview(const std::string &value)
{
    m_value = value;
    m_change->setEnabled(false);
    if (value.empty()) {
        m_preview->setRuns(
            {{tr("Nothing is changed yet. Before it is, this page shows what would stay and what would fall away."), Type::Text,
              Role::Ink2}});
        return;
    }
    const auto then = m_job.session().previewAmend(m_way.event, value);
    if (!then) {
        m_preview->setRuns({{qs(then.error().text), Type::Strong}});
        return;
    }
    m_change->setEnabled(true);
    m_preview->setRuns({{tr("Then this stays") + QLatin1Char('\n'), Type::Title},
                        {lines(then->stays) + QLatin1Char('\n'), Type::Text},
                        {tr("and this falls away") + QLatin1Char('\n'), Type::Title},
                        {lines(then->fallsAway) + QLatin1Char('\n'), Type::Text},
                        {tr("Next: "), Type::Strong},
                        {qs(then->next), Type::Text}});
}

void AmendPage::change()
{
    core::Command command;
    command.what = core::Command::What::Amend;
    command.event = m_way.event;
    command.value = m_value;
    Q_EMIT said(command);
}

QWidget *AmendPage::firstFocus()
{
    return m_entry != nullptr ? static_cast<QWidget *>(m_entry->field()) : m_leave;
}

QString AmendPage::help() const
{
    return tr("Type the right value, or press the number of the right answer. Then the page shows what stays and what falls "
              "away. Enter on "
              "“Change it” changes it; Esc leaves it as it was.");
}

bool AmendPage::key(QKeyEvent *event)
{
    const int digit = digitOf(*event);
    if (digit > 0 && static_cast<std::size_t>(digit) <= m_answers.size()) {
        m_answers[static_cast<std::size_t>(digit) - 1]->click();
        return true;
    }
    return false;
}

void AmendPage::showDenial(const core::Denial &denial)
{
    m_preview->setRuns({{qs(denial.text), Type::Strong}});
}

} // namespace app
