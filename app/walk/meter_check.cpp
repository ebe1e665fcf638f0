#include "app/walk/meter_check.h"

#include "app/draw/check_picture.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/page_parts.h"
#include "app/walk/reading_entry.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QKeyEvent>

namespace app {
namespace {

using core::Measure;
using core::Reading;

// Tips together, ohm: common practice, no source. Above the last the tips are dirty or the battery is weak.
constexpr double kUsualProbes = 0.6, kMostProbes = 3;
// A fresh to a nearly empty 1.5 V cell, V: common practice, no source.
constexpr double kLeastCell = 1.2, kMostCell = 1.7;

std::optional<double> valueOf(const ReadingEntry *entry)
{
    const auto &understood = entry->understood();
    return understood && understood->reading.what == Reading::What::Value ? std::optional(understood->reading.amount.value)
                                                                          : std::nullopt;
}

} // namespace

MeterCheck::MeterCheck(const core::Meter &meter, QWidget *parent)
    : Page(parent), m_was(meter), m_sheet(new ScrollSheet), m_head(new SaySentence(tr("Does the meter tell the truth today?"))),
      m_row(new QHBoxLayout), m_right(new KeyButton(tr("yes, VΩ"))), m_wrong(new KeyButton(tr("it is in A"))),
      m_done(new KeyButton(tr("Keep it"), QStringLiteral("Enter")))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->body()->addWidget(textLabel(tr("The meter · one minute, whenever a reading is doubted"), Type::Quiet, Role::Ink2));
    m_sheet->body()->addWidget(m_head);
    m_row->setSpacing(Theme::current().spx(16));
    m_sheet->body()->addLayout(m_row, 1);
    using Scene = CheckPictureState::Scene;
    const auto number = [](Scene scene) { return static_cast<int>(scene); };
    const Station apart = station(1, tr("Probes apart"), number(Scene::Apart));
    const Station together = station(2, tr("Probes together"), number(Scene::Together));
    const Station battery = station(3, tr("A small battery"), number(Scene::Battery));
    m_apart = entry(apart, Measure::Resistance, tr("dial on Ω · good: OL"), tr("Probes apart"));
    m_together = entry(together, Measure::Resistance, tr("dial on Ω · good: 0.1 to 0.6 Ω"), tr("Probes together"));
    m_battery =
        entry(battery, Measure::VoltageDc,
              tr("dial on V with the straight line · good: 1.2 to 1.7 V; none at hand: leave it empty"), tr("A small battery"));
    addRed(station(4, tr("Where is red?"), number(Scene::WhereIsRed)));
    addWords();
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    auto *back = new KeyButton(tr("Back"), QStringLiteral("Esc"));
    m_done->setObjectName(QStringLiteral("keep"));
    m_done->setFace(KeyButton::Face::Filled);
    back->setObjectName(QStringLiteral("back"));
    flow->addWidget(m_done);
    flow->addWidget(back);
    m_sheet->dock()->addWidget(row);
    connect(m_done, &QPushButton::clicked, this, &MeterCheck::checked);
    connect(back, &QPushButton::clicked, this, &Page::closed);
    judge();
}

MeterCheck::Station MeterCheck::station(int number, const QString &title, int scene)
{
    Station station;
    station.box = new QWidget;
    station.column = new QVBoxLayout(station.box);
    station.column->setContentsMargins(0, 0, 0, 0);
    station.column->setSpacing(Theme::current().spx(6));
    CheckPictureState state;
    state.scene = static_cast<CheckPictureState::Scene>(scene);
    const bool volts = state.scene == CheckPictureState::Scene::Battery;
    state.meter = {true, volts ? Dial::VoltDc : Dial::Ohm, {}, volts ? QStringLiteral("V") : QStringLiteral("Ω"), false, false};
    state.note = tr("red here");
    state.other = tr("empty");
    station.picture = new CheckPicture(std::move(state));
    yieldHeight(station.picture, 130);
    const auto limit = [picture = station.picture] { picture->setMaximumHeight(Theme::current().spx(250)); };
    limit(); // all of one height: fields and drawings stand in one row
    connect(&Theme::current(), &Theme::changed, station.picture, limit);
    station.line = textLabel({});
    station.column->addWidget(ruleLine());
    station.column->addWidget(headingLabel(QStringLiteral("%1 %2").arg(number).arg(title)));
    station.column->addWidget(station.picture, 1);
    m_row->addWidget(station.box, 1);
    m_stations.push_back(station);
    return station;
}

ReadingEntry *MeterCheck::entry(const Station &station, Measure measure, const QString &hint, const QString &name)
{
    auto *entry = new ReadingEntry(m_was, measure, hint);
    entry->field()->setUnit(measure == Measure::VoltageDc ? QStringLiteral("V =") : QStringLiteral("Ω"));
    entry->field()->setAccessibleName(name);
    station.column->addWidget(entry);
    station.column->addWidget(station.line);
    station.column->addStretch();
    connect(entry, &ReadingEntry::changed, this, &MeterCheck::judge);
    connect(entry, &ReadingEntry::taken, this, [this] { focusNextChild(); });
    return entry;
}

void MeterCheck::addRed(const Station &station)
{
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(8));
    auto *group = new QButtonGroup(this);
    m_right->setObjectName(QStringLiteral("red_right"));
    m_wrong->setObjectName(QStringLiteral("red_in_a"));
    for (KeyButton *button : {m_right, m_wrong}) {
        button->setSize(KeyButton::Size::Row);
        button->setCheckable(true);
        group->addButton(button);
        flow->addWidget(button);
        connect(button, &QPushButton::toggled, this, &MeterCheck::judge);
    }
    station.column->addWidget(row);
    station.column->addWidget(station.line);
    station.column->addStretch();
}

void MeterCheck::addWords()
{
    auto *words =
        new RunLabel({{tr("Together it reads 3 Ω or jumps: "), Type::Strong},
                      {tr("dirty tips, worn cables, weak battery. No ohms below 20 are judged until it is right."), Type::Text},
                      {QLatin1Char('\n') + tr("Together only a tone, no number: "), Type::Strong},
                      {tr("fine for switches and fuses; a tone never says “good” of an element."), Type::Text},
                      {QLatin1Char('\n') + tr("Red is in A: "), Type::Strong},
                      {tr("a dead short across whatever is measured next. Move it now."), Type::Text}});
    m_sheet->body()->addWidget(ruleLine());
    m_sheet->body()->addWidget(words);
}

// What each of the four says, under its field, and on the drawn display.
void MeterCheck::judge()
{
    if (m_stations.size() < 4)
        return;
    const auto say = [&](std::size_t at, const QString &text, bool good) {
        m_stations[at].line->setText(text, good ? Type::Text : Type::Strong);
        m_stations[at].line->setVisible(!text.isEmpty());
    };
    const auto show = [&](std::size_t at, Dial dial, const QString &digits, const QString &unit) {
        m_stations[at].picture->setMeter({true, dial, digits, unit, false, false});
    };
    const auto apart = m_apart->understood();
    const bool open = apart && apart->reading.what == Reading::What::OverLimit;
    say(0,
        !apart ? QString()
        : open ? tr("Right. So “nothing gets through” looks.")
               : tr("Not right: something touches, or the dial is not on Ω."),
        open || !apart);
    show(0, Dial::Ohm, open || !apart ? QStringLiteral("OL") : m_apart->field()->reading(),
         open || !apart ? QStringLiteral("MΩ") : QStringLiteral("Ω"));
    const auto probes = valueOf(m_together);
    say(1,
        !probes                   ? QString()
        : *probes <= kUsualProbes ? tr("Right. It is kept, and taken off every reading in ohms.")
        : *probes <= kMostProbes  ? tr("High. It is taken off; clean the tips all the same.")
                                  : tr("Too much: clean the tips, press harder, or a new battery."),
        !probes || *probes <= kMostProbes);
    show(1, Dial::Ohm, probes ? QString::number(*probes, 'f', 1) : QString(), QStringLiteral("Ω"));
    const auto cell = valueOf(m_battery);
    const bool right = cell && *cell >= kLeastCell && *cell <= kMostCell;
    say(2,
        !cell       ? QString()
        : right     ? tr("Right.")
        : *cell < 0 ? tr("Red and black are swapped; the meter is right.")
                    : tr("Not right: another battery, else a doubtful meter."),
        right || !cell);
    show(2, Dial::VoltDc, cell ? QString::number(*cell, 'f', 2) : QString(), QStringLiteral("V"));
    say(3, m_wrong->isChecked() ? tr("Move it to VΩ now; this page waits for it.") : QString(), false);
    show(3, Dial::VoltAc, {}, QStringLiteral("V"));
    m_done->setEnabled(!m_wrong->isChecked());
}

core::Meter MeterCheck::meter() const
{
    core::Meter meter = m_was;
    if (const auto probes = valueOf(m_together); probes && *probes >= 0 && *probes <= kMostProbes)
        meter.probeZero = core::Amount{*probes, core::Unit::Ohm};
    return meter;
}

QWidget *MeterCheck::firstFocus()
{
    return m_apart->field();
}

QString MeterCheck::help() const
{
    return tr(
        "Four looks at your own meter. Type what each shows; Enter goes to the next field. What is left empty stays as it was.");
}

bool MeterCheck::key(QKeyEvent *event)
{
    if (isEnter(*event)) {
        if (m_done->isEnabled())
            Q_EMIT checked();
        return true;
    }
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

void MeterCheck::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    m_row->setDirection(width() < Theme::current().px(820) ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

void MeterCheck::showDenial(const core::Denial &denial)
{
    m_together->showDenial(denial);
}

} // namespace app
