#pragma once
// A flat sheet on the desk: one surface, a hairline, no shadow, no rounding.
#include "app/shared/palette.h"

#include <QFrame>

namespace app {

class Sheet : public QFrame
{
    Q_OBJECT
public:
    explicit Sheet(Role surface = Role::Sheet, QWidget *parent = nullptr); // Sheet, Well or Desk
    void setLine(bool shown); // the hairline round it; shown at first

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    Role m_surface;
    bool m_line = true;
};

} // namespace app
