#include "app/walk/no_meter_page.h"

#include "app/draw/meter_tips.h"
#include "app/shared/key_button.h"
#include "app/shared/marks.h"
#include "app/shared/say_sentence.h"
#include "app/shared/theme.h"
#include "app/walk/meter_profile.h"
#include "app/walk/page_parts.h"
#include "app/walk/scroll_sheet.h"
#include "app/walk/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>

namespace app {
namespace {

class Spot : public QWidget // the mark of a row
{
public:
    explicit Spot(Standing mark) : m_mark(mark)
    {
        setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
        followTheme(this);
    }
    QSize sizeHint() const override { return {Theme::current().spx(24), Theme::current().spx(20)}; }

protected:
    void paintEvent(QPaintEvent *) override
    {
        const Style &style = Theme::current().style();
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintMark(painter, m_mark, {style.px(kMarkSide / 2 + 1), style.px(10)}, style);
    }

private:
    Standing m_mark;
};

} // namespace

NoMeterPage::NoMeterPage(const core::Library &library, const core::Tree *tree, QWidget *parent)
    : Page(parent), m_columns(new QHBoxLayout(this)), m_left(new ScrollSheet), m_right(new ScrollSheet),
      m_head(new SaySentence(tr("No meter yet"))),
      m_go(new KeyButton(tree == nullptr ? tr("Go on without one") : tr("Start with what goes without"), QStringLiteral("Enter")))
{
    m_columns->setContentsMargins(0, 0, 0, 0);
    m_columns->setSpacing(Theme::current().spx(12));
    m_columns->addWidget(m_left, 4);
    m_columns->addWidget(m_right, 6);
    m_left->body()->addWidget(m_head);
    if (tree != nullptr)
        addSteps(library, *tree);
    else
        m_left->body()->addWidget(
            textLabel(tr("Every job begins with what can be seen and heard, with all covers on. That much goes "
                         "without a meter; what only a reading can say stays open, and is named."),
                      Type::Safety));
    m_left->body()->addWidget(textLabel(tr("The outlet never needs you: an electrician reads it in minutes.")));
    m_left->body()->addStretch(1);
    m_go->setObjectName(QStringLiteral("without"));
    m_go->setFace(KeyButton::Face::Filled);
    m_go->setSpread(true);
    auto *back = new KeyButton(tr("I have one after all"), QStringLiteral("Esc"));
    back->setObjectName(QStringLiteral("back"));
    back->setSpread(true);
    m_left->dock()->addWidget(m_go);
    m_left->dock()->addWidget(back);
    addTips();
    connect(m_go, &QPushButton::clicked, this, &NoMeterPage::goesWithout);
    connect(back, &QPushButton::clicked, this, &Page::closed);
}

void NoMeterPage::addRow(bool goes, const QString &words, const QString &note)
{
    const Standing mark = goes ? Standing::Cleared : Standing::Untested;
    auto *row = new QHBoxLayout;
    row->addWidget(new Spot(mark), 0, Qt::AlignTop);
    row->addWidget(textLabel(words), 1);
    auto *end = textLabel(note, Type::Text, Role::Ink2);
    end->setAlignment(Qt::AlignRight);
    row->addWidget(end);
    m_left->body()->addLayout(row);
    m_left->body()->addWidget(ruleLine());
}

// In the order of the tree; a test once, however often the tree asks for it.
void NoMeterPage::addSteps(const core::Library &library, const core::Tree &tree)
{
    const core::Appliance *appliance = library.appliance(tree.appliance);
    m_left->body()->addWidget(textLabel(tr("This much goes without one, for “%1”:").arg(lowerFirst(qs(tree.complaint)))));
    for (const core::Step &step : tree.steps)
        if (step.what != core::Step::What::Test)
            addRow(true, brief(qs(step.text)), tr("%1 min").arg(std::max(1, qRound(step.minutes))));
    if (appliance == nullptr)
        return;
    m_left->body()->addSpacing(Theme::current().spx(8));
    m_left->body()->addWidget(headingLabel(tr("And this stays open")));
    QStringList named;
    for (const core::Step &step : tree.steps) {
        const core::Library::Found found = library.test(*appliance, step.test);
        if (step.what != core::Step::What::Test || found.test == nullptr || named.contains(qs(found.test->name)))
            continue;
        const core::Measure measure = found.test->measure;
        if (!core::isDead(measure) && !core::isEnergized(measure) && measure != core::Measure::Temperature)
            continue; // by eye, hand or ear
        named << qs(found.test->name);
        addRow(false, named.back(), tr("needs %1").arg(MeterWords::sign(measure)));
    }
}

void NoMeterPage::addTips()
{
    m_right->body()->addWidget(new SaySentence(tr("When buying one, look for this")));
    m_right->body()->addWidget(
        textLabel(tr("No maker is named here. The cheapest that has all seven will do."), Type::Quiet, Role::Ink2));
    auto *tips = new MeterTips;
    m_right->body()->addWidget(tips, 1);
    m_right->body()->addWidget(ruleLine());
    m_right->body()->addWidget(
        new RunLabel({{tr("Never needed: "), Type::Strong},
                      {tr("a pen that only senses voltage; its silence proves nothing. Borrowed is as good as bought: "
                          "check it first, one minute."),
                       Type::Text}}));
}

QWidget *NoMeterPage::firstFocus()
{
    return m_go;
}

QString NoMeterPage::help() const
{
    return tr(
        "At the left what this program can still ask without a meter, and what stays open. At the right what a meter for this "
        "work should have.");
}

bool NoMeterPage::key(QKeyEvent *event)
{
    if (isEnter(*event)) {
        Q_EMIT goesWithout();
        return true;
    }
    if (event->key() != Qt::Key_PageDown && event->key() != Qt::Key_PageUp)
        return false;
    m_left->scrollBy(event->key() == Qt::Key_PageDown ? 1 : -1);
    return true;
}

void NoMeterPage::resizeEvent(QResizeEvent *event)
{
    Page::resizeEvent(event);
    m_columns->setDirection(width() < Theme::current().px(760) ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

void NoMeterPage::showDenial(const core::Denial &denial)
{
    m_head->setSentence(qs(denial.text));
}

} // namespace app
