// The safety colours of ANSI Z535.1 say danger only while nothing else on the screen has them: no file but those of
// safety panels, signs and the rail names one, and no file but the table names any other colour.
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>
#include <QSet>
#include <gtest/gtest.h>

namespace {

QMap<QString, QString> sources()
{
    QMap<QString, QString> files;
    const QString root = QStringLiteral(SOURCE) + QStringLiteral("/app/");
    for (QDirIterator each(root, {QStringLiteral("*.cpp"), QStringLiteral("*.h")}, QDir::Files, QDirIterator::Subdirectories);
         each.hasNext();) {
        QFile file(each.next());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        QString code = QString::fromUtf8(file.readAll());
        code.remove(QRegularExpression(QStringLiteral("//[^\n]*")));
        files.insert(file.fileName().mid(root.size()), code);
    }
    return files;
}

} // namespace

TEST(SafetyColours, StandInSafetyWidgetsAlone)
{
    const QSet<QString> allowed{QStringLiteral("draw/safety_colours.h"), QStringLiteral("draw/signal_panel.cpp"),
                                QStringLiteral("draw/sign.cpp"), QStringLiteral("draw/power_rail_paint.cpp"),
                                QStringLiteral("draw/hold_bar.cpp")};
    const QRegularExpression colour(QStringLiteral("safety_colours\\.h|safety::k|c8102e|ff8200|ffd100|0057b8|00843d"),
                                    QRegularExpression::CaseInsensitiveOption);
    const auto files = sources();
    ASSERT_GT(files.size(), 40);
    int users = 0;
    for (auto file = files.begin(); file != files.end(); ++file) {
        const bool uses = file.value().contains(colour);
        users += uses ? 1 : 0;
        EXPECT_TRUE(!uses || allowed.contains(file.key())) << file.key().toStdString();
    }
    EXPECT_EQ(users, allowed.size()); // an entry nobody needs any more
}

TEST(Colours, AreNamedInTheTableAlone)
{
    const QRegularExpression colour(QStringLiteral("0xff[0-9a-f]{6}\\b|QColor\\((\\d|QStringLiteral|\")|Qt::(red|green|blue|"
                                                   "yellow|cyan|magenta|gray|darkGray|lightGray|black|white)\\b"));
    const QSet<QString> allowed{QStringLiteral("shared/palette.cpp"), QStringLiteral("draw/safety_colours.h")};
    const auto files = sources();
    for (auto file = files.begin(); file != files.end(); ++file) {
        if (file.key().startsWith(QStringLiteral("shared/")) || file.key().startsWith(QStringLiteral("draw/")) ||
            file.key().startsWith(QStringLiteral("walk/"))) {
            const auto match = colour.match(file.value());
            EXPECT_TRUE(!match.hasMatch() || allowed.contains(file.key()))
                << file.key().toStdString() << ": " << match.captured().toStdString();
        }
    }
}
