#pragma once
// One placement as a picture: the meter at the left, the component at the right, the two cables unbroken from the jacks
// to the terminals, the pulled wires beside them.
#include "app/shared/style.h"

#include <QWidget>

#include <optional>
#include <vector>

namespace app {

enum class Dial { Off, VoltAc, VoltDc, Ohm, Continuity, Capacitance, ClampAmpere };

struct MeterState
{
    bool shown = true;
    Dial dial = Dial::Ohm;
    QString display;          // what it shows: digits, point, minus, "OL"; empty: a blank display
    QString unit;             // "Ω", "kΩ", "V"
    bool alternating = false; // a ~ on the display
    bool tone = false;        // the beeper sounds
};

struct TestPictureState
{
    enum class Form {
        Probes, // held by hand on dead parts
        Clips,  // set with power off
        Fists,  // two probes held at an outlet, fingers behind the guards
        Clamp,  // a jaw around one wire
        Look,   // the component alone
        Meter,  // the meter alone, nothing plugged into A
    };
    struct Terminal
    {
        QString id;          // the kind's: "t1", "thermal_cutoff.t2"
        QString name;        // "tab 1"; painted where there is no drawing, and spoken
        QString number;      // "1": in a ring beside it; empty: none
        bool pulled = false; // the appliance's wire is off it
    };
    struct Caption
    {
        QString text;    // "thermal cut-off"
        QString element; // id in the drawing; empty: under the component, at the right
    };
    struct Fault // only once a reading has shown it, and no more exactly than the reading did
    {
        QString element = QStringLiteral("current"); // id in the drawing; unknown: the whole component
        QString words;                               // "broken, somewhere in here"
    };

    Form form = Form::Probes;
    MeterState meter;
    QString drawing;                 // "dryer_element": :/drawings/dryer_element.svg; unknown: terminals as labelled boxes
    QString position;                // "released" or "pressed" where the drawing has both
    QString part;                    // "heating element": spoken, and the label where there is no drawing
    std::vector<Terminal> terminals; // those that are measured, pulled or numbered
    QString red, black;              // terminal ids; empty: the probe is not drawn
    QString meterNote;               // beside the display: "A good one reads about this."
    QString otherDisplay, otherUnit; // the small second display: what a broken one shows; empty: none
    QString otherNote;               // "a broken one this"
    QString pulledNote;              // "both wires pulled"; empty: "pulled"
    std::vector<Caption> captions;
    std::optional<Fault> fault;
    QString redNote, blackNote; // Fists: "2 then red into Y", "1 black first into X"; else "red", "black"
    QString wire;               // Clamp: the wire in the jaw
    bool close = false;         // a small picture among others: the component nearer, the probes without their names
};

QString testPictureWords(const TestPictureState &state);
// Painted into the rectangle, as large as it fits, in the middle. Returns false if there is nothing to paint.
bool paintTestPicture(QPainter &painter, const QRectF &into, const TestPictureState &state, const Style &style);

class TestPicture : public QWidget
{
    Q_OBJECT
public:
    explicit TestPicture(QWidget *parent = nullptr);
    void setState(TestPictureState state);
    [[nodiscard]] const TestPictureState &state() const { return m_state; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    TestPictureState m_state;
};

} // namespace app
