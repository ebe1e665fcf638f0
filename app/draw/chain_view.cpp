#include "app/draw/chain_view.h"

#include "app/draw/chain_paint.h"
#include "app/shared/theme.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace app {

ChainView::ChainView(QWidget *parent) : QAbstractScrollArea(parent)
{
    installAccessibleRows();
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    viewport()->setAutoFillBackground(false);
    connect(&Theme::current(), &Theme::changed, this, [this] {
        layOut();
        updateGeometry();
    });
}

ChainView::~ChainView() = default;

void ChainView::setState(ChainState state)
{
    if (state == m_state)
        return;
    const QString id = rowId(m_current);
    m_state = std::move(state);
    m_folds = !m_state.rungs.empty() && m_state.rungs.front().rows.size() >= kManyRows;
    setAccessibleName(ChainWords::summary(m_state));
    m_current = -1;
    layOut();
    for (int row = 0; row < rowCount(); ++row)
        if (!id.isEmpty() && rowId(row) == id)
            m_current = row;
    keepLitInSight();
    announceRowsChanged(this);
    updateGeometry();
}

void ChainView::layOut()
{
    m_layout = layOutChain(m_state, viewport()->width(), Theme::current().style(), m_folds);
    if (m_layout.height + m_layout.footHeight > viewport()->height())
        m_layout = layOutChain(m_state, viewport()->width(), Theme::current().style(), m_folds, true);
    const Theme &theme = Theme::current();
    const bool railed = !m_layout.rails.empty();
    const double zones = railed ? theme.px(2 * kRailZone) : 0;
    const double page = viewport()->height() - m_layout.footHeight - zones;
    const double body = m_layout.height - zones;
    verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(std::ceil(body - page))));
    verticalScrollBar()->setPageStep(std::max(1, static_cast<int>(page)));
    verticalScrollBar()->setSingleStep(theme.spx(27));
    viewport()->update();
}

QRectF ChainView::pinned() const
{
    const double zone = m_layout.rails.empty() ? 0 : Theme::current().px(kRailZone);
    return QRectF(0, zone, viewport()->width(), viewport()->height() - m_layout.footHeight - 2 * zone);
}

namespace {

// The walked items in order: components first, then conditions.
std::vector<std::size_t> walked(const ChainLayout &layout)
{
    std::vector<std::size_t> stops;
    for (const bool conditions : {false, true})
        for (std::size_t i = 0; i < layout.items.size(); ++i)
            if (layout.items[i].walked && (layout.items[i].kind == ChainLayout::Kind::Condition) == conditions)
                stops.push_back(i);
    return stops;
}

const ChainRow &rowAt(const ChainState &state, const ChainLayout::Item &item, int offset = 0)
{
    const auto &rows = state.rungs.empty() ? state.places[static_cast<std::size_t>(item.rung)].rows
                                           : state.rungs[static_cast<std::size_t>(item.rung)].rows;
    return rows[static_cast<std::size_t>(item.index + offset)];
}

} // namespace

int ChainView::rowCount() const
{
    return static_cast<int>(walked(m_layout).size());
}

QString ChainView::rowText(int row) const
{
    const auto stops = walked(m_layout);
    if (row < 0 || row >= static_cast<int>(stops.size()))
        return {};
    const ChainLayout::Item &item = m_layout.items[stops[static_cast<std::size_t>(row)]];
    if (item.kind == ChainLayout::Kind::Condition)
        return ChainWords::spoken(m_state.conditions[static_cast<std::size_t>(item.index)]);
    QStringList words;
    for (int i = 0; i < item.count; ++i) {
        const bool lit =
            item.rung == 0 && m_state.lit && item.index + i >= m_state.lit->first && item.index + i <= m_state.lit->last;
        words += ChainWords::spoken(rowAt(m_state, item, i), lit);
    }
    return words.join(QStringLiteral("; "));
}

QRect ChainView::rowRect(int row) const
{
    const auto stops = walked(m_layout);
    if (row < 0 || row >= static_cast<int>(stops.size()))
        return {};
    const QRectF rect = m_layout.items[stops[static_cast<std::size_t>(row)]].rect;
    return rect.translated(viewport()->x(), viewport()->y() - verticalScrollBar()->value()).toAlignedRect();
}

QString ChainView::rowId(int row) const
{
    const auto stops = walked(m_layout);
    if (row < 0 || row >= static_cast<int>(stops.size()))
        return {};
    const ChainLayout::Item &item = m_layout.items[stops[static_cast<std::size_t>(row)]];
    return item.kind == ChainLayout::Kind::Condition ? m_state.conditions[static_cast<std::size_t>(item.index)].id
                                                     : rowAt(m_state, item).id;
}

void ChainView::activateRow(int row)
{
    const auto stops = walked(m_layout);
    if (row < 0 || row >= static_cast<int>(stops.size()))
        return;
    if (m_layout.items[stops[static_cast<std::size_t>(row)]].kind == ChainLayout::Kind::Fold) {
        m_folds = false; // what was folded is looked at now
        layOut();
        setCurrentRow(row);
        return;
    }
    Q_EMIT activated(rowId(row));
}

void ChainView::setCurrentRow(int row)
{
    const int count = rowCount();
    if (count == 0)
        return;
    m_current = std::clamp(row, 0, count - 1);
    keepInSight(m_layout.items[walked(m_layout)[static_cast<std::size_t>(m_current)]].rect);
    announceRow(this, m_current);
    viewport()->update();
    Q_EMIT currentChanged(rowId(m_current));
}

void ChainView::keepInSight(const QRectF &rect)
{
    const QRectF seen = pinned().translated(0, verticalScrollBar()->value());
    if (rect.top() < seen.top())
        verticalScrollBar()->setValue(static_cast<int>(std::floor(rect.top() - pinned().top())));
    else if (rect.bottom() > seen.bottom())
        verticalScrollBar()->setValue(static_cast<int>(std::ceil(rect.bottom() - pinned().bottom())));
}

QSize ChainView::sizeHint() const
{
    const int width = Theme::current().spx(336);
    return {width, heightForWidth(width)};
}

QSize ChainView::minimumSizeHint() const
{
    return {Theme::current().spx(280), Theme::current().spx(160)};
}

int ChainView::heightForWidth(int width) const
{
    const ChainLayout layout = layOutChain(m_state, width, Theme::current().style(), m_folds);
    return static_cast<int>(std::ceil(layout.height + layout.footHeight));
}

void ChainView::resizeEvent(QResizeEvent *)
{
    layOut();
    keepLitInSight();
}

// What the meter sees, with the discs of the probes and the wire that hangs at either end; its top where it is too long.
void ChainView::keepLitInSight()
{
    if (!m_state.lit)
        return;
    const auto *first = m_layout.itemOf(0, m_state.lit->first), *last = m_layout.itemOf(0, m_state.lit->last);
    if (first == nullptr || last == nullptr)
        return;
    const double room = Theme::current().px(26);
    QRectF lit = first->rect.united(last->rect).adjusted(0, -room, 0, room);
    lit.setHeight(std::min(lit.height(), pinned().height()));
    keepInSight(lit);
}

void ChainView::keyPressEvent(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Down:
        setCurrentRow(m_current + 1);
        break;
    case Qt::Key_Up:
        setCurrentRow(m_current < 0 ? 0 : m_current - 1);
        break;
    case Qt::Key_Home:
        setCurrentRow(0);
        break;
    case Qt::Key_End:
        setCurrentRow(rowCount() - 1);
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!event->isAutoRepeat())
            activateRow(m_current);
        break;
    default:
        event->ignore(); // letters and Esc are the screen's
    }
}

void ChainView::focusInEvent(QFocusEvent *event)
{
    QAbstractScrollArea::focusInEvent(event);
    if (m_current < 0 && rowCount() > 0)
        setCurrentRow(0);
    viewport()->update();
}

void ChainView::focusOutEvent(QFocusEvent *event)
{
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

bool ChainView::viewportEvent(QEvent *event)
{
    if (event->type() == QEvent::Paint) {
        paint();
        return true;
    }
    if (event->type() == QEvent::MouseButtonRelease) {
        press(static_cast<QMouseEvent *>(event)->position().toPoint());
        return true;
    }
    return QAbstractScrollArea::viewportEvent(event);
}

void ChainView::press(QPoint at)
{
    for (int row = 0; row < rowCount(); ++row) {
        if (rowRect(row).translated(-viewport()->pos()).contains(at)) {
            setCurrentRow(row);
            activateRow(row);
            return;
        }
    }
}

} // namespace app
