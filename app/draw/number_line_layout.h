#pragma once
// Where everything of a number line stands: worked out before it is painted, so that no word covers another or a mark.
#include "app/draw/axis.h"
#include "app/draw/number_line.h"

#include <QRectF>

namespace app {

struct NumberLineLayout
{
    struct Word // on the line itself
    {
        QString text;
        double middle = 0; // x
        Judgement is = Judgement::Good;
    };
    struct Leader // words off the line, with thin lines to one or more places on it
    {
        QString text;
        std::vector<double> to; // x, ascending
        double left = 0;
        double width = 0;
        int row = 0;          // 0: nearest to the line
        bool printed = false; // a value on the part: points at the edge of the line
        [[nodiscard]] double middle() const { return (to.front() + to.back()) / 2; }
    };
    struct Tick
    {
        QString text;
        double x = 0;
        double left = 0;
        double width = 0;
    };
    struct Flag
    {
        std::size_t index = 0; // of the state's flags
        double x = 0;
        double left = 0; // of its box
        double width = 0; // 0: a mark without box
    };

    QRectF bar;
    QRectF over; // null: no compartment
    Axis axis;
    std::vector<QRectF> bands; // as the state's
    std::vector<Word> words;
    std::vector<Leader> leaders;
    std::vector<Tick> ticks;
    std::vector<Flag> flags; // by x
    bool leadersBelow = false;
    double flagTop = 0;
    double height = 0;

    [[nodiscard]] double leaderY(const Leader &leader, const Style &style) const; // middle of its words
};

NumberLineLayout layOutNumberLine(const NumberLineState &state, QPointF topLeft, double width, const Style &style);

// px at 100 %
inline constexpr double kLineBar = 28, kLineRow = 18, kLineFlag = 26, kLineTickRow = 24;

} // namespace app
