// The theme and what is kept of it. Places of files: XDG Base Directory Specification 0.8.
#include "app/shared/settings.h"
#include "app/shared/theme.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QSignalSpy>
#include <QStandardPaths>
#include <gtest/gtest.h>

using namespace app;

TEST(Settings, AreKeptUnderTheConfigFolder)
{
    EXPECT_EQ(settingsFile(), qEnvironmentVariable("XDG_CONFIG_HOME") + QStringLiteral("/meterfirst/meterfirst.ini"));
    Settings settings;
    settings.shade = ShadeWish::Dark;
    settings.textPercent = 175;
    settings.large = true;
    settings.leftHanded = true;
    settings.temperature = QStringLiteral("F");
    settings.language = QStringLiteral("de");
    ASSERT_TRUE(saveSettings(settings));
    EXPECT_TRUE(QFile::exists(settingsFile()));
    EXPECT_EQ(loadSettings(), settings);
}

TEST(Settings, WhatIsNotUnderstoodIsAsIfItWereNotThere)
{
    QFile file(settingsFile());
    ASSERT_TRUE(QDir().mkpath(QFileInfo(file).path()));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("[General]\nshade=purple\ntext_percent=lots\ntemperature=K\n");
    file.close();
    EXPECT_EQ(loadSettings(), Settings{});
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("[General]\ntext_percent=900\n");
    file.close();
    EXPECT_EQ(loadSettings().textPercent, 250);
}

TEST(Theme, FollowsTheWish)
{
    Theme &theme = Theme::current();
    theme.install();
    QSignalSpy changed(&theme, &Theme::changed);
    theme.setShadeWish(ShadeWish::Dark);
    EXPECT_EQ(changed.count(), 1);
    EXPECT_TRUE(theme.style().dark());
    EXPECT_TRUE(isDark(QApplication::palette()));
    theme.setShadeWish(ShadeWish::Light);
    EXPECT_FALSE(theme.style().dark());
    EXPECT_FALSE(isDark(QApplication::palette()));
    theme.setShadeWish(ShadeWish::System); // the offscreen platform has a light palette
    EXPECT_FALSE(theme.style().dark());
}

TEST(Theme, TextGrowsWithTheWishWithinItsBounds)
{
    Theme &theme = Theme::current();
    theme.install();
    theme.setTextPercent(100);
    const int plain = theme.font(Type::Text).pixelSize();
    theme.setTextPercent(200);
    EXPECT_EQ(theme.font(Type::Text).pixelSize(), 2 * plain);
    EXPECT_EQ(QApplication::font().pixelSize(), 2 * plain);
    EXPECT_EQ(theme.spx(10), 20);
    theme.setTextPercent(1000);
    EXPECT_EQ(theme.textPercent(), 250);
    theme.setTextPercent(1);
    EXPECT_EQ(theme.textPercent(), 100);
}

// Figures of one width without a font feature, and bold as wide as regular, is why this face was chosen.
TEST(Theme, FiguresAreTabularInBothWeights)
{
    const Style style;
    EXPECT_EQ(QFontInfo(style.font(Type::Text)).family(), sansFamily());
    EXPECT_FALSE(QFontInfo(style.font(Type::Text)).fixedPitch());
    const QFontMetricsF regular(style.font(Type::Text));
    const QFontMetricsF bold(style.font(Type::Strong));
    for (const QChar digit : QStringLiteral("123456789")) {
        EXPECT_DOUBLE_EQ(regular.horizontalAdvance(digit), regular.horizontalAdvance(QLatin1Char('0')));
        EXPECT_NEAR(bold.horizontalAdvance(digit), regular.horizontalAdvance(digit), 0.51);
    }
    for (const QChar letter : QStringLiteral("Ω±≤²°µ"))
        EXPECT_TRUE(QFontMetricsF(style.font(Type::Text)).inFont(letter));
}
