// What the chain's window shows of it: the body scrolled between the two rails, which stay.
#include "app/draw/chain_paint.h"
#include "app/draw/chain_view.h"
#include "app/shared/theme.h"

#include <QPainter>
#include <QScrollBar>

namespace app {
namespace {

// "2 above: timer, thermostat", and the same without names
QStringList outOfSight(const ChainLayout &layout, const ChainState &state, double from, double to, bool above)
{
    QStringList names;
    for (const auto &item : layout.items) {
        const double middle = (item.top + item.bottom) / 2;
        if (item.kind == ChainLayout::Kind::Row && item.rung == 0 && middle >= from && middle < to)
            names += state.rungs.front().rows[static_cast<std::size_t>(item.index)].name;
    }
    if (names.isEmpty())
        return {above ? ChainView::tr("the beginning of it") : ChainView::tr("the end of it")};
    const int count = static_cast<int>(names.size());
    const QString list = names.size() > 2 ? names.mid(0, 2).join(QStringLiteral(", ")) + QStringLiteral(" …") : names.join(QStringLiteral(", "));
    if (above)
        return {ChainView::tr("%n above: %1", nullptr, count).arg(list), ChainView::tr("%n above", nullptr, count)};
    return {ChainView::tr("%n below: %1", nullptr, count).arg(list), ChainView::tr("%n below", nullptr, count)};
}

} // namespace

void ChainView::paint()
{
    const Style &style = Theme::current().style();
    QPainter painter(viewport());
    painter.setRenderHint(QPainter::Antialiasing);
    const double offset = verticalScrollBar()->value();
    const bool scrolls = verticalScrollBar()->maximum() > 0;
    const QRectF body = pinned();
    int chosen = -1;
    if (hasFocus() && m_current >= 0) {
        const QRect rect = rowRect(m_current).translated(-viewport()->pos());
        for (std::size_t i = 0; i < m_layout.items.size(); ++i)
            if (m_layout.items[i].walked && m_layout.items[i].rect.translated(0, -offset).toAlignedRect() == rect)
                chosen = static_cast<int>(i);
    }
    painter.save();
    if (scrolls)
        painter.setClipRect(body);
    painter.translate(0, -offset);
    paintChainBody(painter, m_layout, m_state, chosen, style);
    painter.restore();

    if (m_layout.rails.empty())
        return;
    const double top = m_layout.rails.front().top;
    const double bottom = scrolls ? body.bottom() + style.px(12) : m_layout.rails.front().bottom;
    ChainSight sight;
    if (scrolls)
        sight = {outOfSight(m_layout, m_state, 0, offset + body.top(), true),
                 outOfSight(m_layout, m_state, offset + body.bottom(), m_layout.height, false)};
    paintRails(painter, m_layout, top, bottom, viewport()->width(), sight, style);
    const double foot = scrolls ? viewport()->height() - m_layout.footHeight : m_layout.height;
    paintChainFoot(painter, m_layout, m_state, {0, foot}, style);
    if (m_layout.strip && scrolls) {
        const double from = offset / (m_layout.height - 2 * style.px(kRailZone));
        const double part = body.height() / (m_layout.height - 2 * style.px(kRailZone));
        paintStrip(painter, {body.right() - style.px(kStripWidth), body.top(), style.px(kStripWidth), body.height()}, m_state, from, from + part, style);
    }
}

} // namespace app
