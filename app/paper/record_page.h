#pragma once
// The record on paper: one flow of blocks on as many pages as it takes, A4 or letter, black on white.
#include "app/paper/record.h"

#include <QPagedPaintDevice>

namespace app {

void paintRecord(QPagedPaintDevice &device, const Record &record);
// False with `fault` filled in if the file cannot be written.
bool writeRecordPdf(const QString &file, const Record &record, QString *fault);

} // namespace app
