#pragma once
// What the person chose about the window, kept as plain text: $XDG_CONFIG_HOME/meterfirst/meterfirst.ini. Nothing of a job.
#include "app/shared/theme.h"

namespace app {

struct Settings
{
    ShadeWish shade = ShadeWish::System;
    int textPercent = 100; // 100 to 250
    bool large = false;    // large mode: 12 mm targets, own keypad
    bool leftHanded = false;
    QString temperature = QStringLiteral("C"); // "C" or "F"
    QString language;      // BCP 47; empty: the system's
    friend bool operator==(const Settings &, const Settings &) = default;
};

// What is not understood in the file is as if it were not there.
Settings loadSettings();
// False if it could not be written (disk full, no right to).
bool saveSettings(const Settings &settings);
QString settingsFile();

} // namespace app
