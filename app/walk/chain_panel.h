#pragma once
// The chain with its head, what it is a claim of, and its foot: the price of guessing, or what is still missing.
#include "app/shared/sheet.h"
#include "core/session/session.h"
#include "core/session/view.h"

namespace app {

class ChainView;
class KeyButton;
class RunLabel;

class ChainPanel : public Sheet
{
    Q_OBJECT
public:
    explicit ChainPanel(QWidget *parent = nullptr);
    void show(const core::StateView &view, const core::Session &session);
    [[nodiscard]] ChainView *chain() const { return m_chain; }
    [[nodiscard]] KeyButton *why() const { return m_why; }

Q_SIGNALS:
    void wantsWhy(const std::string &component); // "": of the likeliest

private:
    void dress();

    RunLabel *m_head;
    RunLabel *m_claim;
    KeyButton *m_why;
    ChainView *m_chain;
    QWidget *m_rule;
    RunLabel *m_foot;
};

} // namespace app
