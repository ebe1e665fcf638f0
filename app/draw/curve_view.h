#pragma once
// A reading on the curve of its part: resistance over temperature, with the band that is good at each temperature.
#include "app/shared/style.h"

#include <QWidget>

#include <vector>

namespace app {

struct CurveState
{
    struct Point // the curve at x, and the good band there; all in the axes' units, low <= y <= high
    {
        double x = 0;
        double y = 0;
        double low = 0;
        double high = 0;
    };
    struct Curve
    {
        std::vector<Point> points; // x ascending
        QString name;              // "this sensor's curve:\n10 kΩ at 25 °C, ±10 %"; a line feed starts a line
    };
    struct Reading
    {
        double x = 0;
        double y = 0;
        double xHalf = 0; // uncertainties; 0: not drawn
        double yHalf = 0;
        QString value; // "24.9 kΩ"
        QString says;  // "5.3 kΩ below\nthe good band"
        bool earlier = false;
    };

    QString quantity; // for a screen reader: "Exhaust thermistor"
    QString xTitle;   // "temperature of the sensor, °C"
    QString yUnit;    // "kΩ"
    double xFrom = 0, xTo = 0;
    double yFrom = 0, yTo = 0; // > 0 where logarithmic
    bool logarithmic = true;
    std::vector<Curve> curves;
    std::vector<Reading> readings;
};

QString curveWords(const CurveState &state);
void paintCurve(QPainter &painter, const QRectF &into, const CurveState &state, const Style &style);

class CurveView : public QWidget
{
    Q_OBJECT
public:
    explicit CurveView(QWidget *parent = nullptr);
    void setState(CurveState state);
    [[nodiscard]] const CurveState &state() const { return m_state; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    CurveState m_state;
};

} // namespace app
