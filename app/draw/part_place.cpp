#include "app/draw/part_place.h"

#include "app/shared/text_block.h"

#include <QPainter>

#include <cmath>

namespace app {
namespace {

std::vector<QString> terminalIds(const TestPictureState &state)
{
    std::vector<QString> ids;
    for (const auto &terminal : state.terminals)
        ids.push_back(terminal.id);
    for (const QString &probed : {state.red, state.black})
        if (!probed.isEmpty() && std::find(ids.begin(), ids.end(), probed) == ids.end())
            ids.push_back(probed);
    return ids;
}

} // namespace

PartPlace::PartPlace(const TestPictureState &state, const QRectF &into, const Style &style) : m_style(style)
{
    const QString dashed = state.fault ? state.fault->element : QString();
    m_drawing = Drawing::load({state.drawing, state.position, dashed}, style);
    if (!m_drawing) {
        m_plain = true;
        m_drawing = Drawing::plain(terminalIds(state), style);
    }
    const QSizeF size = m_drawing->viewBox().size().scaled(into.size(), Qt::KeepAspectRatio);
    m_rect = QRectF(into.right() - size.width(), into.center().y() - size.height() / 2, size.width(), size.height());
    m_unit = size.width() / m_drawing->viewBox().width();
}

void PartPlace::paint(QPainter &painter) const
{
    m_drawing->paint(painter, m_rect);
}

QRectF PartPlace::bounds(const QString &id) const
{
    const QRectF own = m_drawing->bounds(id);
    return own.isNull() ? own : QRectF(m_rect.topLeft() + own.topLeft() * m_unit, own.size() * m_unit);
}

QPointF PartPlace::looks(const QString &terminal) const
{
    const QPointF way = bounds(terminal + QStringLiteral("-out")).center() - bounds(terminal).center();
    const double length = std::hypot(way.x(), way.y());
    return !has(terminal + QStringLiteral("-out")) || length < 1 ? QPointF(-1, 0) : way / length;
}

QPointF PartPlace::end(const QString &terminal) const
{
    const QRectF box = bounds(terminal);
    const QPointF way = looks(terminal);
    const double x = std::abs(way.x()) < 1e-6 ? 1e9 : box.width() / 2 / std::abs(way.x());
    const double y = std::abs(way.y()) < 1e-6 ? 1e9 : box.height() / 2 / std::abs(way.y());
    return box.center() + way * std::min(x, y);
}

QPointF PartPlace::tip(const QString &terminal) const
{
    return end(terminal) - looks(terminal) * 3 * m_unit;
}

void PartPlace::paintFault(QPainter &painter, const TestPictureState::Fault &fault, const Style &textStyle) const
{
    const bool known = has(fault.element);
    const QRectF area = known ? bounds(fault.element) : m_rect.adjusted(30 * m_unit, 30 * m_unit, -30 * m_unit, -30 * m_unit);
    painter.save();
    QPen dotted = m_style.pen(Role::Line, 2 * m_unit);
    dotted.setDashPattern({0.5, 2});
    painter.setPen(dotted);
    painter.setBrush(Qt::NoBrush);
    const double room = 6 * m_unit;
    painter.drawRoundedRect(area.adjusted(-room, -room, room, room), 4 * m_unit, 4 * m_unit);
    const TextBlock words({{fault.words, Type::QuietStrong, Role::Sheet}}, textStyle, std::max(area.width(), m_rect.width() * 0.55));
    const QSizeF size(words.width() + textStyle.px(22), words.height() + textStyle.px(8));
    QRectF label(area.center() - QPointF(size.width() / 2, size.height() / 2), size);
    if (area.height() < size.height() * 1.4) // a thin path stays in sight above its words
        label.moveTop(area.bottom() + room + textStyle.px(4));
    label.moveLeft(std::clamp(label.left(), m_rect.left(), std::max(m_rect.left(), m_rect.right() - label.width())));
    painter.fillRect(label, m_style[Role::Ink]);
    words.paint(painter, label.topLeft() + QPointF(textStyle.px(11), textStyle.px(4)));
    painter.restore();
}

} // namespace app
