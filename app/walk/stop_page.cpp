#include "app/walk/stop_page.h"

#include "app/draw/signal_panel.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/walk/page_parts.h"
#include "app/walk/signal_state.h"
#include "app/walk/words.h"

#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>

namespace app {

StopPage::StopPage(const JobController &job, QWidget *parent) : Page(parent)
{
    const QString when = Words::time(job.session().at().wallMs);
    const QString name = job.jobName().isEmpty() ? QString() : tr(", job %1").arg(job.jobName());
    build(signalOf(job.view(), *job.session().content().safety, job.session().gate()),
          tr("Stopped %1%2. Nothing here needs a key from you. The walk is closed; no relighting advice. A new job asks who declared the place safe, and when.").arg(when, name),
          !job.view().step.ways.empty(), true);
}

StopPage::StopPage(const ContentFiles &content, QWidget *parent) : Page(parent)
{
    core::StateView view;
    view.step.screen = "S12";
    build(signalOf(view, content.safety, {}), tr("Nothing here needs a key from you."), true, false);
}

void StopPage::build(const SignalText &text, const QString &note, bool mayLeave, bool hasJob)
{
    m_hasJob = hasJob;
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 8, 8, 8);
    auto *area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    area->viewport()->setAutoFillBackground(false);
    auto *inside = new QWidget;
    auto *body = new QVBoxLayout(inside);
    body->setContentsMargins(8, 8, 8, 8);
    m_panel = new SignalPanel;
    m_panel->setObjectName(QStringLiteral("panel"));
    m_panel->setStopPage(true);
    m_panel->setText(text);
    body->addWidget(m_panel);
    body->addStretch();
    area->setWidget(inside);
    inside->setAutoFillBackground(false); // setWidget() turns it on
    layout->addWidget(area, 1);
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(12));
    row->setContentsMargins(8, 0, 8, 0);
    if (mayLeave)
        addWays(flow, hasJob);
    layout->addWidget(row);
    m_note = textLabel(note, Type::Text, Role::Ink2);
    layout->addWidget(m_note);
}

void StopPage::addWays(QLayout *row, bool hasJob)
{
    row->addWidget(textLabel(tr("It was not gas:"), Type::Strong));
    struct Way
    {
        const char *why;
        QString words;
    };
    const Way ways[] = {{"smoke", tr("smoke or burning smell")}, {"shock", tr("shock or spark")}, {"water", tr("water")}, {"mistake", tr("pressed by mistake")}};
    for (const Way &way : ways) {
        if (!hasJob && std::string_view(way.why) != "mistake")
            continue;
        m_ways.emplace_back(way.why);
        auto *button = new KeyButton(way.words, QString::number(m_ways.size()));
        button->setObjectName(QStringLiteral("way:") + QLatin1String(way.why));
        connect(button, &QPushButton::clicked, this, [this, why = std::string(way.why)] { say(why); });
        row->addWidget(button);
    }
}

void StopPage::say(const std::string &why)
{
    if (!m_hasJob) {
        Q_EMIT wantsStart();
        return;
    }
    core::Command command;
    command.what = core::Command::What::Stop;
    command.why = why;
    Q_EMIT said(command);
}

QWidget *StopPage::firstFocus()
{
    return m_panel;
}

bool StopPage::key(QKeyEvent *event)
{
    const int digit = digitOf(*event);
    if (digit == 0 || static_cast<std::size_t>(digit) > m_ways.size())
        return false;
    say(m_ways[static_cast<std::size_t>(digit) - 1]);
    return true;
}

void StopPage::showDenial(const core::Denial &denial)
{
    m_note->setText(qs(denial.text), Type::Strong);
}

} // namespace app
