// The words of a test picture, painted last. Each tries a few places and takes the first that is free.
#include "app/draw/test_scene.h"
#include "app/shared/text_block.h"

#include <QImage>
#include <QPainter>

#include <algorithm>
#include <array>
#include <cmath>

namespace app {
namespace {

using Form = TestPictureState::Form;

class Words
{
public:
    Words(QPainter &painter, const TestScene &scene, const TestPictureState &state)
        : m_painter(painter), m_scene(scene), m_state(state)
    {
        const double unit = scene.part->unit();
        for (const SetProbe &probe : scene.probes)
            for (double along = 8; along < scene.length; along += 8)
                m_taken.push_back(around(probe.tip + probe.direction * along * unit, 7 * unit));
        for (const PulledWire &wire : scene.wires)
            for (double along = 0; along < 56; along += 8)
                m_taken.push_back(around(wire.mouth + wire.direction * along * unit, 8 * unit));
        const QPainterPath wire = scene.clamp ? clampedWire(scene, state) : QPainterPath();
        for (double part = 0; scene.clamp && part <= 1; part += 0.02)
            m_taken.push_back(around(wire.pointAtPercent(part), 5 * unit));
    }

    void paint()
    {
        notes();
        if (m_state.form == Form::Fists)
            return;
        if (m_scene.part->isPlain())
            labels();
        numbers();
        captions();
        pulledNote();
        if (!m_state.close)
            probeNames();
        if (m_scene.clamp)
            wireName();
    }

private:
    static QRectF around(QPointF middle, double reach) { return {middle.x() - reach, middle.y() - reach, 2 * reach, 2 * reach}; }
    TextBlock block(const QString &text, double width, Type type = Type::Quiet, Role role = Role::Ink2) const
    {
        return TextBlock({{text, type, role}}, m_scene.text, std::max(1.0, width));
    }
    bool isFree(const QRectF &rect) const
    {
        return std::none_of(m_taken.begin(), m_taken.end(), [&](const QRectF &other) { return other.intersects(rect); });
    }
    // Whether the drawing of the component has anything there.
    bool isDrawnOn(const QRectF &rect)
    {
        const PartPlace &part = *m_scene.part;
        if (m_drawn.isNull()) {
            m_drawn = QImage(part.rect().size().toSize() + QSize(1, 1), QImage::Format_ARGB32_Premultiplied);
            m_drawn.fill(Qt::transparent);
            QPainter painter(&m_drawn);
            painter.translate(-part.rect().topLeft());
            part.paint(painter);
        }
        const QRect seen = rect.translated(-part.rect().topLeft()).toAlignedRect().intersected(m_drawn.rect());
        for (int y = seen.top(); y <= seen.bottom(); ++y)
            for (int x = seen.left(); x <= seen.right(); ++x)
                if (qAlpha(m_drawn.pixel(x, y)) > 40)
                    return true;
        return false;
    }
    // At the first of the places (top left corners) that is free, else at the first one. Returns where.
    QRectF put(const TextBlock &text, const std::vector<QPointF> &places)
    {
        QRectF rect(places.front(), text.size());
        const QRectF area = m_scene.area.adjusted(-2, -2, 2, 2);
        const auto stands = [&](const QPointF &place, bool inside) {
            const QRectF at(place, text.size());
            return isFree(at) && (!inside || area.contains(at));
        };
        for (const bool inside : {false, true}) // a place within the picture goes before one at its edge
            for (auto place = places.rbegin(); place != places.rend(); ++place)
                if (stands(*place, inside))
                    rect.moveTopLeft(*place);
        if (rect.right() > area.right()) // never cut off
            rect.moveRight(area.right());
        text.paint(m_painter, rect.topLeft());
        m_taken.push_back(rect);
        return rect;
    }
    void line(QPointF from, QPointF to) const
    {
        m_painter.setPen(QPen(m_scene.style[Role::Detail], 1));
        m_painter.drawLine(from, to);
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(m_scene.style[Role::Detail]);
        m_painter.drawEllipse(to, 2.4, 2.4);
    }

    void notes();
    void labels();
    void numbers();
    void captions();
    void caption(const QString &words, const QRectF &box);
    void pulledNote();
    void probeNames();
    void wireName();

    QPainter &m_painter;
    const TestScene &m_scene;
    const TestPictureState &m_state;
    std::vector<QRectF> m_taken;
    QImage m_drawn; // the component alone, once it was asked for
};

// Beside the display, with the small second display for what a broken one shows.
void Words::notes()
{
    if (!hasNotes(m_scene, m_state))
        return;
    const double left = m_scene.meter.rect.right() + 22 * m_scene.unit;
    const double room = notesWidth(m_scene);
    const TextBlock note = block(m_state.meterNote, room);
    const QRectF at = put(note, {{left, m_scene.meter.rect.top() + 4 * m_scene.unit}});
    line({left - 4 * m_scene.unit, at.center().y()}, {m_scene.meter.displayEdge.x(), at.center().y()});
    if (m_state.otherDisplay.isEmpty())
        return;
    const QRectF display(left, at.bottom() + m_scene.text.px(6), m_scene.text.px(58), m_scene.text.px(32));
    paintDisplay(m_painter, display, m_state.otherDisplay, m_state.otherUnit, m_scene.style);
    m_taken.push_back(display);
    const TextBlock other = block(m_state.otherNote, std::max(room - display.width() - m_scene.text.px(8), m_scene.text.px(56)));
    put(other, {{display.right() + m_scene.text.px(8), other.topAt(display.center().y())}});
}

// Without a drawing: the terminals by their names, and what part it is.
void Words::labels()
{
    const PartPlace &part = *m_scene.part;
    for (const auto &terminal : m_state.terminals) {
        const QRectF box = part.bounds(terminal.id);
        if (box.isNull())
            continue;
        const TextBlock name =
            block(terminal.name.isEmpty() ? terminal.id : terminal.name, part.unit() * 190, Type::QuietStrong, Role::Ink);
        put(name, {{box.right() + 12 * part.unit(), name.topAt(box.center().y())}});
    }
    const TextBlock name = block(m_state.part, part.unit() * 200, Type::Strong, Role::Ink);
    const QRectF body = part.bounds(QStringLiteral("body"));
    put(name, {{body.right() - name.width() - 12 * part.unit(), body.bottom() - name.height() - 8 * part.unit()}});
}

void Words::numbers()
{
    const double unit = m_scene.part->unit();
    for (const auto &terminal : m_state.terminals) {
        const QRectF box = m_scene.part->bounds(terminal.id);
        if (terminal.number.isEmpty() || box.isNull())
            continue;
        const QPointF way = m_scene.part->looks(terminal.id);
        const double reach = std::max(9.5 * unit, m_scene.text.px(9.5));
        QPointF at(box.right() - reach * 0.4, box.top() - reach - 4 * unit);
        if (std::abs(way.y()) > 0.6)
            at = {box.right() + reach + 2 * unit, box.center().y() - way.y() * box.height() * 0.2};
        m_painter.setPen(m_scene.style.pen(Role::Line, 1.75 * unit));
        m_painter.setBrush(m_scene.style[Role::Sheet]);
        m_painter.drawEllipse(at, reach, reach);
        block(terminal.number, TextBlock::kNoLimit, Type::QuietStrong, Role::Ink).paintAround(m_painter, at);
        m_taken.push_back(around(at, reach));
    }
}

void Words::captions()
{
    const PartPlace &part = *m_scene.part;
    double bottom = m_scene.area.bottom();
    for (const auto &caption : m_state.captions) {
        QRectF box = part.bounds(caption.element);
        for (const QString &terminal : {QStringLiteral(".t1"), QStringLiteral(".t2")})
            box = box.united(part.bounds(caption.element + terminal));
        if (caption.element.isEmpty() || box.isNull()) {
            const TextBlock text = block(caption.text, part.rect().width());
            const QRectF at = put(text, {{part.rect().right() - text.width() - 8 * m_scene.unit, bottom - text.height()}});
            bottom = at.top();
            continue;
        }
        this->caption(caption.text, box);
    }
}

// Over its element, under it or at its right, on one line or two; where it would cover the drawing it is only spoken.
void Words::caption(const QString &words, const QRectF &box)
{
    const double unit = m_scene.unit;
    const bool high = box.center().y() < m_scene.part->rect().center().y();
    for (const double width : {m_scene.text.px(170), m_scene.text.px(96)}) {
        const TextBlock text = block(words, width);
        const double middle = box.center().x() - text.width() / 2, spare = text.width() * 0.3;
        const double above = box.top() - text.height() - 5 * unit, below = box.bottom() + 5 * unit;
        std::vector<QPointF> places;
        for (const double y : high ? std::array{above, below} : std::array{below, above})
            for (const double aside : {0.0, spare, -spare, 1.8 * spare, -1.8 * spare})
                places.push_back({middle + aside, y});
        places.push_back({box.right() + 10 * unit, box.center().y() - text.height() / 2});
        for (const QPointF &place : places) {
            const QRectF rect(place, text.size());
            if (m_scene.area.adjusted(-1, -1, 1, 1).contains(rect) && isFree(rect) && !isDrawnOn(rect)) {
                put(text, {place});
                return;
            }
        }
    }
}

void Words::pulledNote()
{
    if (m_scene.wires.empty())
        return;
    const double unit = m_scene.part->unit();
    const PulledWire &first = m_scene.wires.front();
    const auto [leftmost, rightmost] = std::minmax_element(
        m_scene.wires.begin(), m_scene.wires.end(), [](const auto &a, const auto &b) { return a.mouth.x() < b.mouth.x(); });
    const TextBlock note = block(m_state.pulledNote.isEmpty() ? TestPicture::tr("pulled") : m_state.pulledNote,
                                 m_scene.text.px(84), Type::QuietStrong, Role::Ink);
    const auto middle = [&](const PulledWire &wire, double along) { return wire.mouth + wire.direction * along * unit; };
    const QPointF left(middle(*leftmost, 16).x() - 30 * unit - note.width(), middle(first, 22).y() - note.height() / 2);
    const QPointF right(middle(*rightmost, 16).x() + 16 * unit, middle(*rightmost, 30).y() - note.height() / 2);
    const QPointF under(middle(first, 20).x() - note.width() / 2, middle(first, 20).y() + 14 * unit);
    const QPointF over(under.x(), middle(first, 20).y() - 14 * unit - note.height());
    const bool lying = std::abs(first.direction.x()) > 0.6;
    const QRectF at = put(note, lying ? std::vector{under, over, right} : std::vector{left, right, under});
    if (at.topLeft() == left)
        line({at.right() + 4, at.center().y()}, middle(*leftmost, 18) + QPointF(-14 * unit, 0));
}

// Beside the handle, on the outer side, nearer to the cable than to the tip.
void Words::probeNames()
{
    for (const SetProbe &probe : m_scene.probes) {
        const bool red = probe.probe == Probe::Red;
        const QString note = red ? m_state.redNote : m_state.blackNote;
        const TextBlock name = block(!note.isEmpty() ? note
                                     : red           ? TestPicture::tr("red")
                                                     : TestPicture::tr("black"),
                                     m_scene.text.px(110), Type::QuietStrong, Role::Ink);
        QPointF across(-probe.direction.y(), probe.direction.x());
        if ((across.y() < 0) != probe.nameUp)
            across = -across;
        std::vector<QPointF> places;
        for (const double side : {1.0, -1.0}) {
            for (const double along : {0.72, 0.9, 0.56, 1.1}) {
                const QPointF middle = probe.tip + probe.direction * (m_scene.length * along) * m_scene.part->unit();
                const double off = 11 * m_scene.part->unit() + name.height() / 2 + std::abs(across.x()) * name.width() / 2;
                places.push_back(middle + across * side * off - QPointF(name.width() / 2, name.height() / 2));
            }
        }
        put(name, places);
    }
}

void Words::wireName()
{
    const QPointF hole = m_scene.meter.jawHole;
    const TextBlock name = block(m_state.wire, m_scene.text.px(150), Type::QuietStrong, Role::Ink);
    const double x = m_scene.meter.rect.right() + 8 * m_scene.unit;
    put(name, {{x, hole.y() - name.height() - 12 * m_scene.unit},
               {x, hole.y() + 60 * m_scene.unit},
               {x, hole.y() + 90 * m_scene.unit}});
}

} // namespace

void paintTestWords(QPainter &painter, const TestScene &scene, const TestPictureState &state)
{
    Words(painter, scene, state).paint();
}

} // namespace app
