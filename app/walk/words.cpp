#include "app/walk/words.h"

#include "app/shared/counted.h"

#include <QDateTime>
#include <QLocale>
#include <QRegularExpression>

namespace app {

QString qs(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

std::string utf8(const QString &text)
{
    return text.toUtf8().toStdString();
}

Standing standingOf(core::Standing standing)
{
    switch (standing) {
    case core::Standing::Untested:
        return Standing::Untested;
    case core::Standing::Suspected:
        return Standing::Suspected;
    case core::Standing::Cleared:
        return Standing::Cleared;
    case core::Standing::NoConclusion:
        return Standing::NoConclusion;
    case core::Standing::FailedOnce:
    case core::Standing::Failed:
        return Standing::Failed;
    case core::Standing::Proven:
        return Standing::Proven;
    case core::Standing::Noted:
        return Standing::Noted;
    }
    Q_UNREACHABLE();
}

QString Words::time(std::int64_t wallMs)
{
    return QDateTime::fromMSecsSinceEpoch(wallMs).toString(QStringLiteral("HH:mm"));
}

QString Words::day(std::int64_t wallMs)
{
    const QDateTime then = QDateTime::fromMSecsSinceEpoch(wallMs);
    const qint64 days = then.date().daysTo(QDate::currentDate());
    if (days == 0)
        return tr("today %1").arg(time(wallMs));
    if (days == 1)
        return tr("yesterday");
    return QLocale().toString(then.date(), days < 300 ? QStringLiteral("d MMMM") : QStringLiteral("d MMMM yyyy"));
}

QString Words::minutes(double minutes)
{
    const int whole = std::max(1, qRound(minutes));
    return counted(whole, tr("about %1 minute"), tr("about %1 minutes"));
}

QString Words::unit(const std::string &unit, core::Measure measure)
{
    if (unit == "ohm")
        return QStringLiteral("Ω");
    if (unit == "V")
        return measure == core::Measure::VoltageDc ? QStringLiteral("V =") : QStringLiteral("V ~");
    if (unit == "A")
        return QStringLiteral("A ~");
    if (unit == "uF")
        return QStringLiteral("µF");
    if (unit == "Cel")
        return QStringLiteral("°C");
    if (unit == "continuity")
        return tr("tone");
    return qs(unit);
}

QString capital(QString text)
{
    if (!text.isEmpty())
        text[0] = text[0].toUpper();
    return text;
}

QString lowerFirst(QString text)
{
    if (text.size() > 1 && text[0].isUpper() && !text[1].isUpper())
        text[0] = text[0].toLower();
    return text;
}

QString brief(const QString &sentence)
{
    static const QRegularExpression end(QStringLiteral(" [-–—] |[.;] |[.;]$|\\?"));
    const auto match = end.match(sentence);
    if (!match.hasMatch())
        return sentence;
    const QString first = sentence.left(match.capturedStart());
    const qsizetype mark = sentence.indexOf(QLatin1Char('?'));
    const bool asks = mark >= 0 && !sentence.left(mark).contains(QStringLiteral(". "));
    return asks ? first + QLatin1Char('?') : first;
}

QString listed(const QStringList &words)
{
    if (words.size() < 2)
        return words.value(0);
    return Words::tr("%1 and %2").arg(words.mid(0, words.size() - 1).join(QStringLiteral(", ")), words.last());
}

} // namespace app
