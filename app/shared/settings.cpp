#include "app/shared/settings.h"

#include <QSettings>
#include <QStandardPaths>

#include <algorithm>

namespace app {
namespace {

constexpr struct
{
    ShadeWish wish;
    const char *word;
} kShades[] = {{ShadeWish::System, "system"}, {ShadeWish::Light, "light"}, {ShadeWish::Dark, "dark"}};

ShadeWish shadeNamed(const QString &word)
{
    for (const auto &shade : kShades)
        if (word == QLatin1String(shade.word))
            return shade.wish;
    return ShadeWish::System;
}

QString wordOf(ShadeWish wish)
{
    for (const auto &shade : kShades)
        if (shade.wish == wish)
            return QLatin1String(shade.word);
    return {};
}

} // namespace

QString settingsFile()
{
    return QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation)
        + QStringLiteral("/meterfirst/meterfirst.ini");
}

Settings loadSettings()
{
    const QSettings file(settingsFile(), QSettings::IniFormat);
    Settings settings;
    settings.shade = shadeNamed(file.value(QStringLiteral("shade")).toString());
    bool ok = false;
    const int percent = file.value(QStringLiteral("text_percent")).toInt(&ok);
    if (ok)
        settings.textPercent = std::clamp(percent, Theme::kLeastPercent, Theme::kMostPercent);
    settings.large = file.value(QStringLiteral("large")).toBool();
    settings.leftHanded = file.value(QStringLiteral("left_handed")).toBool();
    if (file.value(QStringLiteral("temperature")).toString() == QLatin1String("F"))
        settings.temperature = QStringLiteral("F");
    settings.language = file.value(QStringLiteral("language")).toString();
    return settings;
}

bool saveSettings(const Settings &settings)
{
    QSettings file(settingsFile(), QSettings::IniFormat);
    file.setValue(QStringLiteral("shade"), wordOf(settings.shade));
    file.setValue(QStringLiteral("text_percent"), settings.textPercent);
    file.setValue(QStringLiteral("large"), settings.large);
    file.setValue(QStringLiteral("left_handed"), settings.leftHanded);
    file.setValue(QStringLiteral("temperature"), settings.temperature);
    file.setValue(QStringLiteral("language"), settings.language);
    file.sync();
    return file.status() == QSettings::NoError;
}

} // namespace app
