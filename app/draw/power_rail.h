#pragma once
// Power as a place: the states of the gate from voltage at the top to unknown at the bottom, the present one as a disc.
#include "app/shared/style.h"

#include <QWidget>

namespace app {

enum class PowerPlace { Energized, Running, ProvenDead, Isolated, NotProven, Unknown };

struct RailState
{
    PowerPlace place = PowerPlace::Unknown;
    QString since; // whose word, since when: "plug out,\nin sight\n10:36"
    bool onHoldPoint = false; // the power stays where it is; only the bar turns orange
};

QString railWords(const RailState &state); // "isolated, plug out, in sight, 10:36"
QString placeWord(PowerPlace place);

class PowerRail : public QWidget
{
    Q_OBJECT
public:
    explicit PowerRail(Qt::Orientation orientation = Qt::Vertical, QWidget *parent = nullptr);
    void setState(RailState state);
    void setOrientation(Qt::Orientation orientation); // Horizontal: lying, one line
    [[nodiscard]] const RailState &state() const { return m_state; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    Qt::Orientation m_orientation;
    RailState m_state;
};

} // namespace app
