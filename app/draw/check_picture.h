#pragma once
// The four pictures of a meter check: probes apart, together, on a small battery, and where red is plugged in.
#include "app/draw/test_picture.h"

namespace app {

struct CheckPictureState
{
    enum class Scene { Apart, Together, Battery, WhereIsRed };
    Scene scene = Scene::Apart;
    MeterState meter;
    QString note, other; // WhereIsRed: "red here", "empty"
};

QString checkPictureWords(const CheckPictureState &state);

class CheckPicture : public QWidget
{
    Q_OBJECT
public:
    explicit CheckPicture(CheckPictureState state, QWidget *parent = nullptr);
    void setMeter(MeterState meter);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    CheckPictureState m_state;
};

} // namespace app
