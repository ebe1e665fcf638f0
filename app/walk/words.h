#pragma once
// Small words between the engine's values and the screen: text, time, units, marks.
#include "app/shared/marks.h"
#include "core/session/view.h"

#include <QCoreApplication>
#include <QString>

#include <string>
#include <string_view>

namespace app {

QString qs(std::string_view text);      // UTF-8 to the screen
std::string utf8(const QString &text);  // and back

Standing standingOf(core::Standing standing);

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(app::Words)
public:
    static QString time(std::int64_t wallMs);      // "10:36", the person's own clock
    static QString day(std::int64_t wallMs);       // "today 10:36", "yesterday", "3 March"
    static QString minutes(double minutes);        // "about 3 minutes"
    static QString unit(const std::string &unit, core::Measure measure); // "Ω", "V ~", "µF"
};

QString capital(QString text);   // first letter large
QString lowerFirst(QString text); // first letter small, unless a word of capitals
QString listed(const QStringList &words); // "a, b and c"
QString brief(const QString &sentence);   // its first thought: "Push the dryer's breaker"

} // namespace app
