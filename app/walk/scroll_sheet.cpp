#include "app/walk/scroll_sheet.h"

#include "app/shared/theme.h"

#include <QEvent>
#include <QScrollArea>
#include <QScrollBar>

namespace app {
namespace {

constexpr int kRing = 8, kLeastScrolled = 90; // px: room for the focus ring; of what scrolls, at 100 %

} // namespace

ScrollSheet::ScrollSheet(QWidget *parent) : Sheet(Role::Sheet, parent), m_area(new QScrollArea(this))
{
    auto *inside = new QWidget;
    m_all = new QVBoxLayout(this);
    m_head = new QVBoxLayout;
    m_body = new QVBoxLayout(inside);
    m_dockBox = new QWidget;
    m_dock = new QVBoxLayout(m_dockBox);
    m_area->setWidget(inside);
    inside->setAutoFillBackground(false); // setWidget() turns it on
    m_area->setWidgetResizable(true);
    m_area->setFrameShape(QFrame::NoFrame);
    m_area->setFocusPolicy(Qt::NoFocus);
    m_area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_area->viewport()->setAutoFillBackground(false);
    m_all->addLayout(m_head);
    m_all->addWidget(m_area, 1);
    m_all->addWidget(m_dockBox);
    dress();
    connect(&Theme::current(), &Theme::changed, this, &ScrollSheet::dress);
}

// What scrolls keeps room for the focus ring inside its own edges.
void ScrollSheet::dress()
{
    const Theme &theme = Theme::current();
    const int side = theme.spx(8), ring = kRing;
    m_all->setContentsMargins(side, theme.spx(8), side, theme.spx(10));
    m_all->setSpacing(theme.spx(4));
    m_head->setContentsMargins(ring, theme.spx(4), ring, 0);
    m_head->setSpacing(theme.spx(4));
    m_body->setContentsMargins(ring, theme.spx(4), ring, theme.spx(6));
    m_body->setSpacing(theme.spx(6));
    m_dock->setContentsMargins(ring, 0, ring, theme.spx(4));
    m_dock->setSpacing(theme.spx(6));
}

// Too little room for both: the dock scrolls with the rest, at its end.
void ScrollSheet::placeDock()
{
    const int high = m_dock->hasHeightForWidth() ? m_dock->totalHeightForWidth(std::max(1, width() - 4 * kRing))
                                                 : m_dock->totalSizeHint().height();
    const bool docks = height() - high >= std::max<int>(Theme::current().spx(kLeastScrolled), height() * m_leastShare / 100);
    if (docks == m_docked || !isVisible())
        return;
    m_docked = docks;
    QWidget *focus = window()->focusWidget(); // moving the box takes it away
    const bool inDock = focus != nullptr && m_dockBox->isAncestorOf(focus);
    (docks ? m_body : m_all)->removeWidget(m_dockBox);
    (docks ? m_all : m_body)->addWidget(m_dockBox);
    if (inDock)
        focus->setFocus(Qt::OtherFocusReason);
}

bool ScrollSheet::event(QEvent *event)
{
    const bool done = Sheet::event(event);
    if (event->type() == QEvent::Resize || event->type() == QEvent::LayoutRequest || event->type() == QEvent::Show)
        placeDock();
    return done;
}

void ScrollSheet::scrollBy(int pages)
{
    QScrollBar *bar = m_area->verticalScrollBar();
    bar->setValue(bar->value() + pages * bar->pageStep() * 4 / 5);
}

void ScrollSheet::bringIntoSight(QWidget *widget)
{
    m_area->ensureWidgetVisible(widget);
}

void yieldHeight(QWidget *picture, int leastAt100)
{
    picture->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
    const auto fit = [picture, leastAt100] { picture->setMinimumHeight(Theme::current().spx(leastAt100)); };
    fit();
    QObject::connect(&Theme::current(), &Theme::changed, picture, fit);
}

} // namespace app
