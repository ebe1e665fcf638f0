#include "app/walk/answer_page.h"

#include "app/draw/drawing.h"
#include "app/draw/test_picture.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/run_label.h"
#include "app/shared/say_block.h"
#include "app/shared/theme.h"
#include "app/walk/page_parts.h"
#include "app/walk/picture_state.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QKeyEvent>

namespace app {

AnswerPage::AnswerPage(const JobController &job, QWidget *parent)
    : Page(parent), m_step(job.view().step), m_power(job.view().power), m_sheet(new ScrollSheet)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    addSentence(job);
    addPicture(job);
    addAnswers();
}

void AnswerPage::addSentence(const JobController &job)
{
    const bool atStart = m_step.screen == "S0";
    m_sheet->body()->addWidget(new RunLabel({{PageWords::caption(job.view(), job.session()), Type::Quiet, Role::Ink2}}));
    auto *say = new SayBlock(qs(m_step.text));
    m_sentence = say->sentence();
    m_sheet->body()->addWidget(say);
    QStringList more;
    if (!m_step.placeSay.empty())
        more << qs(m_step.placeSay) + QLatin1Char('.');
    if (!m_step.why.empty())
        more << qs(m_step.why);
    if (atStart)
        more << tr("Asked before the first step. The alarm stands first.");
    m_line = new RunLabel({{more.join(QLatin1Char(' ')), Type::Text, Role::Ink2}});
    m_sheet->body()->addWidget(m_line);
    m_line->setVisible(!more.isEmpty());
}

void AnswerPage::addPicture(const JobController &job)
{
    const core::Machine &machine = job.session().facts().machine;
    const bool drawn = m_step.screen.empty() && !m_step.picture.component.empty() && drawingExists(drawingOfPart(machine, m_step.picture.component));
    if (!drawn) {
        m_sheet->body()->addSpacing(Theme::current().spx(8));
        return;
    }
    auto *picture = new TestPicture;
    picture->setState(pictureOf(m_step, machine));
    yieldHeight(picture, 150);
    m_sheet->body()->addWidget(picture, 1);
}

void AnswerPage::addAnswers()
{
    for (std::size_t i = 0; i < m_step.answers.size(); ++i) {
        const core::Option &option = m_step.answers[i];
        auto *button = new KeyButton(capital(qs(option.text)), i < 9 ? QString::number(i + 1) : QString());
        button->setObjectName(QStringLiteral("answer:") + qs(option.value));
        button->setSize(KeyButton::Size::Safety);
        button->setSpread(true);
        connect(button, &QPushButton::clicked, this, [this, i] { answer(i + 1); });
        m_sheet->body()->addWidget(button);
        m_answers.push_back(button);
    }
    m_sheet->body()->addStretch(m_sheet->body()->count() > 0 ? 1 : 0);
    auto *row = new QWidget;
    auto *flow = new FlowLayout(row, Theme::current().spx(10));
    if (m_step.screen.empty() && m_step.mayDecline) {
        auto *cannot = new KeyButton(tr("I cannot"), QStringLiteral("?"));
        cannot->setObjectName(QStringLiteral("cannot"));
        connect(cannot, &QPushButton::clicked, this, &Page::wantsCannot);
        flow->addWidget(cannot);
    }
    m_more = moreButtons(this);
    for (KeyButton *button : m_more)
        flow->addWidget(button);
    m_sheet->dock()->addWidget(row);
}

void AnswerPage::setRoom(Room room)
{
    showMore(m_more, m_step.screen.empty() ? room : Room{});
}

QWidget *AnswerPage::firstFocus()
{
    return m_sentence;
}

QString AnswerPage::help() const
{
    return tr("Read the sentence, look or ask, then press the number of what is true. There is no wrong answer. “I cannot” leaves the "
              "step out and leads on; Ctrl+Z takes the last answer back.");
}

QString AnswerPage::holdSentence() const
{
    return m_power == core::Power::Energized ? tr("Energized. Touch nothing inside; look once, then power off.") : QString();
}

void AnswerPage::answer(std::size_t number)
{
    core::Command command;
    command.what = core::Command::What::Answer;
    command.value = m_step.answers[number - 1].value;
    Q_EMIT said(command);
}

// Up and Down walk the answers.
void AnswerPage::step(int by)
{
    int at = by > 0 ? -1 : static_cast<int>(m_answers.size());
    for (std::size_t i = 0; i < m_answers.size(); ++i)
        if (m_answers[i]->hasFocus())
            at = static_cast<int>(i);
    at += by;
    if (at >= 0 && at < static_cast<int>(m_answers.size()))
        m_answers[static_cast<std::size_t>(at)]->setFocus(Qt::TabFocusReason);
}

bool AnswerPage::key(QKeyEvent *event)
{
    const int digit = digitOf(*event);
    if (digit > 0 && static_cast<std::size_t>(digit) <= m_answers.size()) {
        answer(static_cast<std::size_t>(digit));
        return true;
    }
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Up) {
        step(event->key() == Qt::Key_Down ? 1 : -1);
        return true;
    }
    if (event->text() == QLatin1String("?") && m_step.screen.empty() && m_step.mayDecline) {
        Q_EMIT wantsCannot();
        return true;
    }
    if (event->key() == Qt::Key_PageDown || event->key() == Qt::Key_PageUp) {
        m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
        return true;
    }
    return false;
}

void AnswerPage::showDenial(const core::Denial &denial)
{
    m_line->setText(qs(denial.text), Type::Strong);
    m_line->show();
}

} // namespace app
