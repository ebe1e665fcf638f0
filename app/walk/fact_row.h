#pragma once
// One line of a verdict: mark, what, the reading, its number line, what is good and what it means; a hairline below.
#include "app/shared/marks.h"

#include <QCoreApplication>
#include <QWidget>

class QBoxLayout;

namespace app {

class RunLabel;

class FactRow : public QWidget
{
    Q_OBJECT
public:
    FactRow(Standing mark, const QString &title, const QString &note, QWidget *parent = nullptr);
    void setValue(const QString &value);
    void setMiddle(QWidget *widget);
    void setEnd(const QString &quiet, const QString &strong);

protected:
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    Standing m_mark;
    QBoxLayout *m_row;
    RunLabel *m_value = nullptr;
};

// How a repair went, as it is stored and as it is said.
struct OutcomeWords
{
    Q_DECLARE_TR_FUNCTIONS(app::OutcomeWords)
public:
    static QStringList values();
    static QString said(const QString &value);
};

} // namespace app
