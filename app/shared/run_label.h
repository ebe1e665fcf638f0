#pragma once
// Plain words on the sheet: several weights and colours in one paragraph, wrapped, painted by us, read by a screen
// reader as one text. Nothing in it is ever taken for markup.
#include "app/shared/text_block.h"

#include <QWidget>

namespace app {

class RunLabel : public QWidget
{
    Q_OBJECT
public:
    explicit RunLabel(QWidget *parent = nullptr);
    explicit RunLabel(Runs runs, QWidget *parent = nullptr);

    void setRuns(Runs runs);
    void setText(const QString &text, Type type = Type::Text, Role role = Role::Ink);
    void setAlignment(Qt::Alignment align);
    [[nodiscard]] const Runs &runs() const { return m_runs; }
    [[nodiscard]] QString text() const { return plainText(m_runs); }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    TextBlock block(double width) const;

    Runs m_runs;
    Qt::Alignment m_align = Qt::AlignLeft;
};

} // namespace app
