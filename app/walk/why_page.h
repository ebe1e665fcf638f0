#pragma once
// Why a part is likeliest now: each reading in words, and the only place where a figure stands.
#include "app/walk/page.h"

namespace app {

class SaySentence;
class ScrollSheet;

class WhyPage : public Page
{
    Q_OBJECT
public:
    // Of this component, or of the likeliest where it is empty.
    WhyPage(const JobController &job, const std::string &component, QWidget *parent = nullptr);

    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &) override {}

    static QString aboutOneIn(double probability); // "about 1 in 4, our estimate"

private:
    void addEvidence(const JobController &job, const core::ComponentView *part);
    void addSuspects(const JobController &job);

    ScrollSheet *m_sheet;
    SaySentence *m_head;
};

} // namespace app
