#pragma once
// The way so far: a tape of stubs, one a step, the present one with an ink top.
#include "app/shared/marks.h"

#include <QListView>

#include <optional>
#include <vector>

namespace app {

struct TapeStub
{
    enum class Kind { Step, Power, Next }; // Power: what was made of it ("plug out 10:36"); Next: not yet done
    int id = 0;                            // given back by activated()
    Kind kind = Kind::Step;
    QString title;   // "5 Thermal cut-off"
    QString reading; // "0.2 Ω", "you are here", "plug out\n10:36"
    std::optional<Standing> standing;
    bool present = false;
    bool struck = false; // undone or replaced: crossed out, still there
};

QString stubWords(const TapeStub &stub);

class TapeView : public QListView
{
    Q_OBJECT
public:
    explicit TapeView(QWidget *parent = nullptr);
    void setStubs(const std::vector<TapeStub> &stubs); // scrolls the present one into sight

    void doItemsLayout() override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void stubActivated(int id); // Enter or a click on a step

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void showPresent();
};

} // namespace app
