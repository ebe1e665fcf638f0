#include "app/walk/record_out.h"

#include "app/paper/record_page.h"
#include "app/walk/words.h"

#include <QDir>
#include <QFileDialog>
#include <QPrintDialog>
#include <QPrinter>
#include <QStandardPaths>

#include <memory>

namespace app {
namespace {

QString usualName(const Record &record)
{
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QString name = record.job.empty() ? RecordOut::tr("test record") : RecordOut::tr("test record %1").arg(qs(record.job));
    return QDir(folder).filePath(name + QStringLiteral(".pdf"));
}

} // namespace

RecordOut::RecordOut(QWidget *window) : QObject(window), m_window(window) {}

void RecordOut::print(const Record &record)
{
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(tr("Test record %1").arg(qs(record.job)));
    printer->setPageMargins(kRecordMargins, QPageLayout::Millimeter);
    auto *dialog = new QPrintDialog(printer.get(), m_window);
    dialog->setObjectName(QStringLiteral("print"));
    dialog->setWindowTitle(tr("Print the record"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setOptions(QAbstractPrintDialog::PrintToFile | QAbstractPrintDialog::PrintShowPageSize);
    connect(dialog, &QDialog::accepted, this, [this, printer, record] {
        if (paintRecord(*printer, record) && printer->printerState() != QPrinter::Error)
            return;
        const QString where =
            printer->outputFileName().isEmpty() ? printer->printerName() : QDir::toNativeSeparators(printer->outputFileName());
        Q_EMIT said(
            tr("The record was not printed"),
            tr("%1 took nothing. Look to it, or save the record as PDF.").arg(where.isEmpty() ? tr("The printer") : where));
    });
    dialog->open();
}

void RecordOut::savePdf(const Record &record)
{
    auto *dialog = new QFileDialog(m_window, tr("Save the record as PDF"), usualName(record));
    dialog->setObjectName(QStringLiteral("save_pdf"));
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setNameFilter(tr("PDF (*.pdf)"));
    dialog->setDefaultSuffix(QStringLiteral("pdf"));
    dialog->selectFile(usualName(record));
    connect(dialog, &QFileDialog::fileSelected, this, [this, record](const QString &file) { saveAs(file, record); });
    dialog->open();
}

void RecordOut::saveAs(const QString &file, const Record &record)
{
    const QString shown = QDir::toNativeSeparators(file);
    QString fault;
    if (writeRecordPdf(file, record, &fault))
        Q_EMIT said(tr("The record is saved"), shown);
    else
        Q_EMIT said(tr("The record was not saved"),
                    tr("%1 could not be written: %2. Choose another place.").arg(shown, lowerFirst(fault)));
}

} // namespace app
