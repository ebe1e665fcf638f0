#pragma once
// Plain text with changes of weight and colour, wrapped to a width, measured and painted. No markup is ever read.
#include "app/shared/style.h"

#include <QRectF>
#include <QString>
#include <QTextLayout>

#include <memory>
#include <vector>

class QPainter;

namespace app {

// A stretch of text in one type and colour. A line feed in it starts a new line.
struct Run
{
    QString text;
    Type type = Type::Text;
    Role role = Role::Ink;
    friend bool operator==(const Run &, const Run &) = default;
};
using Runs = std::vector<Run>;

QString plainText(const Runs &runs); // the runs as one text, for screen readers
QString withKeptUnits(QString text);  // a number and its unit stay on one line; the length does not change

class TextBlock
{
public:
    static constexpr double kNoLimit = 100000; // px: never wrapped

    // `leading`: least distance from line to line as a multiple of the line's own height. `colour`: for what is
    // neither paper nor ink (safety panels); else the roles count.
    struct Options
    {
        Qt::Alignment align = Qt::AlignLeft;
        double leading = 1.0;
        QColor colour;
    };

    TextBlock(const Runs &runs, const Style &style, double width, const Options &options);
    TextBlock(const Runs &runs, const Style &style, double width = kNoLimit);

    [[nodiscard]] QSizeF size() const { return m_size; } // the widest line and the height of all
    [[nodiscard]] double width() const { return m_size.width(); }
    [[nodiscard]] double height() const { return m_size.height(); }
    [[nodiscard]] int lines() const;
    [[nodiscard]] double firstBaseline() const;
    // Where to paint it so that its letters stand in the middle of something: the height of capitals counts, not the
    // room above them.
    [[nodiscard]] double topAt(double middle) const;
    void paint(QPainter &painter, QPointF topLeft) const;
    void paintAround(QPainter &painter, QPointF middle) const;

private:
    void layOut(double width, const Options &options);

    std::unique_ptr<QTextLayout> m_layout;
    QSizeF m_size;
    double m_capital = 0; // height of a capital in the first type
};

// One line, painted with its vertical middle at `middle`; returns its width.
double paintLine(QPainter &painter, const Run &run, const Style &style, QPointF leftMiddle,
                 Qt::Alignment align = Qt::AlignLeft);
// The widest word of the runs: what a widget must never be narrower than.
double widestWord(const Runs &runs, const Style &style);

} // namespace app
