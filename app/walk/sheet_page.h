#pragma once
// The value that the sheet in the cabinet, or the plate, gives for one part. It is kept with the job and judged by from
// then on; nothing is judged by a value nobody read.
#include "app/walk/page.h"

namespace app {

class ReadingField;
class SaySentence;
class ScrollSheet;

class SheetPage : public Page
{
    Q_OBJECT
public:
    explicit SheetPage(const JobController &job, QWidget *parent = nullptr);

    QWidget *firstFocus() override;
    QString help() const override;
    bool key(QKeyEvent *event) override;
    void escape() override { Q_EMIT closed(); }
    void showDenial(const core::Denial &denial) override;

private:
    void take();

    std::string m_component;
    ScrollSheet *m_sheet;
    ReadingField *m_field;
    RunLabel *m_line;
    KeyButton *m_take;
};

} // namespace app
