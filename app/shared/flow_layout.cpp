#include "app/shared/flow_layout.h"

#include <algorithm>

namespace app {

FlowLayout::FlowLayout(QWidget *parent, int gap) : QLayout(parent), m_gap(gap)
{
    setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout()
{
    qDeleteAll(m_items);
}

void FlowLayout::addItem(QLayoutItem *item)
{
    m_items.append(item);
}

int FlowLayout::count() const
{
    return static_cast<int>(m_items.size());
}

QLayoutItem *FlowLayout::itemAt(int index) const
{
    return m_items.value(index);
}

QLayoutItem *FlowLayout::takeAt(int index)
{
    return index >= 0 && index < m_items.size() ? m_items.takeAt(index) : nullptr;
}

int FlowLayout::heightForWidth(int width) const
{
    return place(QRect(0, 0, width, 0), false);
}

QSize FlowLayout::sizeHint() const
{
    int width = 0;
    int height = 0;
    for (const QLayoutItem *item : m_items) {
        if (item->isEmpty())
            continue;
        width += item->sizeHint().width() + (width > 0 ? m_gap : 0);
        height = std::max(height, item->sizeHint().height());
    }
    const QMargins margins = contentsMargins();
    return {width + margins.left() + margins.right(), height + margins.top() + margins.bottom()};
}

QSize FlowLayout::minimumSize() const
{
    QSize least;
    for (const QLayoutItem *item : m_items)
        least = least.expandedTo(item->minimumSize());
    const QMargins margins = contentsMargins();
    return least + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

void FlowLayout::setGeometry(const QRect &rect)
{
    QLayout::setGeometry(rect);
    place(rect, true);
}

int FlowLayout::place(const QRect &rect, bool move) const
{
    const QRect room = rect.marginsRemoved(contentsMargins());
    int x = room.x();
    int y = room.y();
    int lineHeight = 0;
    for (QLayoutItem *item : m_items) {
        if (item->isEmpty())
            continue;
        const int width = std::min(item->sizeHint().width(), std::max(room.width(), item->minimumSize().width()));
        const int height = item->hasHeightForWidth() ? item->heightForWidth(width) : item->sizeHint().height();
        if (x > room.x() && x + width > room.x() + room.width()) {
            x = room.x();
            y += lineHeight + m_gap;
            lineHeight = 0;
        }
        if (move)
            item->setGeometry({x, y, width, height});
        x += width + m_gap;
        lineHeight = std::max(lineHeight, height);
    }
    return y + lineHeight - rect.y() + contentsMargins().bottom();
}

} // namespace app
