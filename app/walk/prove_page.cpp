#include "app/walk/prove_page.h"

#include "app/draw/safety_picture.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/page_parts.h"
#include "app/walk/reading_entry.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/signal_state.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>

namespace app {
namespace {

QString sentenceOf(const core::StepView &step, bool dc)
{
    if (step.phase == "known_before")
        return ProvePage::tr("Dial to V~. Measure an outlet you know works.");
    if (step.phase == "known_after")
        return ProvePage::tr("Now measure the known outlet once more.");
    const QString pair = qs(step.pair);
    return dc ? ProvePage::tr("Dial to V with the straight line. Measure %1.").arg(pair) : ProvePage::tr("Black first. Measure %1.").arg(pair);
}

QString secondOf(const core::StepView &step)
{
    if (step.phase == "known_before")
        return ProvePage::tr("It shows that the meter works. About 120 V or 230 V is right.");
    if (step.phase == "known_after")
        return ProvePage::tr("A meter that died in between would read 0 too. Right again: proved dead, at this place, now.");
    return ProvePage::tr("Breaker off. Under 2 V~ and under 5 V= is dead; anything else: hands off, cover on, call.");
}

// What was read since the proof began, in order.
std::vector<QString> readSoFar(const core::Session &session)
{
    std::vector<QString> said;
    const auto &events = session.events();
    for (const core::Event &event : events) {
        if (event.what == core::Event::What::Acknowledged && event.step == "S3")
            said.clear();
        if (event.what == core::Event::What::Read && event.step == "S3" && event.reading)
            said.push_back(qs(core::saidBack(*event.reading)));
    }
    return said;
}

} // namespace

ProvePage::ProvePage(const JobController &job, QWidget *parent)
    : Page(parent), m_step(job.view().step), m_dc(job.session().presentation().screening.dc), m_sheet(new ScrollSheet),
      m_sentence(new SaySentence(sentenceOf(m_step, m_dc)))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(textLabel(tr("Prove it dead · inserted before the next test · at most 15 minutes"), Type::Quiet, Role::Ink2));
    m_sheet->body()->addWidget(m_sentence);
    m_sheet->body()->addWidget(textLabel(secondOf(m_step)));
    if (const auto scene = sceneOf(job.view(), job.session())) {
        auto *picture = new SafetyPicture;
        picture->setState(*scene);
        yieldHeight(picture, 160);
        m_sheet->body()->addWidget(picture, 1);
    }
    addStations(job);
    const core::Measure measure = m_dc ? core::Measure::VoltageDc : core::Measure::VoltageAc;
    m_entry = new ReadingEntry(job.session().facts().machine.meter, measure, tr("Type what you see"));
    m_entry->field()->setUnit(Words::unit("V", measure));
    m_entry->field()->setAccessibleName(sentenceOf(m_step, m_dc));
    m_sheet->dock()->addWidget(m_entry);
    auto *ways = new QHBoxLayout;
    m_take = new KeyButton(tr("Take this reading"), QStringLiteral("Enter"));
    m_take->setObjectName(QStringLiteral("take"));
    auto *decline = new KeyButton(tr("Hands off, cover on, call"), QStringLiteral("Esc"));
    decline->setObjectName(QStringLiteral("way:decline"));
    for (KeyButton *button : {m_take, decline}) {
        button->setSize(KeyButton::Size::Safety);
        ways->addWidget(button, 1);
    }
    m_sheet->dock()->addLayout(ways);
    m_take->setEnabled(false);
    connect(m_entry, &ReadingEntry::changed, this, [this] { m_take->setEnabled(m_entry->understood().has_value()); });
    connect(m_entry, &ReadingEntry::taken, this, &ProvePage::take);
    connect(m_take, &QPushButton::clicked, this, &ProvePage::take);
    connect(decline, &QPushButton::clicked, this, &ProvePage::escape);
}

void ProvePage::addStations(const JobController &job)
{
    const std::vector<QString> read = readSoFar(job.session());
    const auto &proof = job.session().gate().proof;
    const std::size_t pairs = proof ? proof->pairs.size() : 0;
    auto *row = new QHBoxLayout;
    row->setSpacing(Theme::current().spx(16));
    Runs before, work, after;
    if (!read.empty())
        before.push_back({read[0], Type::Strong});
    for (std::size_t i = 0; i < pairs; ++i) {
        const QString ac = i + 1 < read.size() ? read[i + 1] + QStringLiteral(" ~") : QStringLiteral("–");
        const QString dc = i + 1 + pairs < read.size() ? QStringLiteral("   ") + read[i + 1 + pairs] + QStringLiteral(" =") : QString();
        work.push_back({qs(proof->pairs[i]) + QStringLiteral("   "), Type::Text});
        work.push_back({ac, Type::Strong});
        work.push_back({dc + (i + 1 < pairs ? QStringLiteral("\n") : QString()), Type::Quiet, Role::Ink2});
    }
    addStation(row, 1, tr("Known outlet, before"), tr("the meter works"), before);
    addStation(row, 2, tr("At the machine"), tr("breaker off; every pair, V~ and V with the line"), work);
    addStation(row, 3, tr("The same outlet, after"), tr("the meter still works"), after);
    m_sheet->body()->addLayout(row);
}

void ProvePage::addStation(QLayout *row, int number, const QString &title, const QString &note, const Runs &readings)
{
    const int present = m_step.phase == "known_before" ? 1 : m_step.phase == "known_after" ? 3 : 2;
    auto *column = new QWidget;
    auto *layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(Theme::current().spx(4));
    layout->addWidget(ruleLine());
    const QString here = number == present ? tr(" · you are here") : QString();
    layout->addWidget(new RunLabel({{QStringLiteral("%1 %2").arg(number).arg(title), Type::Title}, {here, Type::Quiet}}));
    layout->addWidget(textLabel(note, Type::Quiet, Role::Ink2));
    if (!readings.empty())
        layout->addWidget(new RunLabel(readings));
    layout->addStretch();
    row->addWidget(column);
}

QString ProvePage::holdSentence() const
{
    return tr("Until measured, these wires count as live. Both hands behind the guards, black first.");
}

QWidget *ProvePage::firstFocus()
{
    return m_entry->field();
}

QString ProvePage::help() const
{
    return tr("Three stations with the same meter: an outlet you know works, every pair of wires here, the same outlet again. Only values "
              "count, no tick. If anything reads more than it should, take your hands off, put the cover on and call.");
}

void ProvePage::take()
{
    if (!m_entry->understood())
        return;
    core::Command command;
    command.what = core::Command::What::Reading;
    command.value = m_entry->typed();
    Q_EMIT said(command);
}

void ProvePage::escape()
{
    core::Command command;
    command.what = core::Command::What::Decline;
    Q_EMIT said(command);
}

bool ProvePage::key(QKeyEvent *event)
{
    if (!isEnter(*event))
        return false;
    take();
    return true;
}

void ProvePage::showDenial(const core::Denial &denial)
{
    m_entry->showDenial(denial);
}

} // namespace app
