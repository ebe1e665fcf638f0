#pragma once
// Stop: on every screen, one key, never a question first. Its four words can be pressed by themselves.
#include "app/shared/style.h"

#include <QAbstractButton>

namespace app {

enum class StopWord { Unsaid, Gas, Smoke, Shock, Water };

class StopButton : public QAbstractButton
{
    Q_OBJECT
public:
    // Vertical: in the lower left corner; Horizontal: one line, at the right end of the lying rail.
    explicit StopButton(Qt::Orientation orientation = Qt::Vertical, QWidget *parent = nullptr);
    void setOrientation(Qt::Orientation orientation);
    [[nodiscard]] QRectF wordRect(StopWord word) const; // where one of the four words is pressed

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void stopped(app::StopWord why); // Unsaid: the button itself or its key, F12

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;

private:
    struct Word
    {
        StopWord word;
        QString text;
        QRectF rect;
    };
    std::vector<Word> words() const;
    double headWidth() const;

    Qt::Orientation m_orientation;
    StopWord m_pressed = StopWord::Unsaid;
};

} // namespace app
