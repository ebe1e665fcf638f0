#pragma once
// A page of plain text over the step: help, about, what could not be loaded.
#include "app/walk/page.h"

namespace app {

class SaySentence;
class ScrollSheet;

class TextPage : public Page
{
    Q_OBJECT
public:
    TextPage(const QString &head, const QString &text, QWidget *parent = nullptr);
    void addSection(const QString &head, const QString &text);
    void addKeys(const std::vector<std::pair<QString, QString>> &keys);

    bool wantsChain() const override { return false; }
    bool wantsTape() const override { return false; }
    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &) override {}

private:
    ScrollSheet *m_sheet;
    SaySentence *m_head;
};

TextPage *helpPage(const Page &of);
TextPage *aboutPage();
TextPage *faultsPage(const ContentFiles &content);

} // namespace app
