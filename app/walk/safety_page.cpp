#include "app/walk/safety_page.h"

#include "app/draw/safety_picture.h"
#include "app/draw/signal_panel.h"
#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/shared/tick_box.h"
#include "app/walk/page_parts.h"
#include "app/walk/rail_state.h"
#include "app/walk/reading_entry.h"
#include "app/walk/safety_words.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/signal_state.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>

#include <algorithm>
#include <cmath>

namespace app {

SafetyPage::SafetyPage(const JobController &job, QWidget *parent)
    : Page(parent), m_step(job.view().step), m_stopped(job.view().stopped), m_sheet(new ScrollSheet), m_left(m_step.waitS),
      m_now([&job] { return job.now(); }), m_from(job.now())
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    m_sheet->keepShare(45); // the panel is read before anything is pressed
    addState(job);
    addPanel(job);
    addMiddle(job);
    addWays();
    refresh();
    connect(&m_timer, &QTimer::timeout, this, &SafetyPage::countDown);
    if (m_left > 0)
        m_timer.start(1000);
}

void SafetyPage::addState(const JobController &job)
{
    const QString why = SafetyWords::why(job.view(), job.session());
    m_sheet->body()->addWidget(new RunLabel({{PowerWords::state(job.view()) + QLatin1Char(' '), Type::Strong},
                                             {PowerWords::inside(job.view(), job.session().gate(), job.session().facts().machine) + QLatin1Char(' ') + why, Type::Text, Role::Ink2}}));
}

void SafetyPage::addPanel(const JobController &job)
{
    m_panel = new SignalPanel;
    m_panel->setObjectName(QStringLiteral("panel"));
    m_panel->setText(signalOf(job.view(), *job.session().content().safety, job.session().gate()));
    m_sheet->body()->addWidget(m_panel);
}

void SafetyPage::addMiddle(const JobController &job)
{
    m_middle = new QHBoxLayout;
    m_middle->setSpacing(Theme::current().spx(28));
    const auto scene = sceneOf(job.view(), job.session());
    if (scene) {
        auto *picture = new SafetyPicture;
        picture->setState(*scene);
        yieldHeight(picture, 120);
        m_middle->addWidget(picture, 5);
    }
    auto *column = new QVBoxLayout;
    column->setSpacing(0);
    addBoxes(column, job);
    column->addStretch(1);
    m_middle->addLayout(column, scene ? 5 : 1);
    m_sheet->body()->addSpacing(Theme::current().spx(6));
    m_sheet->body()->addLayout(m_middle, 1);
}

void SafetyPage::addBoxes(QBoxLayout *column, const JobController &job)
{
    int number = 0;
    for (const core::Named &box : m_step.boxes) {
        const bool wire = box.id.starts_with("wire:");
        auto *tick = new TickBox(qs(box.text), wire ? QString::number(++number) : QString());
        tick->setObjectName(QStringLiteral("box:") + qs(box.id));
        connect(tick, &QCheckBox::toggled, this, &SafetyPage::refresh);
        column->addWidget(tick);
        m_boxes.emplace_back(box.id, tick);
    }
    if (!m_step.unit.empty()) {
        m_entry = new ReadingEntry(job.session().facts().machine.meter, core::Measure::VoltageDc, tr("Volts across its two terminals, V with the straight line"));
        m_entry->field()->setUnit(QStringLiteral("V ="));
        m_entry->field()->setAccessibleName(tr("Volts across the capacitor"));
        connect(m_entry, &ReadingEntry::changed, this, &SafetyPage::refresh);
        column->addWidget(m_entry);
    }
    m_wait = textLabel({}, Type::SafetyStrong);
    column->addSpacing(Theme::current().spx(8));
    column->addWidget(m_wait);
    m_line = textLabel(SafetyWords::without(m_step), Type::Text, Role::Ink2);
    column->addWidget(m_line);
}

void SafetyPage::addWays()
{
    m_ways = new QHBoxLayout;
    m_ways->setSpacing(Theme::current().spx(12));
    for (const core::Named &way : m_step.ways)
        if (way.id != "not_gas" && way.id != "mistake")
            addWay(way, SafetyWords::isOn(way.id), way.id == "decline" ? QStringLiteral("Esc") : QString());
    if (m_step.ways.empty())
        addClosing();
    m_sheet->dock()->addLayout(m_ways);
    const auto stands = tr("Local codes and licensed practice stand above this program.");
    m_sheet->dock()->addWidget(textLabel(stands, Type::Quiet, Role::Ink2));
}

// What is left where nothing may be gone on with: the record of what was looked at, and the end.
void SafetyPage::addClosing()
{
    auto *print = new KeyButton(tr("Print what was looked at"), QStringLiteral("Ctrl P"));
    print->setObjectName(QStringLiteral("print"));
    print->setSize(KeyButton::Size::Safety);
    connect(print, &QPushButton::clicked, this, &Page::wantsPrint);
    m_ways->addWidget(print, 1);
    addWay({"close", utf8(tr("Close this job"))}, false, QStringLiteral("Esc"));
}

void SafetyPage::addWay(const core::Named &way, bool on, const QString &key)
{
    auto *button = new KeyButton(qs(way.text), key);
    button->setObjectName(QStringLiteral("way:") + qs(way.id));
    button->setSize(KeyButton::Size::Safety);
    QSizePolicy policy = button->sizePolicy();
    policy.setHorizontalPolicy(QSizePolicy::Preferred);
    button->setSizePolicy(policy);
    connect(button, &QPushButton::clicked, this, [this, id = way.id] { say(id); });
    m_ways->addWidget(button, 1);
    if (on)
        m_on.push_back(button);
}

std::vector<std::string> SafetyPage::ticked() const
{
    std::vector<std::string> ids;
    for (const auto &[id, box] : m_boxes)
        if (box->isChecked())
            ids.push_back(id);
    return ids;
}

void SafetyPage::say(const std::string &way)
{
    if (way == "close") {
        Q_EMIT wantsStart();
        return;
    }
    core::Command command = SafetyWords::commandOf(m_step, way);
    if (SafetyWords::isOn(way))
        command.boxes = ticked();
    if (m_entry != nullptr && way == "reading")
        command.value = m_entry->typed();
    Q_EMIT said(command);
}

void SafetyPage::refresh()
{
    const bool all = std::ranges::all_of(m_boxes, [](const auto &box) { return box.second->isChecked(); });
    const bool read = m_entry == nullptr || m_entry->understood();
    for (KeyButton *button : m_on)
        button->setEnabled(all && read && m_left <= 0);
    if (m_left > 0) {
        const int seconds = static_cast<int>(std::ceil(m_left));
        m_wait->setText(tr("Wait: %1:%2 to go. It is counted while the program runs.").arg(seconds / 60).arg(seconds % 60, 2, 10, QLatin1Char('0')), Type::SafetyStrong);
    }
    m_wait->setVisible(m_left > 0);
}

void SafetyPage::countDown()
{
    m_left = m_step.waitS - static_cast<double>(m_now().steadyMs - m_from.steadyMs) / 1000;
    if (m_left <= 0)
        m_timer.stop();
    refresh();
}

QWidget *SafetyPage::firstFocus()
{
    return m_panel;
}

QString SafetyPage::help() const
{
    return tr("Read the panel. Tick each box once it is true, with Tab and Space; then the way on can be pressed. Nothing is chosen for "
              "you, and Enter does nothing until you have moved to a button yourself. Declining with Esc is always a good way on.");
}

void SafetyPage::escape()
{
    const bool declines = std::ranges::any_of(m_step.ways, [](const core::Named &way) { return way.id == "decline"; });
    if (declines)
        say("decline");
    else if (m_step.ways.empty())
        say("close");
}

bool SafetyPage::key(QKeyEvent *event)
{
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

// One column where there is no room for two.
void SafetyPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    const bool narrow = width() < Theme::current().px(700);
    m_middle->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    const bool cramped = width() < Theme::current().px(200) * m_ways->count(); // words of a way may take two lines
    m_ways->setDirection(cramped ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

void SafetyPage::showDenial(const core::Denial &denial)
{
    m_line->setText(qs(denial.text), Type::Strong);
}

} // namespace app
