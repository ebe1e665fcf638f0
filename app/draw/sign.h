#pragma once
// Safety signs by their code in ISO 7010, drawn by us.
#include <QColor>
#include <QRectF>
#include <QString>

class QPainter;

namespace app {

// The sign into a square. A code without a drawing gives the general sign of its kind: W001, M001, P001 or a plain E.
void paintSign(QPainter &painter, const QString &code, const QRectF &square);
QString signName(const QString &code); // in words, for a screen reader: "electricity"
// The alert symbol of ANSI Z535.4 in one colour, its mark left open in the other.
void paintAlert(QPainter &painter, const QRectF &square, QColor symbol, QColor mark);

} // namespace app
