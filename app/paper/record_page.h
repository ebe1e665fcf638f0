#pragma once
// The record on paper: one flow of blocks on as many pages as it takes, A4 or letter, black on white.
#include "app/paper/record.h"

#include <QMarginsF>
#include <QPagedPaintDevice>

namespace app {

inline constexpr QMarginsF kRecordMargins{18, 16, 18, 16}; // mm

bool paintRecord(QPagedPaintDevice &device, const Record &record); // false: the device took nothing
// The whole file or, with `fault` filled in, none of it: what stood there before is kept.
bool writeRecordPdf(const QString &file, const Record &record, QString *fault);

} // namespace app
