#pragma once
// The end of a walk: what is proven and by what, the cause behind it, putting it together, proving the repair; or what is
// still missing, with the best tests left.
#include "app/walk/page.h"

#include <vector>

class QBoxLayout;

namespace app {

class ChainLine;
struct ChainState;
class ScrollSheet;
class SaySentence;
class TickBox;

class VerdictPage : public Page
{
    Q_OBJECT
public:
    explicit VerdictPage(const JobController &job, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void showDenial(const core::Denial &denial) override;
    void setChain(const ChainState &chain);

Q_SIGNALS:
    void wantsCopy();
    void wantsPdf();
    void wantsOutcome();

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addHeadline(const JobController &job);
    void addProofs(const JobController &job);
    void addProof(const core::ProofLine &proof, const JobController &job);
    void addCauses();
    void addOffers();
    void addPutBack(const JobController &job);
    QWidget *pictureOfPart(const JobController &job) const;
    void addProve();
    void addPhone();
    void addSide(const JobController &job);
    void addSideText(const QString &head, const QString &text);
    void addSideActions();
    void putBack();
    void choose(std::size_t number);

    core::StateView m_view;
    core::VerdictView m_verdict;
    QBoxLayout *m_columns;
    ScrollSheet *m_main;
    ScrollSheet *m_side;
    SaySentence *m_headline = nullptr;
    ChainLine *m_chain = nullptr;
    RunLabel *m_line = nullptr;
    std::vector<std::pair<std::string, TickBox *>> m_boxes;
    KeyButton *m_together = nullptr;
    std::vector<KeyButton *> m_offers;
};

} // namespace app
