#include "app/walk/page_parts.h"

#include "app/shared/key_button.h"
#include "app/shared/theme.h"
#include "app/walk/words.h"

#include <QPainter>
#include <QVBoxLayout>

namespace app {
namespace {

class Rule : public QWidget
{
public:
    explicit Rule(QWidget *parent) : QWidget(parent)
    {
        setFixedHeight(1);
        followTheme(this);
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        QPainter painter(this);
        painter.fillRect(rect(), Theme::current().colour(Role::Rule));
    }
};

class NoteBox : public QWidget
{
public:
    NoteBox(Runs runs, QWidget *parent) : QWidget(parent)
    {
        auto *layout = new QVBoxLayout(this);
        layout->setContentsMargins(20, 10, 14, 10);
        layout->addWidget(new RunLabel(std::move(runs)));
        followTheme(this);
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        QPainter painter(this);
        painter.fillRect(rect(), Theme::current().colour(Role::Well));
        painter.fillRect(QRect(0, 0, 5, height()), Theme::current().colour(Role::Ink));
    }
};

} // namespace

int PageWords::stepNumber(const core::StateView &view)
{
    int number = 0;
    std::string before;
    for (const core::WayView &way : view.way) {
        if (way.safety)
            continue;
        number += way.id != before || before.empty() ? 1 : 0;
        before = way.id;
    }
    const bool same = !before.empty() && (before == view.step.test || before == view.step.id);
    return same ? number : number + 1;
}

QString PageWords::caption(const core::StateView &view, const core::Session &session)
{
    QStringList parts;
    const core::StepView &step = view.step;
    if (step.screen == "S0")
        return tr("Before the first step");
    const QString sort = step.kind == core::StepView::Kind::Test  ? tr("Test %1")
                         : step.kind == core::StepView::Kind::Ask ? tr("Question %1")
                         : step.kind == core::StepView::Kind::Do  ? tr("To do, step %1")
                                                                  : tr("Look, step %1");
    parts << sort.arg(stepNumber(view));
    if (!step.title.empty())
        parts << qs(step.title);
    if (step.placements > 1)
        parts << tr("%1 of %2").arg(step.placement + 1).arg(step.placements);
    if (step.minutes > 0)
        parts << Words::minutes(step.minutes);
    const auto &lines = session.content().safety->lines;
    const auto own = [&](const char *key) { return lines.contains(key) ? lowerFirst(qs(lines.at(key))) : QString(); };
    if (view.power == core::Power::Isolated)
        parts << own("plug_out");
    else if (view.power == core::Power::ProvenDead)
        parts << own("proven");
    else if (session.gate().inside.covers == core::Covers::Closed)
        parts << own("closed_up");
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

std::vector<KeyButton *> moreButtons(Page *page)
{
    auto *chain = new KeyButton(Page::tr("Chain"), QStringLiteral("F6"));
    auto *way = new KeyButton(Page::tr("Way so far"), QStringLiteral("F7"));
    QObject::connect(chain, &QPushButton::clicked, page, &Page::wantsChainPage);
    QObject::connect(way, &QPushButton::clicked, page, &Page::wantsWayPage);
    chain->hide();
    way->hide();
    return {chain, way};
}

void showMore(const std::vector<KeyButton *> &buttons, Page::Room room)
{
    buttons.at(0)->setVisible(!room.chain);
    buttons.at(1)->setVisible(!room.tape);
}

RunLabel *headingLabel(const QString &text, QWidget *parent)
{
    return new RunLabel({{text, Type::Title}}, parent);
}

RunLabel *textLabel(const QString &text, Type type, Role role, QWidget *parent)
{
    return new RunLabel({{text, type, role}}, parent);
}

QWidget *noteBox(Runs runs, QWidget *parent)
{
    return new NoteBox(std::move(runs), parent);
}

QWidget *ruleLine(QWidget *parent)
{
    return new Rule(parent);
}

} // namespace app
