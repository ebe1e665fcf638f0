#include "app/walk/verdict_page.h"

#include "app/draw/chain_line.h"
#include "app/draw/drawing.h"
#include "app/draw/number_line.h"
#include "app/draw/test_picture.h"
#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/shared/tick_box.h"
#include "app/walk/fact_row.h"
#include "app/walk/line_state.h"
#include "app/walk/page_parts.h"
#include "app/walk/picture_state.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/verdict_words.h"
#include "app/walk/words.h"
#include "core/session/names.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>

#include <algorithm>

namespace app {

VerdictPage::VerdictPage(const JobController &job, QWidget *parent)
    : Page(parent), m_view(job.view()), m_verdict(*job.view().verdict), m_columns(new QHBoxLayout(this)), m_main(new ScrollSheet),
      m_side(new ScrollSheet)
{
    m_columns->setContentsMargins(0, 0, 0, 0);
    m_columns->setSpacing(Theme::current().spx(12));
    m_columns->addWidget(m_main, 2);
    m_columns->addWidget(m_side, 1);
    addHeadline(job);
    addOffers();
    addProofs(job);
    addCauses();
    addPhone();
    addPutBack(job);
    addProve();
    m_main->body()->addStretch(1);
    m_chain = new ChainLine;
    m_main->dock()->addWidget(m_chain);
    m_line = textLabel({}, Type::Strong);
    m_line->hide();
    m_main->dock()->addWidget(m_line);
    addSide(job);
}

void VerdictPage::addHeadline(const JobController &job)
{
    QVBoxLayout *body = m_main->body();
    body->addWidget(textLabel(VerdictWords::caption(m_view, job.session().at().wallMs), Type::Quiet, Role::Ink2));
    m_headline = new SaySentence(qs(m_verdict.headline), Type::Verdict);
    m_headline->setObjectName(QStringLiteral("headline"));
    auto *head = new QHBoxLayout;
    head->addWidget(m_headline, 1);
    if (QWidget *picture = pictureOfPart(job))
        head->addWidget(picture);
    body->addLayout(head);
    if (!m_verdict.sentence.empty())
        body->addWidget(textLabel(qs(m_verdict.sentence), Type::Safety));
    if (m_verdict.kind != core::Verdict::Kind::NotProven)
        body->addWidget(textLabel(VerdictWords::basis(m_verdict), Type::Quiet, Role::Ink2));
    std::vector<std::string> notes = m_verdict.dangers;
    notes.insert(notes.end(), m_verdict.notes.begin(), m_verdict.notes.end());
    for (const std::string &note : notes)
        body->addWidget(textLabel(qs(note)));
    for (const std::string &refused : m_verdict.refused)
        body->addWidget(textLabel(qs(refused), Type::Text, Role::Ink2));
    for (const std::string &also : m_verdict.alsoFound)
        body->addWidget(textLabel(tr("Also found: %1").arg(qs(also))));
}

// What is to be replaced, small; nullptr where there is no drawing of it or no room.
QWidget *VerdictPage::pictureOfPart(const JobController &job) const
{
    TestPictureState state;
    state.form = TestPictureState::Form::Look;
    state.meter.shown = false;
    if (m_verdict.kind == core::Verdict::Kind::Replace && !m_verdict.parts.empty())
        state.drawing = drawingOfPart(job.session().facts().machine, m_verdict.parts.front());
    if (state.drawing.isEmpty() || !drawingExists(state.drawing) || Theme::current().textPercent() >= 150)
        return nullptr;
    auto *picture = new TestPicture;
    picture->setState(std::move(state));
    picture->setFixedSize(150, 84);
    return picture;
}

void VerdictPage::addProofs(const JobController &job)
{
    if (m_verdict.proofs.empty())
        return;
    m_main->body()->addWidget(headingLabel(
        m_verdict.kind == core::Verdict::Kind::Replace ? tr("The proof: this part's own readings") : tr("What shows it")));
    for (const core::ProofLine &proof : m_verdict.proofs)
        addProof(proof, job);
}

void VerdictPage::addProof(const core::ProofLine &proof, const JobController &job)
{
    auto *row = new FactRow(proof.failed ? Standing::Failed : Standing::Cleared, brief(qs(proof.title)), qs(proof.pulled));
    row->setValue(VerdictWords::readings(proof));
    if (proof.limits && proof.limits->judgesValues()) {
        const core::Library::Found found = job.content().library.test(*job.session().facts().machine.appliance, proof.test);
        const core::Measure measure = found.test == nullptr ? core::Measure::Resistance : found.test->measure;
        auto *line = new NumberLine;
        NumberLineState state =
            lineOf(*proof.limits, measure, job.session().facts().machine.meter, proof.readings, qs(proof.title));
        state.small = true;
        line->setState(std::move(state));
        row->setMiddle(line);
        row->setEnd(tr("good: %1").arg(goodWords(*proof.limits)), VerdictWords::judged(proof));
    } else {
        row->setEnd({}, proof.failed ? tr("shows it") : QString());
    }
    m_main->body()->addWidget(row);
}

void VerdictPage::addCauses()
{
    if (m_verdict.causes.empty())
        return;
    m_main->body()->addSpacing(Theme::current().spx(4));
    m_main->body()->addWidget(headingLabel(tr("The cause behind it, before the new one goes in")));
    for (const core::CauseLine &cause : m_verdict.causes) {
        auto *row = new FactRow(standingOf(cause.standing), qs(cause.name), {});
        row->setEnd({}, cause.said.empty() ? StandingWords::word(standingOf(cause.standing)) : qs(cause.said));
        m_main->body()->addWidget(row);
    }
}

void VerdictPage::addOffers()
{
    if (m_verdict.kind != core::Verdict::Kind::NotProven)
        return;
    if (m_view.offers.empty()) {
        m_main->body()->addWidget(textLabel(tr("No test is left that this person, with this meter, can do.")));
        return;
    }
    m_main->body()->addWidget(headingLabel(tr("The best tests left")));
    for (std::size_t i = 0; i < m_view.offers.size() && i < 9; ++i) {
        const core::Offer &offer = m_view.offers[i];
        const QString words = tr("%1 · %2 · %3").arg(brief(qs(offer.title)), Words::minutes(offer.minutes), qs(offer.why));
        auto *button = new KeyButton(words, QString::number(i + 1));
        button->setObjectName(QStringLiteral("offer:") + qs(offer.test));
        button->setSpread(true);
        connect(button, &QPushButton::clicked, this, [this, i] { choose(i + 1); });
        m_main->body()->addWidget(button);
        m_offers.push_back(button);
    }
}

void VerdictPage::addPutBack(const JobController &job)
{
    if (m_verdict.putBack.empty()) {
        if (m_verdict.isTogether && m_view.power != core::Power::Unknown)
            m_main->body()->addWidget(textLabel(tr("Put together: every wire back, covers on, ticked.")));
        return;
    }
    m_main->body()->addSpacing(Theme::current().spx(4));
    m_main->body()->addWidget(
        new RunLabel({{tr("Put it together"), Type::Title},
                      {tr("   each wire back on and tugged; due whether anything is bought or not; the plug stays out"),
                       Type::Quiet, Role::Ink2}}));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(Theme::current().spx(20));
    grid->setVerticalSpacing(0);
    const int rows = static_cast<int>((m_verdict.putBack.size() + 1) / 2);
    for (std::size_t i = 0; i < m_verdict.putBack.size(); ++i) {
        const core::Named &named = m_verdict.putBack[i];
        const bool wire = named.id.starts_with("wire:");
        auto *box = new TickBox(qs(wire ? core::wireName(job.session().facts().machine, named.id.substr(5)) : named.text));
        box->setAccessibleName(qs(named.text));
        box->setObjectName(QStringLiteral("box:") + qs(named.id));
        box->setCompact(true);
        connect(box, &QCheckBox::toggled, this, [this] {
            m_together->setEnabled(std::ranges::all_of(m_boxes, [](const auto &each) { return each.second->isChecked(); }));
        });
        grid->addWidget(box, static_cast<int>(i) % rows, static_cast<int>(i) / rows);
        m_boxes.emplace_back(named.id, box);
    }
    m_main->body()->addLayout(grid);
    m_together = new KeyButton(tr("All back: done"));
    m_together->setObjectName(QStringLiteral("together"));
    m_together->setEnabled(false);
    connect(m_together, &QPushButton::clicked, this, &VerdictPage::putBack);
    m_main->body()->addWidget(m_together, 0, Qt::AlignLeft);
}

// A repair that was asked for is proven by the machine at work. The session asks for what belongs before it.
void VerdictPage::addProve()
{
    const bool repair = m_verdict.kind == core::Verdict::Kind::Replace || m_verdict.kind == core::Verdict::Kind::Fix;
    if (!repair || m_view.outcome)
        return;
    auto *prove = new KeyButton(tr("It is repaired: prove it"));
    prove->setObjectName(QStringLiteral("prove"));
    connect(prove, &QPushButton::clicked, this, [this] {
        core::Command command;
        command.what = core::Command::What::Prove;
        Q_EMIT said(command);
    });
    m_main->body()->addWidget(prove, 0, Qt::AlignLeft);
}

void VerdictPage::addPhone()
{
    const QString phone = VerdictWords::phone(m_view);
    if (!phone.isEmpty())
        m_main->body()->addWidget(new RunLabel({{tr("Say this on the phone: "), Type::Strong}, {phone, Type::Text}}));
}

void VerdictPage::addSideText(const QString &head, const QString &text)
{
    if (text.isEmpty())
        return;
    if (m_side->body()->count() > 0)
        m_side->body()->addWidget(ruleLine());
    m_side->body()->addWidget(headingLabel(head));
    m_side->body()->addWidget(textLabel(text));
}

void VerdictPage::addSide(const JobController &job)
{
    addSideText(m_verdict.kind == core::Verdict::Kind::NotProven ? tr("If you bought now") : tr("If you had guessed"),
                VerdictWords::guessed(m_view, job.session()));
    QStringList prove;
    for (std::size_t i = 0; i < m_verdict.prove.size(); ++i)
        prove << QStringLiteral("%1  %2").arg(i + 1).arg(qs(m_verdict.prove[i]));
    if (!prove.isEmpty())
        prove << tr("The job stays open until you say how it went.");
    addSideText(m_verdict.kind == core::Verdict::Kind::Replace ? tr("After the repair, prove it") : tr("Then prove it"),
                prove.join(QLatin1Char('\n')));
    addSideText(tr("What would change this verdict"), qs(m_verdict.wouldChange));
    if (m_view.outcome)
        addSideText(tr("How it went"), OutcomeWords::said(qs(*m_view.outcome)));
    m_side->body()->addStretch(1);
    addSideActions();
}

void VerdictPage::addSideActions()
{
    const auto add = [this](const QString &words, const QString &key, const char *name) {
        auto *button = new KeyButton(words, key);
        button->setObjectName(QLatin1String(name));
        button->setSpread(true);
        m_side->dock()->addWidget(button);
        return button;
    };
    connect(add(tr("Print the record"), QStringLiteral("Ctrl P"), "print"), &QPushButton::clicked, this, &Page::wantsPrint);
    connect(add(tr("Save it as PDF"), {}, "pdf"), &QPushButton::clicked, this, &VerdictPage::wantsPdf);
    connect(add(tr("Copy as text"), QStringLiteral("F9"), "copy"), &QPushButton::clicked, this, &VerdictPage::wantsCopy);
    connect(add(tr("Say how it went"), QStringLiteral("F8"), "outcome"), &QPushButton::clicked, this, &VerdictPage::wantsOutcome);
}

void VerdictPage::setChain(const ChainState &chain)
{
    m_chain->setVisible(!chain.rungs.empty());
    m_chain->setState(chain);
}

QWidget *VerdictPage::firstFocus()
{
    for (const auto &[id, box] : m_boxes)
        if (!box->isChecked())
            return m_verdict.kind == core::Verdict::Kind::NotProven && !m_offers.empty()
                       ? static_cast<QWidget *>(m_offers.front())
                       : box;
    return m_offers.empty() ? static_cast<QWidget *>(m_headline) : m_offers.front();
}

QString VerdictPage::help() const
{
    return tr("The verdict and the readings that carry it. Nothing is bought that no reading has proven. Put everything back and "
              "tick it "
              "off, then say later how it went, with F8. F7 shows the way so far: any reading can be changed there.");
}

void VerdictPage::putBack()
{
    core::Command command;
    command.what = core::Command::What::Confirm;
    command.boxes.emplace();
    for (const auto &[id, box] : m_boxes)
        command.boxes->push_back(id);
    Q_EMIT said(command);
}

void VerdictPage::choose(std::size_t number)
{
    core::Command command;
    command.what = core::Command::What::Choose;
    command.test = m_view.offers[number - 1].test;
    Q_EMIT said(command);
}

bool VerdictPage::key(QKeyEvent *event)
{
    const int digit = digitOf(*event);
    if (digit > 0 && static_cast<std::size_t>(digit) <= m_offers.size()) {
        choose(static_cast<std::size_t>(digit));
        return true;
    }
    if (event->key() == Qt::Key_PageDown || event->key() == Qt::Key_PageUp) {
        m_main->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
        return true;
    }
    return false;
}

void VerdictPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    m_columns->setDirection(width() < Theme::current().px(760) ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

void VerdictPage::showDenial(const core::Denial &denial)
{
    m_line->setText(qs(denial.text), Type::Strong);
    m_line->show();
}

} // namespace app
