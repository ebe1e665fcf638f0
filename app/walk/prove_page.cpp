#include "app/walk/prove_page.h"

#include "app/draw/safety_scenes.h"
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
    return dc ? ProvePage::tr("Dial to V with the straight line. Measure %1.").arg(pair)
              : ProvePage::tr("Black first. Measure %1.").arg(pair);
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
    m_sheet->body()->addWidget(
        textLabel(tr("Prove it dead · inserted before the next test · at most 15 minutes"), Type::Quiet, Role::Ink2));
    m_sheet->body()->addWidget(m_sentence);
    m_sheet->body()->addWidget(textLabel(secondOf(m_step)));
    addStations(job);
    const core::Measure measure = m_dc ? core::Measure::VoltageDc : core::Measure::VoltageAc;
    m_entry = new ReadingEntry(job.session().facts().machine.meter, measure, tr("Type what you see"));
    m_entry->field()->setUnit(Words::unit("V", measure));
    m_entry->field()->setAccessibleName(sentenceOf(m_step, m_dc));
    m_ways = new QHBoxLayout;
    m_ways->setSpacing(Theme::current().spx(12));
    m_ways->addWidget(m_entry, 1);
    m_take = new KeyButton(tr("Take this reading"), QStringLiteral("Enter"));
    m_take->setObjectName(QStringLiteral("take"));
    auto *decline = new KeyButton(tr("Hands off, cover on, call"), QStringLiteral("Esc"));
    decline->setObjectName(QStringLiteral("way:decline"));
    for (KeyButton *button : {m_take, decline}) {
        button->setSize(KeyButton::Size::Safety);
        m_ways->addWidget(button, 1, Qt::AlignTop);
    }
    m_sheet->dock()->addLayout(m_ways);
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
    m_stations = new QHBoxLayout;
    m_stations->setSpacing(Theme::current().spx(16));
    Runs before, work, after;
    if (!read.empty())
        before.push_back({read[0] + QStringLiteral(" ~"), Type::Strong});
    for (std::size_t i = 0; i < pairs; ++i) {
        const QString ac = i + 1 < read.size() ? read[i + 1] + QStringLiteral(" ~") : QStringLiteral("–");
        const QString dc =
            i + 1 + pairs < read.size() ? QStringLiteral("   ") + read[i + 1 + pairs] + QStringLiteral(" =") : QString();
        work.push_back({qs(proof->pairs[i]) + QStringLiteral("   "), Type::Quiet});
        work.push_back({ac, Type::QuietStrong});
        work.push_back({dc + (i + 1 < pairs ? QStringLiteral("\n") : QString()), Type::Quiet, Role::Ink2});
    }
    const auto scene = sceneOf(job.view(), job.session());
    const QString titles[] = {tr("1 Known outlet, before"), tr("2 At the machine"), tr("3 The same outlet, after")};
    const QString notes[] = {tr("the meter works"), tr("breaker off; every pair, V~ and V with the line"),
                             tr("the meter still works")};
    for (int i = 0; i < 3; ++i) {
        auto *picture = new TestPicture;
        TestPictureState state = scene ? stationPicture(*scene, i + 1) : TestPictureState{};
        state.meter.dial = i == 1 && m_dc ? Dial::VoltDc : Dial::VoltAc;
        state.meter.alternating = state.meter.dial == Dial::VoltAc;
        picture->setState(std::move(state));
        yieldHeight(picture, 110);
        addStation(i + 1, titles[i], notes[i], picture, i == 0 ? before : i == 1 ? work : after);
    }
    m_sheet->body()->addLayout(m_stations, 1);
}

void ProvePage::addStation(int number, const QString &title, const QString &note, QWidget *picture, const Runs &readings)
{
    auto *column = new QWidget;
    auto *layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(Theme::current().spx(3));
    layout->addWidget(ruleLine());
    const QString here = number == present() ? tr(" · you are here") : QString();
    layout->addWidget(new RunLabel({{title, Type::Title}, {here, Type::Quiet}}));
    layout->addWidget(textLabel(note, Type::Quiet, Role::Ink2));
    layout->addWidget(picture, 1);
    if (!readings.empty())
        layout->addWidget(new RunLabel(readings));
    m_stations->addWidget(column, 1);
    m_columns.push_back(column);
}

int ProvePage::present() const
{
    return m_step.phase == "known_before" ? 1 : m_step.phase == "known_after" ? 3 : 2;
}

// Where three do not fit, only the station of now.
void ProvePage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    const bool narrow = width() < Theme::current().px(760);
    for (std::size_t i = 0; i < m_columns.size(); ++i)
        m_columns[i]->setVisible(!narrow || static_cast<int>(i) + 1 == present());
    m_ways->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
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
    return tr("Three stations with the same meter: an outlet you know works, every pair of wires here, the same outlet again. "
              "Only values "
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
