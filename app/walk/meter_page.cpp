#include "app/walk/meter_page.h"

#include "app/draw/test_picture.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/shared/tick_box.h"
#include "app/walk/meter_profile.h"
#include "app/walk/page_parts.h"
#include "app/walk/reading_entry.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>

#include <algorithm>

namespace app {
namespace {

constexpr double kMostProbes = 3; // ohm: above it the tips are dirty or the battery is weak

} // namespace

MeterPage::MeterPage(const core::Meter &meter, bool energized, const QString &forWhat, QWidget *parent)
    : Page(parent), m_was(meter), m_columns(new QHBoxLayout(this)), m_main(new ScrollSheet), m_side(new ScrollSheet),
      m_power(new TickBox(tr("They may be offered in this job.")))
{
    m_columns->setContentsMargins(0, 0, 0, 0);
    m_columns->setSpacing(Theme::current().spx(12));
    m_columns->addWidget(m_main, 2);
    m_columns->addWidget(m_side, 1);
    m_main->body()->addWidget(new SaySentence(tr("Your meter, by its looks")));
    m_main->body()->addWidget(
        textLabel(tr("Tick what is printed round its dial. Tests it cannot do are never asked for."), Type::Text, Role::Ink2));
    m_power->setChecked(energized);
    addFunctions();
    addRange();
    addMark();
    addProbes();
    addPower();
    m_main->body()->addStretch(1);
    addSide();
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    m_done = new KeyButton(forWhat.isEmpty() ? tr("That is my meter") : tr("Start: %1").arg(forWhat), QStringLiteral("Enter"));
    m_done->setObjectName(QStringLiteral("done"));
    m_done->setFace(KeyButton::Face::Filled);
    auto *check = new KeyButton(tr("Check it now"));
    check->setObjectName(QStringLiteral("check"));
    connect(check, &QPushButton::clicked, this, &MeterPage::wantsCheck);
    auto *none = new KeyButton(tr("I have no meter yet"));
    none->setObjectName(QStringLiteral("none"));
    auto *back = new KeyButton(tr("Back"), QStringLiteral("Esc"));
    back->setObjectName(QStringLiteral("back"));
    for (KeyButton *button : {m_done, check, none, back})
        flow->addWidget(button);
    m_main->dock()->addWidget(row);
    connect(m_done, &QPushButton::clicked, this, &MeterPage::described);
    connect(none, &QPushButton::clicked, this, &MeterPage::wantsNone);
    connect(back, &QPushButton::clicked, this, &Page::closed);
    refresh();
}

void MeterPage::addFunctions()
{
    using core::Measure;
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(Theme::current().spx(24));
    grid->setVerticalSpacing(Theme::current().spx(2));
    const Measure measures[] = {Measure::Resistance, Measure::Continuity,   Measure::VoltageDc,   Measure::Temperature,
                                Measure::VoltageAc,  Measure::CurrentClamp, Measure::Capacitance, Measure::VoltageLowImpedance};
    for (std::size_t i = 0; i < std::size(measures); ++i) {
        auto *box = new TickBox(MeterWords::sign(measures[i]) + QStringLiteral("  ") + MeterWords::plain(measures[i]));
        box->setObjectName(QStringLiteral("function:") + qs(core::word(measures[i])));
        box->setCompact(true);
        box->setChecked(m_was.can(measures[i]));
        connect(box, &QCheckBox::toggled, this, &MeterPage::refresh);
        grid->addWidget(box, static_cast<int>(i % 4), static_cast<int>(i / 4));
        m_functions.emplace_back(measures[i], box);
    }
    m_main->body()->addWidget(headingLabel(tr("Round its dial")));
    m_main->body()->addLayout(grid);
}

KeyButton *MeterPage::choice(QLayout *row, const QString &words, bool checked, const char *name)
{
    auto *button = new KeyButton(words);
    button->setObjectName(QLatin1String(name));
    button->setSize(KeyButton::Size::Row);
    button->setCheckable(true);
    button->setChecked(checked);
    connect(button, &QPushButton::toggled, this, &MeterPage::refresh);
    row->addWidget(button);
    return button;
}

void MeterPage::addRange()
{
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    m_auto = choice(flow, tr("few marks: it finds the range by itself"), m_was.autoRange, "auto");
    KeyButton *manual = choice(flow, tr("many numbers: I turn to the range"), !m_was.autoRange, "manual");
    auto *group = new QButtonGroup(this);
    group->addButton(m_auto);
    group->addButton(manual);
    m_main->body()->addWidget(row);
}

void MeterPage::addMark()
{
    m_main->body()->addWidget(headingLabel(tr("Printed beside its jacks, and on the probes: the lower of both counts")));
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    auto *group = new QButtonGroup(this);
    struct Mark
    {
        const char *mark, *name;
        QString words;
    };
    const Mark marks[] = {{"CAT III 300 V", "cat3", tr("CAT III 300 V or more")},
                          {"CAT II 300 V", "cat2", tr("CAT II 300 V or more")},
                          {"", "cat0", tr("no mark, or not sure")}};
    const bool known = std::ranges::any_of(marks, [&](const Mark &mark) { return m_was.category == mark.mark; });
    for (const Mark &mark : marks) {
        const bool three = !known && m_was.category.starts_with("CAT III"), iv = !known && m_was.category.starts_with("CAT IV");
        const bool here = known ? m_was.category == mark.mark : (three || iv) && std::string_view(mark.mark) == "CAT III 300 V";
        m_marks.emplace_back(mark.mark, choice(flow, mark.words, here, mark.name));
        group->addButton(m_marks.back().second);
    }
    m_main->body()->addWidget(row);
}

void MeterPage::addProbes()
{
    m_main->body()->addWidget(headingLabel(tr("Dial to Ω, both tips together: what does it show?")));
    core::Meter plain = usualMeter();
    m_probes = new ReadingEntry(plain, core::Measure::Resistance,
                                tr("Good: 0.1 to 0.6 Ω. It is kept, and taken off every reading in ohms. Empty: not known yet."));
    m_probes->field()->setUnit(QStringLiteral("Ω"));
    m_probes->field()->setAccessibleName(tr("Probes together"));
    m_probes->field()->setMaximumWidth(Theme::current().spx(300));
    if (m_was.probeZero)
        m_probes->setTyped(QString::number(m_was.probeZero->value));
    m_main->body()->addWidget(m_probes);
    connect(m_probes, &ReadingEntry::changed, this, &MeterPage::refresh);
    connect(m_probes, &ReadingEntry::taken, this, &MeterPage::described);
}

void MeterPage::addPower()
{
    m_main->body()->addWidget(headingLabel(tr("Readings with the power on")));
    m_main->body()->addWidget(textLabel(
        tr("Some faults only show under voltage. Then the program can ask for it, last of all, each behind its own page, each "
           "with yes "
           "or no. Off until you turn it on, for one job. No is always a good answer: an electrician reads it in minutes.")));
    m_power->setObjectName(QStringLiteral("energized"));
    connect(m_power, &QCheckBox::toggled, this, &MeterPage::refresh);
    m_main->body()->addWidget(m_power);
    m_powerLine = textLabel({}, Type::Quiet, Role::Ink2);
    m_main->body()->addWidget(m_powerLine);
}

void MeterPage::addSide()
{
    m_side->body()->addWidget(headingLabel(tr("What this one can do")));
    m_picture = new TestPicture;
    yieldHeight(m_picture, 200);
    m_side->body()->addWidget(m_picture, 3);
    m_can = textLabel({});
    m_side->body()->addWidget(m_can);
    m_side->body()->addStretch(1);
}

core::Meter MeterPage::meter() const
{
    core::Meter meter = m_was;
    meter.functions.clear();
    for (const auto &[measure, box] : m_functions)
        if (box->isChecked())
            meter.functions.insert(std::string(core::word(measure)));
    meter.autoRange = m_auto->isChecked();
    for (const auto &[mark, button] : m_marks)
        if (button->isChecked())
            meter.category = mark;
    meter.probeZero.reset();
    if (m_probes->understood() && m_probes->understood()->reading.what == core::Reading::What::Value &&
        m_probes->understood()->reading.amount.value <= kMostProbes)
        meter.probeZero = m_probes->understood()->reading.amount;
    return meter;
}

bool MeterPage::energized() const
{
    return m_power->isChecked();
}

void MeterPage::refresh()
{
    if (m_can == nullptr)
        return;
    const core::Meter now = meter();
    TestPictureState state;
    state.meter.dial = Dial::Ohm;
    state.meter.display = now.probeZero ? QString::number(now.probeZero->value, 'f', 1) : QStringLiteral("OL");
    state.meter.unit = QStringLiteral("Ω");
    state.form = TestPictureState::Form::Meter;
    m_picture->setState(state);
    QStringList says{MeterWords::inShort(now)};
    const bool ohms = now.can(core::Measure::Resistance), volts = now.can(core::Measure::VoltageAc);
    says << (ohms ? tr("Resistance decides most tests.") : tr("Without Ω most parts stay “not proven”: only looks are left."));
    if (!ohms && now.can(core::Measure::Continuity))
        says << tr("A tone clears a switch or a fuse; it never says “good” of an element.");
    says << (now.autoRange ? tr("It finds the range by itself.") : tr("Turn to the lowest range that does not show OL."));
    const bool wall = now.category.starts_with("CAT III");
    if (volts)
        says << (wall ? tr("With this mark it may go into a wall outlet.")
                 : now.category.empty()
                     ? tr("Without a mark no reading with power on is ever offered; dead tests come first anyway.")
                     : tr("With CAT II it stays out of the wall outlet."));
    says << MeterWords::probes(now) + QLatin1Char('.');
    m_can->setText(says.join(QStringLiteral("\n\n")));
    const bool fit = volts && !now.category.empty();
    m_powerLine->setText(m_power->isChecked() && !fit ? tr("With this meter none can be offered: it needs V~ and a mark.")
                         : m_power->isChecked()       ? tr("On for this job. Each one still asks first.")
                                                      : tr("Off: none is shown in this job."),
                         Type::Quiet, Role::Ink2);
}

QWidget *MeterPage::firstFocus()
{
    return m_functions.front().second;
}

QString MeterPage::help() const
{
    return tr("Tick with Space what is printed round the dial of your meter. The mark is a small CAT III or CAT II beside the "
              "jacks; the probes have one too. "
              "Touch both tips together on Ω and type what it shows. Enter goes on.");
}

bool MeterPage::key(QKeyEvent *event)
{
    if (isEnter(*event)) {
        Q_EMIT described();
        return true;
    }
    if (event->key() == Qt::Key_PageDown || event->key() == Qt::Key_PageUp) {
        m_main->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
        return true;
    }
    return false;
}

void MeterPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    const bool narrow = width() < Theme::current().px(760);
    m_columns->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_side->setVisible(!narrow || height() >= Theme::current().px(700)); // it only says again what is ticked
}

void MeterPage::showDenial(const core::Denial &denial)
{
    m_can->setText(qs(denial.text), Type::Strong);
}

} // namespace app
