#pragma once
// The drawing of a safety screen: simple, without words but its captions, which can be read by a screen reader.
#include "app/shared/style.h"

#include <QWidget>

#include <vector>

namespace app {

struct SafetyPictureState
{
    enum class Scene {
        Unplug,     // S1: the plug out of its outlet, in sight
        BreakerOff, // S2: the double breaker down, taped
        ProveDead,  // S3: known outlet, work point, known outlet
        Clips,      // S4: clips on, hands off
        Outlet,     // S5: both fists behind the guards
        Clamp,      // S6: the jaw around one wire
        Run,        // S7: closed up, the flap lifts
        PutBack,    // S8: every pulled wire, numbered
        MakeItOff,  // S9: off at the control, plug, clips
        Wait,       // S10: stored charge, hands out
        Hot,        // S11: hot parts
        Closed,     // S13: stays closed
    };
    struct Wire // of PutBack
    {
        QString terminal; // "t1"
        QString number;   // "1"
    };
    struct Part // of PutBack
    {
        QString drawing; // "dryer_element"
        QString caption; // "heating element"
        std::vector<Wire> wires;
    };

    Scene scene = Scene::Unplug;
    QString receptacle = QStringLiteral("receptacle_14_30");        // drawing of the outlet
    QString black = QStringLiteral("x"), red = QStringLiteral("y"); // Outlet: contacts; ProveDead: two of the points
    QStringList points;      // ProveDead: what is measured at the machine: "L1", "N", "bare metal"
    bool breaker = false;    // MakeItOff: the breaker in the plug's place
    bool clips = true;       // MakeItOff: clips may be on
    bool atOutlet = false;   // MakeItOff: after probes in an outlet, the machine unplugged
    std::vector<Part> parts; // PutBack
};

QString safetyPictureWords(const SafetyPictureState &state);
void paintSafetyPicture(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style);

class SafetyPicture : public QWidget
{
    Q_OBJECT
public:
    explicit SafetyPicture(QWidget *parent = nullptr);
    void setState(SafetyPictureState state);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    SafetyPictureState m_state;
};

} // namespace app
