#pragma once
// A job as plain text, for a message or the clipboard.
#include "core/session/session.h"
#include "core/session/view.h"

#include <QCoreApplication>
#include <QString>

namespace app {

struct JobText
{
    Q_DECLARE_TR_FUNCTIONS(app::JobText)
public:
    static QString of(const core::StateView &view, const core::Session &session);
};

} // namespace app
