#pragma once
// A meter with what to look for when buying one: seven things, each beside its place.
#include "app/shared/style.h"

#include <QWidget>

namespace app {

class MeterTips : public QWidget
{
    Q_OBJECT
public:
    explicit MeterTips(QWidget *parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;
};

} // namespace app
