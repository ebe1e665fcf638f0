#pragma once
// The record on its way out of the program: to a printer or into a PDF file. The dialogs ask where; what went wrong is
// said, and nothing is pretended.
#include "app/paper/record.h"

#include <QObject>

class QWidget;

namespace app {

class RecordOut : public QObject
{
    Q_OBJECT
public:
    explicit RecordOut(QWidget *window);

    // Both open a dialog and return at once; what came of it is said later.
    void print(const Record &record);
    void savePdf(const Record &record);

Q_SIGNALS:
    void said(const QString &head, const QString &text);

private:
    void saveAs(const QString &file, const Record &record);

    QWidget *m_window;
};

} // namespace app
