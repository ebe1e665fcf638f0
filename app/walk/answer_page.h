#pragma once
// A question, a look or something to do: one sentence, and its answers as numbered buttons.
#include "app/walk/page.h"

#include <vector>

namespace app {

class SaySentence;
class ScrollSheet;

class AnswerPage : public Page
{
    Q_OBJECT
public:
    explicit AnswerPage(const JobController &job, QWidget *parent = nullptr);

    QWidget *firstFocus() override;
    QString help() const override;
    QString holdSentence() const override;
    bool key(QKeyEvent *event) override;
    void showDenial(const core::Denial &denial) override;
    bool wantsChain() const override { return m_step.screen.empty(); }
    void setRoom(Room room) override;

private:
    void addSentence(const JobController &job);
    void addPicture(const JobController &job);
    void addAnswers();
    void answer(std::size_t number);
    void step(int by);

    core::StepView m_step;
    core::Power m_power;
    ScrollSheet *m_sheet;
    SaySentence *m_sentence = nullptr;
    RunLabel *m_line = nullptr;
    std::vector<KeyButton *> m_answers;
    std::vector<KeyButton *> m_more; // chain and way so far, where they do not stand beside
};

} // namespace app
