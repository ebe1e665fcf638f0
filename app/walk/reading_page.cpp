#include "app/walk/reading_page.h"

#include "app/draw/chain_line.h"
#include "app/draw/curve_view.h"
#include "app/draw/number_line.h"
#include "app/draw/test_picture.h"
#include "app/shared/counted.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/run_label.h"
#include "app/shared/say_block.h"
#include "app/shared/theme.h"
#include "app/walk/curve_state.h"
#include "app/walk/line_state.h"
#include "app/walk/page_parts.h"
#include "app/walk/picture_state.h"
#include "app/walk/reading_entry.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>

namespace app {
namespace {

constexpr int kLeanFrom = 175; // percent of text: the sentence needs the room
constexpr int kLowBelow = 490; // px of height at 100 %: the drawing needs it

} // namespace

ReadingPage::ReadingPage(const JobController &job, std::optional<Landed> landed, QWidget *parent)
    : Page(parent), m_step(landed ? landed->step : job.view().step), m_landed(std::move(landed)),
      m_meter(job.session().facts().machine.meter), m_sheet(new ScrollSheet)
{
    m_askedAgain = m_landed && isAskedAgain(*m_landed, job.view());
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    addWords(job);
    addPicture(job);
    addEntry(job);
    addActions(job);
    showReading();
}

void ReadingPage::addWords(const JobController &job)
{
    const std::optional<LandedWords> words =
        m_landed ? std::optional(LandedWords::of(*m_landed, job.view(), job.session())) : std::nullopt;
    core::StateView view = job.view();
    view.step = m_step;
    m_sheet->body()->addWidget(textLabel(PageWords::caption(view, job.session()), Type::Quiet, Role::Ink2));
    const bool again = !m_landed && (m_step.reseat || m_step.near);
    m_sentence = new SayBlock(words ? words->sentence : again ? LandedWords::again(m_step) : qs(m_step.text));
    m_sheet->body()->addWidget(m_sentence);
    QStringList more;
    if (words)
        more << words->second;
    else if (again)
        more << qs(m_step.text);
    else if (!m_step.placeSay.empty() && job.session().gate().inside.covers != core::Covers::Open)
        more << qs(m_step.placeSay) + QLatin1Char('.');
    if (!words && !m_step.why.empty())
        more << qs(m_step.why);
    if (!words && m_step.waitS > 0)
        more << counted(qRound(m_step.waitS), tr("Wait %1 second before you read."), tr("Wait %1 seconds before you read."));
    more.removeAll(QString());
    if (!more.isEmpty())
        m_sheet->body()->addWidget(textLabel(more.join(QLatin1Char(' ')), Type::Text, words ? Role::Ink : Role::Ink2));
}

void ReadingPage::addPicture(const JobController &job)
{
    const core::Machine &machine = job.session().facts().machine;
    auto *row = new QHBoxLayout;
    m_picture = new TestPicture;
    TestPictureState state = pictureOf(m_step, machine);
    if (m_landed) {
        const core::Judgement judged = judgedOf(*m_landed, m_meter);
        const bool loop = machine.appliance->loop(m_step.test) != nullptr;
        const bool open = judged.name == core::ReadingName::Open || judged.name == core::ReadingName::NoTone;
        state = pictureWith(std::move(state), m_landed->reading, !loop && open && judged.convicts);
    }
    m_picture->setState(std::move(state));
    yieldHeight(m_picture, 150);
    row->addWidget(m_picture, 3);
    if (auto curve = curveOf(m_step, machine, before())) {
        m_curve = new CurveView;
        m_curve->setState(std::move(*curve));
        yieldHeight(m_curve, 150);
        row->addWidget(m_curve, 4);
    }
    m_sheet->body()->addLayout(row, 1);
}

std::vector<core::Reading> ReadingPage::before() const
{
    return m_landed ? std::vector{m_landed->reading} : std::vector<core::Reading>();
}

void ReadingPage::addDemands(QBoxLayout *row)
{
    for (const core::Demanded &demand : m_step.with) {
        auto *column = new QVBoxLayout;
        const QString hint = demand.limits ? tr("°C or °F") : tr("°C or °F; left empty: as the room");
        auto *entry = new ReadingEntry(m_meter, core::Measure::Temperature, hint);
        entry->field()->setUnit(QStringLiteral("°C"));
        entry->field()->setAccessibleName(qs(demand.text));
        column->addWidget(headingLabel(qs(demand.text)));
        column->addWidget(entry);
        column->addStretch();
        row->addLayout(column, 4);
        m_demands.emplace_back(demand.id, entry);
        connect(entry, &ReadingEntry::changed, this, &ReadingPage::showReading);
        connect(entry, &ReadingEntry::taken, this, [this] { m_entry->field()->setFocus(); });
    }
}

void ReadingPage::addEntry(const JobController &job)
{
    const core::Measure measure = m_step.picture.measure;
    const bool ohms = measure == core::Measure::Resistance;
    m_chainLine = new ChainLine;
    m_chainLine->hide();
    m_sheet->dock()->addWidget(m_chainLine);
    m_row = new QHBoxLayout;
    m_row->setSpacing(Theme::current().spx(20));
    m_sheet->dock()->addLayout(m_row);
    if (!m_landed)
        addDemands(m_row);
    auto *column = new QVBoxLayout;
    const QString question = m_landed ? tr("The meter shows") : tr("What does the meter show?");
    m_entry = new ReadingEntry(m_meter, measure,
                               ohms                                   ? tr("Type what you see: 10.7 or 10,7 or OL")
                               : measure == core::Measure::Continuity ? tr("Type: tone or no tone")
                                                                      : tr("Type what you see"));
    m_entry->field()->setUnit(Words::unit(m_step.unit, measure));
    m_entry->field()->setAccessibleName(question);
    m_entry->setProbes(m_meter.probeZero ? m_meter.probeZero->value : 0);
    m_question = headingLabel(question);
    column->addWidget(m_question);
    column->addWidget(m_entry);
    column->addStretch();
    m_row->addLayout(column, 5);
    connect(m_entry, &ReadingEntry::changed, this, &ReadingPage::showReading);
    connect(m_entry, &ReadingEntry::taken, this, &ReadingPage::take);
    if (m_landed) {
        m_entry->setTyped(m_landed->typed);
        m_entry->field()->setClosed(true);
        m_entry->field()->setNote(m_askedAgain ? tr("taken, once more") : tr("taken"));
    }
    m_lineSide = new QWidget;
    auto *side = new QVBoxLayout(m_lineSide);
    side->setContentsMargins(0, 0, 0, 0);
    const bool judged = m_step.good && m_step.good->judgesValues();
    const QString good = judged ? tr("Good: %1").arg(goodWords(*m_step.good)) : tr("Nothing to compare with yet");
    m_good = new RunLabel({{good, Type::Title}});
    if (judged)
        m_basis = QStringLiteral("   ") + qs(m_step.good->basisText);
    side->addWidget(m_good);
    m_bad = textLabel(judged ? badWords(*m_step.good) : tr("Read the sheet in the cabinet; the reading is kept."), Type::Text);
    side->addWidget(m_bad);
    if (judged) {
        m_line = new NumberLine;
        side->addWidget(m_line);
        m_bad->hide();
    }
    side->addStretch();
    m_row->addWidget(m_lineSide, 9);
    (void)job;
}

KeyButton *ReadingPage::action(QLayout *row, const QString &words, const QString &key, const char *name)
{
    auto *button = new KeyButton(words, key);
    button->setObjectName(QLatin1String(name));
    row->addWidget(button);
    m_actions.push_back(button);
    return button;
}

void ReadingPage::addOpenActions(QLayout *row)
{
    const core::Measure measure = m_step.picture.measure;
    if (measure == core::Measure::Resistance || measure == core::Measure::Diode)
        connect(action(row, QStringLiteral("OL"), {}, "ol"), &QPushButton::clicked, this, [this] { takeWord("OL"); });
    if (measure == core::Measure::Continuity) {
        connect(action(row, tr("Tone"), {}, "tone"), &QPushButton::clicked, this, [this] { takeWord("tone"); });
        connect(action(row, tr("No tone"), {}, "no_tone"), &QPushButton::clicked, this, [this] { takeWord("no tone"); });
    }
    connect(action(row, tr("It jumps"), {}, "jumps"), &QPushButton::clicked, this, [this] { takeWord("jumps"); });
    connect(action(row, tr("I cannot"), QStringLiteral("?"), "cannot"), &QPushButton::clicked, this, &Page::wantsCannot);
    if (m_step.near)
        connect(action(row, tr("Type the sheet's value"), {}, "sheet"), &QPushButton::clicked, this, &ReadingPage::wantsSheet);
}

void ReadingPage::addClosedActions(QLayout *row, const JobController &job)
{
    const core::StepView &next = job.view().step;
    const QString title = job.view().verdict     ? tr("the verdict")
                          : !next.screen.empty() ? tr("safety first")
                                                 : qs(next.title.empty() ? std::string() : next.title);
    const QString words = m_askedAgain      ? (next.reseat ? tr("Take it once more") : tr("Take it again"))
                          : title.isEmpty() ? tr("Go on")
                                            : tr("Go on: %1").arg(lowerFirst(title));
    m_take = action(row, words, QStringLiteral("Enter"), "go_on");
    m_take->setFace(KeyButton::Face::Filled);
    connect(m_take, &QPushButton::clicked, this, &ReadingPage::goesOn);
    m_near = m_askedAgain && next.near;
    if (m_near)
        connect(action(row, tr("The sheet's value"), QStringLiteral("S"), "sheet"), &QPushButton::clicked, this,
                &ReadingPage::wantsSheet);
    connect(action(row, tr("Change it"), QStringLiteral("Backspace"), "change"), &QPushButton::clicked, this, &ReadingPage::undo);
    if (m_askedAgain)
        connect(action(row, tr("I cannot"), QStringLiteral("?"), "cannot"), &QPushButton::clicked, this, &Page::wantsCannot);
}

void ReadingPage::addActions(const JobController &job)
{
    auto *bar = new QHBoxLayout;
    auto *left = new QWidget;
    auto *flow = new FlowLayout(left, Theme::current().spx(10));
    if (m_landed)
        addClosedActions(flow, job);
    else
        addOpenActions(flow);
    m_more = moreButtons(this);
    for (KeyButton *button : m_more) {
        flow->addWidget(button);
        m_actions.push_back(button);
    }
    bar->addWidget(left, 1);
    if (!m_landed) {
        m_take = new KeyButton(tr("Take this reading"), QStringLiteral("Enter"));
        m_take->setObjectName(QStringLiteral("take"));
        m_take->setFace(KeyButton::Face::Filled);
        connect(m_take, &QPushButton::clicked, this, &ReadingPage::take);
        bar->addWidget(m_take, 0, Qt::AlignTop);
        m_actions.push_back(m_take);
    }
    m_sheet->dock()->addSpacing(Theme::current().spx(4));
    m_sheet->dock()->addLayout(bar);
}

// The line shows the reading before it is taken, with what the temperature given makes of the limits.
void ReadingPage::showReading()
{
    std::vector<core::Reading> readings = before();
    if (!m_landed && m_entry->understood())
        readings.push_back(m_entry->understood()->reading);
    if (m_line != nullptr)
        m_line->setState(lineOf(*m_step.good, m_step.picture.measure, m_meter, readings, qs(m_step.title)));
    if (!m_landed) {
        const bool demandsMet = std::all_of(m_demands.begin(), m_demands.end(), [](const auto &demand) {
            return demand.second->field()->reading().isEmpty() || demand.second->understood();
        });
        m_take->setEnabled(m_entry->understood().has_value() && demandsMet);
    }
}

void ReadingPage::setRoom(Room room)
{
    m_room = room;
    showMore(m_more, room);
    giveWay();
}

// In a low window, or with large text, words stand for the line, and the drawing keeps its room.
void ReadingPage::giveWay()
{
    const bool large = !m_room.chain && Theme::current().textPercent() >= kLeanFrom;
    const bool lean = large || height() < Theme::current().px(kLowBelow);
    const bool words = lean || !m_room.chain;
    m_chainLine->setVisible(!m_room.chain);
    m_question->setVisible(!lean);
    Runs good{{m_good->text().remove(m_basis), Type::Title}};
    if (!lean && !m_basis.isEmpty())
        good.push_back({m_basis, Type::Quiet, Role::Ink2});
    m_good->setRuns(std::move(good));
    m_entry->setTerse(lean);
    for (KeyButton *button : m_actions)
        button->setSize(lean ? KeyButton::Size::Row : KeyButton::Size::Normal);
    if (m_line != nullptr) {
        m_line->setVisible(!words);
        m_bad->setVisible(words);
    }
}

void ReadingPage::setChain(const ChainState &chain)
{
    m_chainLine->setState(chain);
}

// Field over line where there is no room beside.
void ReadingPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    const bool narrow = width() < Theme::current().px(m_demands.empty() ? 560 : 720);
    m_row->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    giveWay();
}

QWidget *ReadingPage::firstFocus()
{
    if (m_landed)
        return m_take;
    for (const auto &[id, entry] : m_demands)
        return entry->field();
    return m_entry->field();
}

QString ReadingPage::help() const
{
    return tr(
        "Set the dial as in the drawing, black in COM, red in VΩ. Take off the wires that are drawn open, hold the probes where "
        "the "
        "drawing shows, and type what the display shows. OL means: more than the meter can show, nothing gets through. If the "
        "number jumps and does not settle, say so. Nothing is taken before Enter.");
}

void ReadingPage::take()
{
    if (m_take->isEnabled())
        takeWord(m_entry->typed().c_str());
}

void ReadingPage::takeWord(const char *word)
{
    core::Command command;
    command.what = core::Command::What::Reading;
    command.value = word;
    for (const auto &[id, entry] : m_demands)
        if (!entry->field()->reading().isEmpty())
            command.with[id] = entry->typed();
    m_entry->field()->setText(qs(word));
    Q_EMIT said(command);
}

void ReadingPage::undo()
{
    core::Command command;
    command.what = core::Command::What::Undo;
    Q_EMIT said(command);
}

bool ReadingPage::letter(QKeyEvent *event)
{
    if (event->text() == QLatin1String("?")) {
        Q_EMIT wantsCannot();
        return true;
    }
    if (!m_landed)
        return false;
    if (event->key() == Qt::Key_Backspace) {
        undo();
        return true;
    }
    if (event->key() == Qt::Key_S && m_near) {
        Q_EMIT wantsSheet();
        return true;
    }
    if (event->key() == Qt::Key_R && m_askedAgain) {
        Q_EMIT goesOn();
        return true;
    }
    return false;
}

bool ReadingPage::key(QKeyEvent *event)
{
    if (isEnter(*event)) {
        m_landed ? Q_EMIT goesOn() : take();
        return true;
    }
    if (event->key() == Qt::Key_PageDown || event->key() == Qt::Key_PageUp) {
        m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
        return true;
    }
    return letter(event);
}

void ReadingPage::showDenial(const core::Denial &denial)
{
    const bool ofTemperature = denial.code.starts_with("with_") && !m_demands.empty();
    (ofTemperature ? m_demands.front().second : m_entry)->showDenial(denial);
}

} // namespace app
