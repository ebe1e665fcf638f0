#pragma once
// A paint device that keeps every text painted on it, with its place: what can be read and whether it is whole.
#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QWidget>

#include <algorithm>
#include <vector>

namespace samples {

struct PaintedText
{
    QString text;
    QRectF rect; // from the ascent to the descent of its font
    QColor colour;
    bool large = false; // as WCAG 2.2 has it: 18 pt, or 14 pt in bold (24 and 18.66 px)
};

class TextEngine : public QPaintEngine
{
public:
    TextEngine() : QPaintEngine(AllFeatures) {}
    bool begin(QPaintDevice *) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState &) override {}
    void drawPixmap(const QRectF &, const QPixmap &, const QRectF &) override {}
    void drawPolygon(const QPointF *, int, PolygonDrawMode) override {}
    void drawPath(const QPainterPath &) override {}
    Type type() const override { return User; }
    void drawTextItem(const QPointF &at, const QTextItem &item) override
    {
        if (item.text().trimmed().isEmpty())
            return;
        const QTransform map = painter()->combinedTransform();
        const QRectF rect = map.mapRect(QRectF(at.x(), at.y() - item.ascent(), item.width(), item.ascent() + item.descent()));
        if (painter()->hasClipping() && !map.mapRect(painter()->clipBoundingRect()).intersects(rect))
            return;
        const QFont font = item.font();
        const double px = font.pixelSize() > 0 ? font.pixelSize() : font.pointSizeF() * 96 / 72;
        texts.push_back({item.text(), rect, painter()->pen().color(), px >= 24 || (font.bold() && px >= 18.66)});
    }
    std::vector<PaintedText> texts;
};

class TextDevice : public QPaintDevice
{
public:
    explicit TextDevice(QSize size) : m_size(size) {}
    QPaintEngine *paintEngine() const override { return &m_engine; }
    [[nodiscard]] const std::vector<PaintedText> &texts() const { return m_engine.texts; }

protected:
    int metric(PaintDeviceMetric metric) const override
    {
        switch (metric) {
        case PdmWidth:
            return m_size.width();
        case PdmHeight:
            return m_size.height();
        case PdmWidthMM:
            return m_size.width() * 254 / 960;
        case PdmHeightMM:
            return m_size.height() * 254 / 960;
        case PdmDpiX:
        case PdmDpiY:
        case PdmPhysicalDpiX:
        case PdmPhysicalDpiY:
            return 96;
        case PdmDepth:
            return 32;
        case PdmNumColors:
            return 1 << 24;
        case PdmDevicePixelRatio:
            return 1;
        case PdmDevicePixelRatioScaled:
            return static_cast<int>(devicePixelRatioFScale());
        default:
            return 0;
        }
    }

private:
    QSize m_size;
    mutable TextEngine m_engine;
};

inline std::vector<PaintedText> textsOf(QWidget &widget)
{
    TextDevice device(widget.size());
    widget.render(&device);
    return device.texts();
}

// What sticks out of the widget, in words; empty: all is whole. Two pixels are the slope of a bold letter.
inline QStringList cutOff(QWidget &widget)
{
    QStringList words;
    for (const PaintedText &text : textsOf(widget))
        if (!QRectF(widget.rect()).adjusted(-2, -3, 2, 3).contains(text.rect))
            words += text.text;
    return words;
}

// Texts that lie on each other. Line boxes may touch by what is empty in them, a third of the lower one's height.
inline QStringList onEachOther(QWidget &widget)
{
    QStringList words;
    const auto texts = textsOf(widget);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t j = i + 1; j < texts.size(); ++j) {
            const QRectF both = texts[i].rect.intersected(texts[j].rect);
            const double line = std::min(texts[i].rect.height(), texts[j].rect.height());
            if (both.width() > 2 && both.height() > line / 3)
                words += texts[i].text + QStringLiteral(" / ") + texts[j].text;
        }
    }
    return words;
}

} // namespace samples
