#pragma once
// Widgets in a row that goes on in the next line where it does not fit: buttons at 200 %.
#include <QLayout>
#include <QList>

namespace app {

class FlowLayout : public QLayout
{
    Q_OBJECT
public:
    explicit FlowLayout(QWidget *parent = nullptr, int gap = 10);
    ~FlowLayout() override;

    void addItem(QLayoutItem *item) override;
    int count() const override;
    QLayoutItem *itemAt(int index) const override;
    QLayoutItem *takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSize() const override;
    void setGeometry(const QRect &rect) override;

private:
    int place(const QRect &rect, bool move) const; // the height it takes

    QList<QLayoutItem *> m_items;
    int m_gap;
};

} // namespace app
