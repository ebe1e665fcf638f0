#include "app/walk/why_page.h"

#include "app/shared/key_button.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/fact_row.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QKeyEvent>

#include <algorithm>

namespace app {
namespace {

constexpr double kWorthSaying = .02; // below it a suspect is not listed

const core::ComponentView *chosen(const core::StateView &view, const std::string &component)
{
    for (const core::ComponentView &part : view.components)
        if (component.empty() ? part.likeliest : part.id == component)
            return &part;
    const auto most = std::ranges::max_element(view.components, {}, &core::ComponentView::probability);
    return most == view.components.end() ? nullptr : &*most;
}

} // namespace

QString WhyPage::aboutOneIn(double probability)
{
    if (probability >= .95)
        return tr("almost certain, our estimate");
    if (probability >= .85)
        return tr("about 9 in 10, our estimate");
    if (probability >= .70)
        return tr("about 3 in 4, our estimate");
    if (probability >= .58)
        return tr("about 2 in 3, our estimate");
    if (probability < kWorthSaying)
        return tr("less than 1 in 50, our estimate");
    return tr("about 1 in %1, our estimate").arg(qRound(1 / probability));
}

WhyPage::WhyPage(const JobController &job, const std::string &component, QWidget *parent) : Page(parent), m_sheet(new ScrollSheet)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_sheet);
    const core::ComponentView *part = chosen(job.view(), component);
    const QString name = part == nullptr ? QString() : lowerFirst(qs(part->name));
    const bool likeliest = part != nullptr && part->likeliest;
    m_head = new SaySentence(part == nullptr ? tr("Nothing is suspected yet.") : likeliest ? tr("Why the %1 is likeliest now").arg(name) : capital(name));
    m_sheet->body()->addWidget(textLabel(tr("Why?"), Type::Quiet, Role::Ink2));
    m_sheet->body()->addWidget(m_head);
    addEvidence(job, part);
    addSuspects(job);
    m_sheet->body()->addWidget(textLabel(tr("Weights and shares are the author's judgement, no statistics. This page is the only place where a figure stands."), Type::Quiet, Role::Ink2));
    m_sheet->body()->addStretch(1);
    auto *back = new KeyButton(tr("Back to the step"), QStringLiteral("Esc"));
    back->setObjectName(QStringLiteral("back"));
    connect(back, &QPushButton::clicked, this, &Page::closed);
    m_sheet->dock()->addWidget(back, 0, Qt::AlignLeft);
}

void WhyPage::addEvidence(const JobController &job, const core::ComponentView *part)
{
    if (part == nullptr)
        return;
    const std::vector<std::string> lines = core::whyInWords(job.session(), part->id);
    QStringList text;
    for (const std::string &line : lines)
        text << qs(line);
    const QString figure = capital(aboutOneIn(part->probability)) + QStringLiteral(". ");
    m_sheet->body()->addWidget(new RunLabel({{figure, Type::Strong}, {tr("Standing: %1.").arg(StandingWords::word(standingOf(part->standing))), Type::Text}}));
    m_sheet->body()->addWidget(headingLabel(tr("What was read and said")));
    m_sheet->body()->addWidget(textLabel(text.isEmpty() ? tr("Nothing yet: only how often each part is behind this complaint.") : text.join(QLatin1Char('\n'))));
}

void WhyPage::addSuspects(const JobController &job)
{
    std::vector<const core::ComponentView *> parts;
    for (const core::ComponentView &part : job.view().components)
        if (part.probability >= kWorthSaying)
            parts.push_back(&part);
    std::ranges::stable_sort(parts, std::greater{}, [](const auto *part) { return part->probability; });
    if (parts.empty())
        return;
    m_sheet->body()->addSpacing(Theme::current().spx(6));
    m_sheet->body()->addWidget(headingLabel(tr("Suspects, the likeliest first")));
    for (const core::ComponentView *part : parts) {
        auto *row = new FactRow(standingOf(part->standing), qs(part->name), {});
        row->setEnd({}, aboutOneIn(part->probability));
        m_sheet->body()->addWidget(row);
    }
}

QWidget *WhyPage::firstFocus()
{
    return m_head;
}

QString WhyPage::help() const
{
    return tr("Each reading makes some parts likelier and others less so. Here it is said in words, strongest first. A likelihood is never "
              "a proof: only a reading of the part itself is.");
}

bool WhyPage::key(QKeyEvent *event)
{
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_sheet->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

} // namespace app
