#pragma once
// A button that shows its key in a small box. It is never a default button; Enter and Space press it only while it has
// the focus, and a held-down key never does.
#include "app/shared/text_block.h"

#include <QPushButton>

namespace app {

// The box of a key, with its left edge at `left` and its middle at `middleY`; `ink` for text and edge. Returns its width.
double paintKeyBox(QPainter &painter, const QString &key, const Style &style, double left, double middleY, QColor ink);
QSizeF keyBoxSize(const QString &key, const Style &style);

class KeyButton : public QPushButton
{
    Q_OBJECT
public:
    enum class Face { Outlined, Filled, Link }; // filled: at most one a screen, none on a safety screen
    enum class Size { Row, Normal, Safety, Large }; // 32, 40, 54, 60 px high at 100 %

    // `key` is only shown (and said to a screen reader); whoever shows the button binds it.
    explicit KeyButton(const QString &words, const QString &key = QString(), QWidget *parent = nullptr);

    void setWords(const QString &words); // an ampersand is an ampersand
    void setKey(const QString &key);
    void setFace(Face face);
    void setSize(Size size);
    void setSpread(bool spread); // words at the left edge, key at the right one; else both in the middle
    [[nodiscard]] QString words() const { return m_words; }
    [[nodiscard]] QString key() const { return m_key; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void enterEvent(QEnterEvent *event) override;
    void leaveEvent(QEvent *event) override;

private:
    struct Colours
    {
        QColor edge, fill, text;
    };
    Colours colours() const;
    Runs runs() const;
    double padding() const;
    double keyWidth() const; // with the gap before it
    double leastHeight() const;
    void paintFrame(QPainter &painter, const Colours &colours) const;

    QString m_words;
    QString m_key;
    Face m_face = Face::Outlined;
    Size m_size = Size::Normal;
    bool m_spread = false;
};

} // namespace app
