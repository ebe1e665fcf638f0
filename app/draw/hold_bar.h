#pragma once
// The orange bar over a page under voltage: alert symbol and one sentence.
#include "app/shared/style.h"

#include <QWidget>

namespace app {

class HoldBar : public QWidget
{
    Q_OBJECT
public:
    explicit HoldBar(const QString &sentence = QString(), QWidget *parent = nullptr);
    void setSentence(const QString &sentence);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    QString m_sentence;
};

} // namespace app
