#pragma once
// Makes a self-painted list readable: a screen reader finds a list with one item a row.
#include <QAccessibleWidget>
#include <QRect>

namespace app {

// What a widget tells about its painted rows. Row numbers run from 0.
class RowSource
{
public:
    virtual ~RowSource() = default;
    virtual int rowCount() const = 0;
    virtual QString rowText(int row) const = 0; // the row in words, mark included
    virtual QRect rowRect(int row) const = 0;   // in the widget's own coordinates
    virtual int currentRow() const = 0;         // -1: none
    virtual void activateRow(int row) = 0;
};

// To be called by a widget that is a RowSource too (its constructor is the place), once a class is enough.
void installAccessibleRows();
// The current row is another one now: say it.
void announceRow(QWidget *list, int row);
// The rows are others now.
void announceRowsChanged(QWidget *list);

} // namespace app
