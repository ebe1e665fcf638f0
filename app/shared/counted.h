#pragma once
// English has two forms: one, and any other number.
#include <QString>

namespace app {

// counted(7, tr("%1 minute"), tr("%1 minutes")): "7 minutes"
inline QString counted(qint64 count, const QString &one, const QString &many)
{
    return (count == 1 ? one : many).arg(count);
}

} // namespace app
