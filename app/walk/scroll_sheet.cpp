#include "app/walk/scroll_sheet.h"

#include "app/shared/theme.h"

#include <QScrollArea>
#include <QScrollBar>

namespace app {

ScrollSheet::ScrollSheet(QWidget *parent) : Sheet(Role::Sheet, parent), m_area(new QScrollArea(this))
{
    auto *inside = new QWidget;
    m_all = new QVBoxLayout(this);
    m_head = new QVBoxLayout;
    m_body = new QVBoxLayout(inside);
    m_dock = new QVBoxLayout;
    m_area->setWidget(inside);
    inside->setAutoFillBackground(false); // setWidget() turns it on
    m_area->setWidgetResizable(true);
    m_area->setFrameShape(QFrame::NoFrame);
    m_area->setFocusPolicy(Qt::NoFocus);
    m_area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_area->viewport()->setAutoFillBackground(false);
    m_all->addLayout(m_head);
    m_all->addWidget(m_area, 1);
    m_all->addLayout(m_dock);
    dress();
    connect(&Theme::current(), &Theme::changed, this, &ScrollSheet::dress);
}

// What scrolls keeps room for the focus ring inside its own edges.
void ScrollSheet::dress()
{
    const Theme &theme = Theme::current();
    const int side = theme.spx(8), ring = 8;
    m_all->setContentsMargins(side, theme.spx(8), side, theme.spx(10));
    m_all->setSpacing(theme.spx(4));
    m_head->setContentsMargins(ring, theme.spx(4), ring, 0);
    m_head->setSpacing(theme.spx(4));
    m_body->setContentsMargins(ring, theme.spx(4), ring, theme.spx(6));
    m_body->setSpacing(theme.spx(6));
    m_dock->setContentsMargins(ring, 0, ring, theme.spx(4));
    m_dock->setSpacing(theme.spx(6));
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
