#pragma once
// A drawing of resources/drawings in the colours of the theme, with the places of its elements.
#include "app/shared/style.h"

#include <QRectF>
#include <QString>
#include <QSvgRenderer>

#include <memory>
#include <vector>

namespace app {

struct DrawingWish
{
    QString name;     // ":/drawings/<name>.svg"
    QString position; // "released" or "pressed": the other one is hidden; empty: as it is drawn
    QString dashed;   // id of an element whose lines are broken into dashes: a fault; empty: none
};

class Drawing
{
public:
    // Null if there is no such drawing or it cannot be read.
    static std::unique_ptr<Drawing> load(const DrawingWish &wish, const Style &style);
    // Terminals as boxes at the left of a plain body, with the ids given and their "-out" dots.
    static std::unique_ptr<Drawing> plain(const std::vector<QString> &terminals, const Style &style);

    [[nodiscard]] QRectF viewBox() const { return m_renderer.viewBoxF(); }
    [[nodiscard]] const std::vector<QString> &terminals() const { return m_terminals; } // whatever has a "-out" dot
    [[nodiscard]] bool has(const QString &id) const { return m_renderer.elementExists(id); }
    [[nodiscard]] QRectF bounds(const QString &id) const; // in the drawing's own units; null if it is not there
    void paint(QPainter &painter, const QRectF &into);    // keeps its proportions, in the middle

private:
    bool loadText(QByteArray text);
    QSvgRenderer m_renderer;
    std::vector<QString> m_terminals;
};

// The text of a drawing with its light colours replaced by those of the style. Each is replaced once, all at a time.
QByteArray recoloured(const QByteArray &svg, const Style &style);
bool drawingExists(const QString &name);

} // namespace app
