#pragma once
// A safety panel in the manner of ANSI Z535.4: the signal word with its alert symbol above; signs at the left; hazard and
// consequence in bold, then what to do, one sentence a line. White inside in both themes. It takes the focus.
#include "app/shared/text_block.h"

#include <QWidget>

#include <vector>

namespace app {

enum class Signal { Danger, Warning, Caution, Notice };
QString signalWord(Signal signal); // "DANGER", …

struct SignalText
{
    struct Step
    {
        Runs text;      // types SafetyStrong and Safety; what was filled in for this step is strong
        QString number; // "1"; empty: none
        QString sign;   // a sign before the line: "W016"; mostly empty
    };

    Signal signal = Signal::Warning;
    std::vector<QString> signs; // codes of ISO 7010: "W012", "M006"
    QString hazard;             // hazard and consequence, in bold
    std::vector<Step> steps;
    std::vector<QString> fromTree; // plain lines of the tree, under a rule
};

QString signalWords(const SignalText &text); // word, hazard, consequence, what to do, in this order

class SignalPanel : public QWidget
{
    Q_OBJECT
public:
    explicit SignalPanel(QWidget *parent = nullptr);
    void setText(SignalText text);
    void setStopPage(bool stopPage); // the large type of the page that fills the window
    [[nodiscard]] const SignalText &text() const { return m_text; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    struct Plan;
    Plan plan(double width) const;
    void paintHead(QPainter &painter, const Plan &plan) const;
    void paintSigns(QPainter &painter, const Plan &plan) const;
    void paintLines(QPainter &painter, const Plan &plan) const;

    SignalText m_text;
    bool m_stopPage = false;
};

} // namespace app
