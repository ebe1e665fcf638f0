#pragma once
// A reading on its line: good, no conclusion and bad as tone and hatch with the words on it, over limit in a compartment
// of its own, the readings as flags with their uncertainty.
#include "app/shared/style.h"

#include <QCoreApplication>
#include <QWidget>

#include <optional>
#include <vector>

namespace app {

enum class Judgement { Good, NoConclusion, Bad };
QString judgementWord(Judgement judgement); // "good", "no conclusion", "bad"

struct NumberLineState
{
    struct Band // from < to, in the unit of the line; bands do not overlap, what no band covers stays empty
    {
        double from = 0;
        double to = 0;
        Judgement is = Judgement::Good;
    };
    struct Tick
    {
        double at = 0;
        QString text;
    };
    struct Flag
    {
        double value = 0;
        bool over = false;    // over limit: `value` is not looked at
        double halfWidth = 0; // uncertainty, in the unit; 0: none is drawn
        QString text;         // "13.1 Ω"
        bool earlier = false; // a reading before the present one: a mark without its own flag
    };
    struct Printed // a value that stands on the part, not in the program: "your printed temperature"
    {
        double at = 0;
        QString text;
    };

    QString quantity; // for a screen reader: "Element, end to end"
    QString unit;     // "Ω"
    double from = 0;  // ends of the line; from < to, from > 0 where it is logarithmic
    double to = 0;
    bool logarithmic = false;
    std::vector<Band> bands;
    std::vector<Tick> ticks;       // empty: chosen by the line
    bool numbers = true;           // false: the line has no scale, only its bands and printed values
    std::optional<Judgement> over; // what OL means; empty: no compartment
    std::vector<Flag> flags;
    std::vector<Printed> printed;
    QString between; // words at the bands without conclusion; empty: the word alone
    bool small = false; // a strip in a row: no words, no ticks, marks instead of flags
};

// The line in words, all of it.
QString numberLineWords(const NumberLineState &state);
// Painted into a rectangle of at least this height.
double numberLineHeight(const NumberLineState &state, double width, const Style &style);
void paintNumberLine(QPainter &painter, const QRectF &into, const NumberLineState &state, const Style &style);

class NumberLine : public QWidget
{
    Q_OBJECT
public:
    explicit NumberLine(QWidget *parent = nullptr);
    void setState(NumberLineState state);
    [[nodiscard]] const NumberLineState &state() const { return m_state; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    NumberLineState m_state;
};

} // namespace app
