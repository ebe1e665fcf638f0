#pragma once
// The chain in one line for narrow windows: the marks in the order of the wires, then what is likeliest or proven.
#include "app/draw/chain.h"

#include <QWidget>

namespace app {

class ChainLine : public QWidget
{
    Q_OBJECT
public:
    explicit ChainLine(QWidget *parent = nullptr);
    void setState(ChainState state);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    ChainState m_state;
};

} // namespace app
