#include "app/walk/reading_entry.h"

#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/run_label.h"
#include "app/shared/theme.h"
#include "app/walk/words.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QVBoxLayout>

#include <cmath>

namespace app {

ReadingEntry::ReadingEntry(const core::Meter &meter, core::Measure measure, const QString &hint, QWidget *parent)
    : QWidget(parent), m_meter(meter), m_measure(measure), m_hint(hint), m_field(new ReadingField(this)),
      m_line(new RunLabel(this)), m_choices(new QWidget(this))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(Theme::current().spx(6));
    layout->addWidget(m_field);
    layout->addWidget(m_line);
    layout->addWidget(m_choices);
    new FlowLayout(m_choices, Theme::current().spx(8));
    m_choices->hide();
    m_field->installEventFilter(this);
    connect(m_field, &ReadingField::typed, this, &ReadingEntry::look);
    connect(m_field, &ReadingField::taken, this, [this] {
        if (m_understood)
            Q_EMIT taken();
        else
            look();
    });
    setLine({});
}

std::string ReadingEntry::typed() const
{
    return utf8(m_field->reading());
}

void ReadingEntry::setTyped(const QString &text)
{
    m_field->setText(text);
    look();
}

void ReadingEntry::setTerse(bool terse)
{
    m_terse = terse;
    m_line->setVisible(!terse || m_line->text() != m_hint);
}

void ReadingEntry::setLine(const QString &line)
{
    m_line->setText(line.isEmpty() ? m_hint : line, Type::Quiet, line.isEmpty() ? Role::Ink2 : Role::Ink);
    m_line->setVisible(!m_terse || !line.isEmpty());
    m_field->setAccessibleDescription(line.isEmpty() ? m_hint : line);
    QAccessibleEvent event(m_field, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

QString ReadingEntry::said(const core::Understood &understood) const
{
    const core::Reading &reading = understood.reading;
    const bool ohms = reading.what == core::Reading::What::Value && reading.amount.unit == core::Unit::Ohm;
    if (ohms && m_probes > 0 && reading.amount.value >= m_probes && reading.amount.value < 1000) {
        core::Reading less = reading;
        less.amount.value = std::round((reading.amount.value - m_probes) * 100) / 100;
        return tr("Understood: %1, less %2 for the probes = %3")
            .arg(qs(understood.shownAs), QString::number(m_probes), qs(core::saidBack(less)));
    }
    return tr("Understood: %1").arg(qs(understood.shownAs));
}

void ReadingEntry::look()
{
    m_understood.reset();
    suggest({});
    if (m_field->reading().isEmpty()) {
        setLine({});
        Q_EMIT changed();
        return;
    }
    const auto understood = core::understand(typed(), m_measure, m_meter);
    if (understood) {
        m_understood = *understood;
        setLine(said(*understood));
    } else {
        setLine(qs(understood.error().text));
        suggest(understood.error().suggestions);
    }
    Q_EMIT changed();
}

void ReadingEntry::suggest(const std::vector<std::string> &suggestions)
{
    QLayout *row = m_choices->layout();
    while (QLayoutItem *item = row->takeAt(0)) {
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
    for (const std::string &text : suggestions) {
        auto *choice = new KeyButton(qs(text), {}, m_choices);
        choice->setSize(KeyButton::Size::Row);
        choice->setAccessibleName(tr("I mean %1").arg(qs(text)));
        connect(choice, &QPushButton::clicked, this, [this, text] {
            setTyped(qs(text));
            m_field->setFocus();
        });
        row->addWidget(choice);
    }
    m_choices->setVisible(!suggestions.empty());
}

void ReadingEntry::showDenial(const core::Denial &denial)
{
    setLine(qs(denial.text));
    suggest(denial.suggestions);
    m_field->setFocus();
    m_field->selectAll();
}

// Ctrl+Z in an empty field is the window's: back one answer.
bool ReadingEntry::eventFilter(QObject *object, QEvent *event)
{
    if (event->type() == QEvent::ShortcutOverride && m_field->text().isEmpty() &&
        static_cast<QKeyEvent *>(event)->matches(QKeySequence::Undo)) {
        event->ignore();
        return true;
    }
    return QWidget::eventFilter(object, event);
}

} // namespace app
