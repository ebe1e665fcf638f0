#pragma once
// Find anything: commands, complaints and jobs, by a few letters.
#include "app/walk/hits.h"
#include "app/walk/page.h"

class QLineEdit;

namespace app {

class HitList;

class FindPage : public Page
{
    Q_OBJECT
public:
    explicit FindPage(std::vector<Hit> everything, QWidget *parent = nullptr);

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &) override {}

Q_SIGNALS:
    void chosen(const QString &id);

protected:
    bool eventFilter(QObject *object, QEvent *event) override;

private:
    void look();

    std::vector<Hit> m_all;
    QLineEdit *m_field;
    HitList *m_hits;
    RunLabel *m_line;
};

} // namespace app
