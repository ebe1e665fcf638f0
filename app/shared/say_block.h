#pragma once
// What the screen says, in its largest type. More than two lines of it: only the first sentence stays large, the rest
// stands under it in the type of text, so that the drawing keeps its room.
#include "app/shared/say_sentence.h"

namespace app {

class RunLabel;

class SayBlock : public QWidget
{
    Q_OBJECT
public:
    explicit SayBlock(const QString &text, QWidget *parent = nullptr);

    [[nodiscard]] SaySentence *sentence() const { return m_sentence; } // what takes the focus; read out whole

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void fit();

    QString m_text;
    SaySentence *m_sentence;
    RunLabel *m_rest;
};

// The first sentence of a text and what follows it; the second is empty where there is only one.
std::pair<QString, QString> firstSentence(const QString &text);

} // namespace app
