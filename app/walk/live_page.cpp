#include "app/walk/live_page.h"

#include "app/draw/number_line.h"
#include "app/draw/test_picture.h"
#include "app/shared/key_button.h"
#include "app/shared/say_block.h"
#include "app/shared/theme.h"
#include "app/walk/line_state.h"
#include "app/walk/page_parts.h"
#include "app/walk/picture_state.h"
#include "app/walk/reading_entry.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>

namespace app {

LivePage::LivePage(const JobController &job, QWidget *parent)
    : Page(parent), m_step(job.view().step), m_columns(new QHBoxLayout(this)), m_left(new ScrollSheet), m_right(new ScrollSheet)
{
    m_columns->setContentsMargins(0, 0, 0, 0);
    m_columns->setSpacing(Theme::current().spx(12));
    m_columns->addWidget(m_left, 2);
    m_columns->addWidget(m_right, 1);
    addPicture(job);
    addEntry(job);
    addWays();
    show(job.session().facts().machine.meter);
}

void LivePage::addPicture(const JobController &job)
{
    const bool outlet = m_step.picture.place == "outlet";
    const QString caption = PageWords::caption(job.view(), job.session()) + QStringLiteral(" · ") + tr("one reading for one yes");
    m_left->body()->addWidget(textLabel(caption, Type::Quiet, Role::Ink2));
    TestPictureState state = pictureOf(m_step, job.session().facts().machine);
    auto *say = new SayBlock(outlet ? tr("Black first, then red. Read. Red out first.") : qs(m_step.text));
    m_sentence = say->sentence();
    m_left->body()->addWidget(say);
    const QString more = outlet ? tr("%1 Only the front of the outlet. Then both probes down.").arg(qs(m_step.text)) : tr("Hands off, stand back, power on, read once, power off.");
    m_left->body()->addWidget(textLabel(more));
    auto *picture = new TestPicture;
    picture->setState(std::move(state));
    yieldHeight(picture, 220);
    m_left->body()->addWidget(picture, 1);
}

void LivePage::addEntry(const JobController &job)
{
    const core::Meter &meter = job.session().facts().machine.meter;
    QVBoxLayout *body = m_right->body();
    body->addWidget(headingLabel(tr("What does the meter show?")));
    QString good = m_step.title.empty() ? QString() : qs(m_step.title);
    if (m_step.good && m_step.good->judgesValues())
        good += QStringLiteral(" · ") + tr("good %1").arg(goodWords(*m_step.good));
    body->addWidget(textLabel(good, Type::Quiet, Role::Ink2));
    m_entry = new ReadingEntry(meter, m_step.picture.measure, tr("Type what you see"));
    m_entry->field()->setUnit(Words::unit(m_step.unit, m_step.picture.measure));
    m_entry->field()->setAccessibleName(tr("What does the meter show?"));
    body->addWidget(m_entry);
    connect(m_entry, &ReadingEntry::changed, this, [this, meter] { show(meter); });
    connect(m_entry, &ReadingEntry::taken, this, &LivePage::take);
    if (m_step.good && m_step.good->judgesValues()) {
        m_line = new NumberLine;
        body->addWidget(m_line);
    }
    if (!m_step.why.empty())
        body->addWidget(textLabel(qs(m_step.why)));
    body->addWidget(new RunLabel({{tr("Whatever it reads, the next screen is "), Type::Text}, {tr("Make it off."), Type::Strong}}));
    body->addStretch(1);
}

void LivePage::addWays()
{
    m_take = new KeyButton(tr("Take this reading"), QStringLiteral("Enter"));
    m_take->setObjectName(QStringLiteral("take"));
    auto *stop = new KeyButton(tr("Stop measuring, make it off"), QStringLiteral("Esc"));
    stop->setObjectName(QStringLiteral("stop_measuring"));
    for (KeyButton *button : {m_take, stop}) {
        button->setSize(KeyButton::Size::Safety);
        button->setSpread(true);
        m_right->dock()->addWidget(button);
    }
    connect(m_take, &QPushButton::clicked, this, &LivePage::take);
    connect(stop, &QPushButton::clicked, this, &LivePage::escape);
}

void LivePage::show(const core::Meter &meter)
{
    std::vector<core::Reading> readings;
    if (m_entry->understood())
        readings.push_back(m_entry->understood()->reading);
    if (m_line != nullptr)
        m_line->setState(lineOf(*m_step.good, m_step.picture.measure, meter, readings, qs(m_step.title)));
    m_take->setWords(readings.empty() ? tr("Take this reading") : tr("Take %1").arg(qs(core::saidBack(readings.back()))));
    m_take->setEnabled(!readings.empty());
}

QString LivePage::holdSentence() const
{
    return m_step.picture.place == "outlet" ? tr("Energized. Both hands behind the guards, touch no metal, nobody touching you.")
                                            : tr("Energized. Hands off, stand back; touch nothing inside.");
}

QWidget *LivePage::firstFocus()
{
    return m_entry->field();
}

QString LivePage::help() const
{
    return tr("One reading of one pair. Type what the display shows and press Enter. Esc stops measuring: nothing is lost, and the next "
              "screen makes it off. Anything strange: F12.");
}

void LivePage::take()
{
    if (!m_entry->understood())
        return;
    core::Command command;
    command.what = core::Command::What::Reading;
    command.value = m_entry->typed();
    Q_EMIT said(command);
}

void LivePage::escape()
{
    core::Command command;
    command.what = core::Command::What::Skip;
    command.why = "stopped measuring";
    Q_EMIT said(command);
}

bool LivePage::key(QKeyEvent *event)
{
    if (!isEnter(*event))
        return false;
    take();
    return true;
}

void LivePage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    const bool narrow = width() < Theme::current().px(760);
    m_columns->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_columns->setStretchFactor(m_left, 2);
    m_columns->setStretchFactor(m_right, narrow ? 3 : 1); // under the drawing the field keeps its room
}

void LivePage::showDenial(const core::Denial &denial)
{
    m_entry->showDenial(denial);
}

} // namespace app
