#pragma once
// No meter yet: what of this complaint goes without one, what stays open, and what to look for when buying one.
#include "app/walk/page.h"
#include "core/tree/library.h"

class QBoxLayout;

namespace app {

class SaySentence;
class ScrollSheet;

class NoMeterPage : public Page
{
    Q_OBJECT
public:
    // `tree`: of the job that is about to begin; null: none is.
    NoMeterPage(const core::Library &library, const core::Tree *tree, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &denial) override;

Q_SIGNALS:
    void goesWithout();

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void addSteps(const core::Library &library, const core::Tree &tree);
    void addTips();
    void addRow(bool goes, const QString &words, const QString &note);

    QBoxLayout *m_columns;
    ScrollSheet *m_left;
    ScrollSheet *m_right;
    SaySentence *m_head;
    KeyButton *m_go;
};

} // namespace app
