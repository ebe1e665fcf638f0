#include "app/draw/sign.h"

#include "app/draw/safety_colours.h"

#include <QCoreApplication>
#include <QDir>
#include <QHash>
#include <QPainter>
#include <QPainterPath>
#include <QSvgRenderer>

namespace app {
namespace {

QString fileOf(const QString &code)
{
    const QDir signs(QStringLiteral(":/signs"));
    const QStringList files = signs.entryList({code.toLower() + QStringLiteral("*.svg"), code.toUpper() + QStringLiteral("*.svg")});
    return files.isEmpty() ? QString() : signs.filePath(files.first());
}

QPainterPath triangle(double reach, double round)
{
    QPainterPath path;
    path.moveTo(0, -reach);
    path.lineTo(reach * 1.04, reach * 0.8);
    path.lineTo(-reach * 1.04, reach * 0.8);
    path.closeSubpath();
    QPainterPathStroker soft;
    soft.setWidth(round);
    soft.setJoinStyle(Qt::RoundJoin);
    return path.united(soft.createStroke(path));
}

void paintExclamation(QPainter &painter, QColor colour, double reach)
{
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    QPainterPath bar;
    bar.moveTo(-reach * 0.13, -reach * 0.42);
    bar.lineTo(reach * 0.13, -reach * 0.42);
    bar.lineTo(reach * 0.07, reach * 0.28);
    bar.lineTo(-reach * 0.07, reach * 0.28);
    bar.closeSubpath();
    painter.drawPath(bar);
    painter.drawEllipse(QPointF(0, reach * 0.5), reach * 0.12, reach * 0.12);
}

// The general sign of a kind, in a square from -50 to 50.
void paintGeneral(QPainter &painter, QChar kind)
{
    painter.setPen(Qt::NoPen);
    if (kind == QLatin1Char('W')) {
        painter.fillPath(triangle(44, 10), QColor::fromRgba(safety::kBlack));
        painter.fillPath(triangle(32, 4), QColor::fromRgba(safety::kYellow));
        paintExclamation(painter, QColor::fromRgba(safety::kBlack), 34);
    } else if (kind == QLatin1Char('M')) {
        painter.setBrush(QColor::fromRgba(safety::kBlue));
        painter.drawEllipse(QPointF(), 48, 48);
        paintExclamation(painter, QColor::fromRgba(safety::kWhite), 58);
    } else if (kind == QLatin1Char('P')) {
        painter.setPen(QPen(QColor::fromRgba(safety::kRed), 10));
        painter.setBrush(QColor::fromRgba(safety::kWhite));
        painter.drawEllipse(QPointF(), 43, 43);
        painter.drawLine(QPointF(-30, -30), QPointF(30, 30));
    } else {
        painter.fillRect(QRectF(-48, -48, 96, 96), QColor::fromRgba(safety::kGreen));
        painter.fillRect(QRectF(-10, -32, 20, 64), QColor::fromRgba(safety::kWhite));
        painter.fillRect(QRectF(-32, -10, 64, 20), QColor::fromRgba(safety::kWhite));
    }
}

} // namespace

void paintSign(QPainter &painter, const QString &code, const QRectF &square)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QString file = fileOf(code);
    QSvgRenderer drawing;
    if (!file.isEmpty() && drawing.load(file)) {
        const QSizeF size = drawing.viewBoxF().size().scaled(square.size(), Qt::KeepAspectRatio);
        drawing.render(&painter, QRectF(square.center() - QPointF(size.width() / 2, size.height() / 2), size));
    } else {
        painter.translate(square.center());
        painter.scale(square.width() / 100, square.height() / 100);
        paintGeneral(painter, code.isEmpty() ? QChar() : code.at(0).toUpper());
    }
    painter.restore();
}

QString signName(const QString &code)
{
    const QHash<QString, QString> names{
        {QStringLiteral("W001"), QCoreApplication::translate("app::Sign", "general warning")},
        {QStringLiteral("W005"), QCoreApplication::translate("app::Sign", "non-ionizing radiation")},
        {QStringLiteral("W010"), QCoreApplication::translate("app::Sign", "freezing cold")},
        {QStringLiteral("W012"), QCoreApplication::translate("app::Sign", "electricity")},
        {QStringLiteral("W016"), QCoreApplication::translate("app::Sign", "toxic material")},
        {QStringLiteral("W017"), QCoreApplication::translate("app::Sign", "hot surface")},
        {QStringLiteral("W018"), QCoreApplication::translate("app::Sign", "starts by itself")},
        {QStringLiteral("W021"), QCoreApplication::translate("app::Sign", "flammable material")},
        {QStringLiteral("M004"), QCoreApplication::translate("app::Sign", "wear eye protection")},
        {QStringLiteral("M006"), QCoreApplication::translate("app::Sign", "pull the plug from the outlet")},
        {QStringLiteral("M009"), QCoreApplication::translate("app::Sign", "wear gloves")},
        {QStringLiteral("M021"), QCoreApplication::translate("app::Sign", "disconnect before work")},
        {QStringLiteral("P001"), QCoreApplication::translate("app::Sign", "not allowed")},
        {QStringLiteral("P003"), QCoreApplication::translate("app::Sign", "no open flame")},
        {QStringLiteral("E003"), QCoreApplication::translate("app::Sign", "first aid")},
        {QStringLiteral("E004"), QCoreApplication::translate("app::Sign", "emergency telephone")},
    };
    return names.value(code.toUpper(), code);
}

void paintAlert(QPainter &painter, const QRectF &square, QColor symbol, QColor mark)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(square.center().x(), square.center().y() + square.height() * 0.04);
    painter.scale(square.width() / 100, square.height() / 100);
    painter.fillPath(triangle(44, 10), symbol);
    painter.translate(0, 8);
    paintExclamation(painter, mark, 46);
    painter.restore();
}

} // namespace app
