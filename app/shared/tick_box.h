#pragma once
// A box to tick with a sentence that wraps and, where a drawing numbers it, a number. 30 × 30 at 100 %, a hairline below.
#include "app/shared/text_block.h"

#include <QCheckBox>

namespace app {

class TickBox : public QCheckBox
{
    Q_OBJECT
public:
    explicit TickBox(const QString &words, const QString &number = QString(), QWidget *parent = nullptr);
    void setCompact(bool compact); // 24 × 24 and no hairline: lists on a verdict

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;
    bool hitButton(const QPoint &at) const override;

private:
    Runs runs() const;
    double boxSide() const;
    double textLeft() const;

    QString m_words;
    QString m_number;
    bool m_compact = false;
};

} // namespace app
