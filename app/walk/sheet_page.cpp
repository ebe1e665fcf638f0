#include "app/walk/sheet_page.h"

#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/reading_field.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/line_state.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"
#include "core/session/names.h"

#include <QKeyEvent>

namespace app {

SheetPage::SheetPage(const JobController &job, QWidget *parent)
    : Page(parent), m_component(job.view().step.picture.component), m_sheet(new ScrollSheet), m_field(new ReadingField),
      m_line(textLabel({})), m_take(new KeyButton(tr("Judge by this"), QStringLiteral("Enter")))
{
    const core::Machine &machine = job.session().facts().machine;
    const core::StepView &step = job.view().step;
    const QString part = lowerFirst(qs(core::nameOf(machine, m_component)));
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    QVBoxLayout *body = m_sheet->body();
    body->addWidget(
        textLabel(qs(step.title) + QStringLiteral(" · ") + tr("from the sheet or the plate"), Type::Quiet, Role::Ink2));
    body->addWidget(new SaySentence(tr("What does the sheet say of the %1?").arg(part)));
    body->addWidget(
        textLabel(tr("The sheet is folded behind a panel or in the console; the plate is on the part or inside the door. "
                     "Its own value stands above what is common.")));
    if (step.good && step.good->judgesValues())
        body->addWidget(textLabel(tr("Until then: good is %1, %2.").arg(goodWords(*step.good), qs(step.good->basisText)),
                                  Type::Text, Role::Ink2));
    body->addSpacing(Theme::current().spx(8));
    m_field->setUnit(QStringLiteral("Ω"));
    m_field->setAccessibleName(tr("Value of the sheet"));
    m_field->setMaximumWidth(Theme::current().spx(420));
    body->addWidget(m_field);
    m_line->setText(tr("Ohms as 10.7 Ω, or what the plate says as 240 V 5400 W"), Type::Quiet, Role::Ink2);
    body->addWidget(m_line);
    body->addStretch(1);
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    auto *back = new KeyButton(tr("There is none: back"), QStringLiteral("Esc"));
    m_take->setObjectName(QStringLiteral("take"));
    back->setObjectName(QStringLiteral("back"));
    flow->addWidget(m_take);
    flow->addWidget(back);
    m_sheet->dock()->addWidget(row);
    m_take->setEnabled(false);
    connect(m_field, &ReadingField::typed, this, [this](const QString &text) { m_take->setEnabled(!text.isEmpty()); });
    connect(m_field, &ReadingField::taken, this, &SheetPage::take);
    connect(m_take, &QPushButton::clicked, this, &SheetPage::take);
    connect(back, &QPushButton::clicked, this, &Page::closed);
}

QWidget *SheetPage::firstFocus()
{
    return m_field;
}

QString SheetPage::help() const
{
    return tr("Type the resistance the sheet gives, or volts and watts of the plate: the resistance follows from them. The next "
              "reading is judged by it.");
}

// A bare number is ohms.
void SheetPage::take()
{
    QString typed = m_field->reading();
    if (typed.isEmpty())
        return;
    bool number = false;
    typed.toDouble(&number);
    core::Command command;
    command.what = core::Command::What::Sheet;
    command.test = m_component;
    command.value = utf8(number ? typed + QStringLiteral(" ohm") : typed);
    Q_EMIT said(command);
}

bool SheetPage::key(QKeyEvent *event)
{
    if (!isEnter(*event))
        return false;
    take();
    return true;
}

void SheetPage::showDenial(const core::Denial &denial)
{
    m_line->setText(qs(denial.text), Type::Strong);
    m_field->setFocus();
    m_field->selectAll();
}

} // namespace app
