#pragma once
// A field for one reading, and under it what the program understood before anything is taken.
#include "app/shared/reading_field.h"
#include "core/reading/understand.h"
#include "core/session/command.h"

#include <QWidget>

#include <optional>

class QVBoxLayout;

namespace app {

class FlowLayout;
class RunLabel;

class ReadingEntry : public QWidget
{
    Q_OBJECT
public:
    ReadingEntry(const core::Meter &meter, core::Measure measure, const QString &hint, QWidget *parent = nullptr);

    [[nodiscard]] ReadingField *field() const { return m_field; }
    [[nodiscard]] const std::optional<core::Understood> &understood() const { return m_understood; }
    [[nodiscard]] std::string typed() const; // as it is handed to the session
    void setTyped(const QString &text);
    void setLine(const QString &line); // under the field; empty: the hint
    void setTerse(bool terse);         // no hint while there is nothing to say
    void showDenial(const core::Denial &denial);
    // How a value is said besides what was understood: "13.3 less 0.2 for the probes = 13.1 Ω".
    void setProbes(double ohm) { m_probes = ohm; }

Q_SIGNALS:
    void changed(); // understood() may be another one
    void taken();   // Enter in the field

protected:
    bool eventFilter(QObject *object, QEvent *event) override;

private:
    void look();
    void suggest(const std::vector<std::string> &suggestions);
    QString said(const core::Understood &understood) const;

    core::Meter m_meter;
    core::Measure m_measure;
    QString m_hint;
    double m_probes = 0;
    bool m_terse = false;
    ReadingField *m_field;
    RunLabel *m_line;
    QWidget *m_choices;
    std::optional<core::Understood> m_understood;
};

} // namespace app
