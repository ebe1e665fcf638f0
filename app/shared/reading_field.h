#pragma once
// Where the reading is typed: large digits, the unit at the right, a decimal comma or point. It keeps what was typed;
// what it means is the session's to say.
#include <QLineEdit>

namespace app {

class ReadingField : public QLineEdit
{
    Q_OBJECT
public:
    explicit ReadingField(QWidget *parent = nullptr);

    void setUnit(const QString &unit); // "Ω", "V ~": a hint, not part of the text
    void setNote(const QString &note); // quiet words in the unit's place once closed: "first, taken"
    void setWaiting(bool waiting);     // a thin ink bar under the text while the answer is worked out
    void setClosed(bool closed);       // taken: shown, not editable, single letters act again
    [[nodiscard]] bool isClosed() const { return isReadOnly(); }
    // What was typed with a decimal point: "10,7 k" gives "10.7 k". A comma that cannot be a decimal sign (two of them,
    // or one beside a point) stays as it is, for the session to refuse.
    [[nodiscard]] QString reading() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void typed(const QString &reading); // after every change by the person, as reading()
    void taken();                       // Enter, once, never from a held-down key

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void dress();
    QString hint() const;

    QString m_unit;
    QString m_note;
    bool m_waiting = false;
};

} // namespace app
