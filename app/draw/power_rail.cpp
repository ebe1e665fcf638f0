#include "app/draw/power_rail.h"

#include "app/draw/power_rail_paint.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QAccessibleWidget>
#include <QPainter>

#include <cmath>

namespace app {
namespace {

QAccessibleInterface *railFactory(const QString &, QObject *object)
{
    auto *rail = qobject_cast<PowerRail *>(object);
    return rail ? new QAccessibleWidget(rail, QAccessible::StatusBar) : nullptr;
}

} // namespace

QString placeWord(PowerPlace place)
{
    switch (place) {
    case PowerPlace::Energized: return PowerRail::tr("Energized");
    case PowerPlace::Running: return PowerRail::tr("Running");
    case PowerPlace::ProvenDead: return PowerRail::tr("Proven dead");
    case PowerPlace::Isolated: return PowerRail::tr("Isolated");
    case PowerPlace::NotProven: return PowerRail::tr("Not proven");
    case PowerPlace::Unknown: return PowerRail::tr("Unknown");
    }
    Q_UNREACHABLE();
}

QString railWords(const RailState &state)
{
    QStringList words{placeWord(state.place).toLower()};
    if (!state.since.isEmpty())
        words += plainText({{state.since}});
    if (state.onHoldPoint)
        words += PowerRail::tr("at a hold point");
    return words.join(QStringLiteral(", "));
}

PowerRail::PowerRail(Qt::Orientation orientation, QWidget *parent) : QWidget(parent), m_orientation(orientation)
{
    static const bool once = (QAccessible::installFactory(railFactory), true);
    Q_UNUSED(once)
    setOrientation(orientation);
    setState({});
    followTheme(this);
}

void PowerRail::setState(RailState state)
{
    m_state = std::move(state);
    setAccessibleName(tr("Power: %1").arg(railWords(m_state)));
    QAccessibleEvent event(this, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
    updateGeometry();
    update();
}

void PowerRail::setOrientation(Qt::Orientation orientation)
{
    m_orientation = orientation;
    const bool standing = orientation == Qt::Vertical;
    setSizePolicy(standing ? QSizePolicy::Fixed : QSizePolicy::Expanding, standing ? QSizePolicy::Expanding : QSizePolicy::Fixed);
    updateGeometry();
    update();
}

QSize PowerRail::sizeHint() const
{
    const Style &style = Theme::current().style();
    if (m_orientation == Qt::Vertical)
        return {Theme::current().spx(112), static_cast<int>(std::ceil(standingRailHeight(m_state, style)))};
    return {static_cast<int>(std::ceil(lyingRailWidth(m_state, style, true))), Theme::current().spx(40)};
}

QSize PowerRail::minimumSizeHint() const
{
    const Style &style = Theme::current().style();
    if (m_orientation == Qt::Vertical)
        return sizeHint();
    return {static_cast<int>(std::ceil(lyingRailWidth(m_state, style, false))), Theme::current().spx(40)};
}

void PowerRail::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_orientation == Qt::Vertical)
        paintStandingRail(painter, rect(), m_state, Theme::current().style());
    else
        paintLyingRail(painter, rect(), m_state, Theme::current().style());
}

} // namespace app
