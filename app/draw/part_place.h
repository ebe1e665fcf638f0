#pragma once
// A component's drawing at its place: where its terminals are, which way they look, where its pulled wires go.
#include "app/draw/drawing.h"
#include "app/draw/test_picture.h"

namespace app {

class PartPlace
{
public:
    // The drawing of the state, or its terminals as labelled boxes, into the rectangle.
    PartPlace(const TestPictureState &state, const QRectF &into, const Style &style);

    void paint(QPainter &painter) const;
    void paintFault(QPainter &painter, const TestPictureState::Fault &fault, const Style &textStyle) const;

    [[nodiscard]] bool isPlain() const { return m_plain; } // no drawing: boxes
    [[nodiscard]] QRectF rect() const { return m_rect; }
    [[nodiscard]] double unit() const { return m_unit; }
    [[nodiscard]] bool has(const QString &id) const { return m_drawing->has(id); }
    [[nodiscard]] const std::vector<QString> &terminals() const { return m_drawing->terminals(); }
    [[nodiscard]] QRectF bounds(const QString &id) const; // null if it is not there
    [[nodiscard]] QPointF looks(const QString &terminal) const; // unit vector from the terminal to its -out
    [[nodiscard]] QPointF tip(const QString &terminal) const;   // where a probe touches it
    [[nodiscard]] QPointF end(const QString &terminal) const;   // the outermost point of it, where a wire sits

private:
    std::unique_ptr<Drawing> m_drawing;
    QRectF m_rect;
    double m_unit = 1;
    bool m_plain = false;
    const Style m_style;
};

} // namespace app
