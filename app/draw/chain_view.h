#pragma once
// The chain: painted upright from rail to rail, walked with the arrow keys, read as a list with one row a component.
#include "app/draw/chain.h"
#include "app/draw/chain_layout.h"
#include "app/shared/accessible_rows.h"

#include <QAbstractScrollArea>

namespace app {

class ChainView : public QAbstractScrollArea, public RowSource
{
    Q_OBJECT
public:
    explicit ChainView(QWidget *parent = nullptr);
    ~ChainView() override;
    void setState(ChainState state);
    [[nodiscard]] const ChainState &state() const { return m_state; }
    [[nodiscard]] bool foldsRows() const { return m_folds; }

    // Rows in the order they are walked: components of the rungs (or of the places), then conditions.
    int rowCount() const override;
    QString rowText(int row) const override;
    QRect rowRect(int row) const override;
    int currentRow() const override { return m_current; }
    void activateRow(int row) override;
    void setCurrentRow(int row);
    [[nodiscard]] QString rowId(int row) const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override; // all of it without scrolling

Q_SIGNALS:
    void currentChanged(const QString &id);
    void activated(const QString &id); // Enter or a click on a component or condition

protected:
    bool viewportEvent(QEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    void layOut();
    void paint();
    void press(QPoint at);
    void keepInSight(const QRectF &rect);
    void keepLitInSight();
    QRectF pinned() const; // the part of the viewport between the two rails

    ChainState m_state;
    ChainLayout m_layout;
    bool m_folds = false;
    int m_current = -1;
};

} // namespace app
