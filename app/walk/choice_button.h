#pragma once
// A large choice: its number in a key box, a bold name, and a sentence of what follows.
#include "app/draw/test_picture.h"
#include "app/shared/text_block.h"

#include <QAbstractButton>

namespace app {

class ChoiceButton : public QAbstractButton
{
    Q_OBJECT
public:
    ChoiceButton(const QString &head, const QString &text, const QString &key, QWidget *parent = nullptr);

    void setPicture(TestPictureState picture); // below the words

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    Runs runs() const;
    double left() const;

    QString m_head, m_text, m_key;
    std::optional<TestPictureState> m_picture;
};

} // namespace app
